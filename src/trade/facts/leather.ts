import { MM_PER_INCH, MM_PER_IRON, MM_PER_OUNCE, roundTo } from "../../units/index.ts";
import { factTable } from "./table.ts";

const SOURCE =
  "ASTM D1814-70 (2000), Measuring Thickness of Leather Units, 1.2: 1 oz = 1/64 in, 1 iron = 1/48 in";

/** Leather is sold up to about this. */
const MOST_OUNCES = 16;

const halves = (top: number, bottom: number): string =>
  top % 2 === 0 ? halves(top / 2, bottom / 2) : bottom === 1 ? String(top) : `${top}/${bottom}`;

const OUNCES = Array.from({ length: MOST_OUNCES }, (_, i) => i + 1);

/** Leather thickness: ounces, irons, fractions of an inch and millimetres. */
export const leatherFacts = factTable({
  name: "leather",
  title: "Leather thickness",
  columns: [
    { title: "oz", kind: "number" },
    { title: "irons", kind: "number" },
    { title: "in", kind: "words" },
    { title: "mm", kind: "number" },
  ],
  rows: OUNCES.map((oz) => {
    const mm = oz * MM_PER_OUNCE;
    const inch = halves(oz, Math.round(MM_PER_INCH / MM_PER_OUNCE));
    return {
      cells: [oz, roundTo(mm / MM_PER_IRON, 4), inch, roundTo(mm, 4)],
      standing: "worked out from figures read" as const,
      source: SOURCE,
    };
  }),
  note: "Suppliers round an ounce to 0.4 mm; the exact one is 0.396875 mm. Leather sold as 8-9 oz may be either: measure it.",
});
