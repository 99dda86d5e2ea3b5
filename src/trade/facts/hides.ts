import { MM_PER_INCH } from "../../units/index.ts";
import { factTable, readAt } from "./table.ts";

const CUTS = "weaverleathersupply.com, Cuts of leather";
const SIDE = "weaverleathersupply.com, Understanding a leather side";
const HASLUCK = "P. N. Hasluck (editor), Harness Making, 1904";

const inches = (n: number): number => n * MM_PER_INCH;

/** What hides and their parts measure, and what they are good for. */
export const hideFacts = factTable({
  name: "hides",
  title: "Hides and their parts",
  columns: [
    { title: "part", kind: "words" },
    { title: "square feet", kind: "words" },
    { title: "length from", kind: "length" },
    { title: "length to", kind: "length" },
    { title: "remark", kind: "words" },
  ],
  rows: [
    ...readAt(CUTS, [
      ["whole hide", "45 to 50", inches(96), inches(102), "about 8 1/2 by 8 ft"],
      ["half hide", "about 24", undefined, undefined, ""],
      ["double shoulder", "about 14", undefined, undefined, "belts are cut across it"],
    ]),
    ...readAt(SIDE, [
      [
        "bend",
        undefined,
        undefined,
        undefined,
        "the thickest and firmest, 2 to 4 oz thicker than the rest, stretches least",
      ],
      ["back", undefined, undefined, undefined, "long pieces with little waste: reins, stirrup leathers"],
      ["belly", undefined, undefined, undefined, "looser"],
    ]),
    ...readAt(`${HASLUCK}, p. 38`, [
      ["strap butt", undefined, inches(54), inches(57), "4 ft 6 in to 4 ft 9 in"],
    ]),
    ...readAt(`${HASLUCK}, p. 42`, [
      ["straps", undefined, undefined, undefined, "cut along the hide, never across"],
    ]),
  ],
});
