import { MM_PER_INCH, roundTo } from "../../units/index.ts";
import { factTable } from "./table.ts";

const IRONS = "pitches of pricking irons as sold: a leatherworkers' forum guide (libreddit 4vn23x)";
const HASLUCK = "P. N. Hasluck (editor), Harness Making, 1904";

type Pitch = readonly [perInch: number, asSold: number | undefined, work: string, pages: string];

const PITCHES: readonly Pitch[] = [
  [3, undefined, "collar forewale", "p. 76"],
  [4, undefined, "blind stitches of a box loop", "p. 59"],
  [5, 5.4, "", ""],
  [6, 4.5, "billets", "p. 100"],
  [7, 3.9, "tugs, traces", "pp. 151, 154"],
  [8, 3.4, "cart bridle, small straps, traces", "pp. 50, 68, 154"],
  [9, 3.0, "cart saddle, back-band", "pp. 93, 109"],
  [10, 2.7, "small straps, back-band, web belt", "pp. 50, 53, 109"],
  [12, 2.3, "", ""],
  [14, 1.9, "", ""],
];

const sourceOf = ([, sold, , pages]: Pitch): string =>
  [...(sold === undefined ? [] : [IRONS]), ...(pages === "" ? [] : [`${HASLUCK}, ${pages}`])].join("; ");

/** Stitch pitches: an inch shared out evenly, beside what an iron of that name measures. */
export const stitchFacts = factTable({
  name: "stitches",
  title: "Stitch pitches",
  columns: [
    { title: "per inch", kind: "count" },
    { title: "an inch shared out, mm", kind: "number", standing: "worked out from figures read" },
    { title: "an iron sold as that, mm", kind: "number" },
    { title: "used for (1904)", kind: "words" },
  ],
  rows: PITCHES.map((p) => ({
    cells: [p[0], roundTo(MM_PER_INCH / p[0], 3), p[1], p[2]],
    standing: "read at its source" as const,
    source: sourceOf(p),
  })),
  note: "An iron is named by its teeth, and measures up to 9 % more than an inch shared out: measure yours from tooth to tooth. So many holes make one stitch fewer.",
});
