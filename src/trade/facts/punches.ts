import { MM_PER_INCH } from "../../units/index.ts";
import { SLOT_STEP_MM } from "../tongueSlot.ts";
import { factTable, habit, readAt } from "./table.ts";

const HASLUCK = "P. N. Hasluck (editor), Harness Making, 1904, pp. 13-14";
const ASTM_BUCKLE = "ASTM D4831, buckle tear strength of leather: the hole that is torn, 3/16 in";

/** A bench's round punches, mm: half millimetres over the range that is usual, 1 to 6 mm. */
export const ROUND_PUNCHES_MM = [1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5, 6] as const;

/** The largest round punch of the old numbering. */
const ROUND_16_MM = (5 / 8) * MM_PER_INCH;
const TEAR_HOLE_MM = 4.8;

/** Punches by what they cut. */
export const punchFacts = factTable({
  name: "punches",
  title: "Punches",
  columns: [
    { title: "punch", kind: "words" },
    { title: "cuts, mm", kind: "number" },
    { title: "remark", kind: "words" },
  ],
  rows: [
    ...ROUND_PUNCHES_MM.map((mm) => habit("round, by its size", mm, "")),
    habit(
      "slot, by its length",
      undefined,
      `in steps of ${SLOT_STEP_MM} mm; slots are rounded up to the next`,
    ),
    ...readAt(ASTM_BUCKLE, [["round, buckle tear test", TEAR_HOLE_MM, "the hole of a standard test"]]),
    ...readAt(HASLUCK, [
      ["round, No. 1 to 15 of 1904", undefined, "No. 1 is the smallest; the book gives no sizes"],
      ["round, No. 16 of 1904", ROUND_16_MM, "5/8 in across"],
      ["oval, No. 17 to 32 of 1904", undefined, "of like sizes"],
      ["crew, No. 33 to 43 of 1904", undefined, "long holes for buckle tongues"],
    ]),
  ],
  note: "Makers' numbers differ: go by the millimetres, and try each punch on scrap. Holes of 1 to 6 mm are the usual range (Wikipedia, Leather punch; read at its source).",
});
