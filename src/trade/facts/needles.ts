import { type FactRow, factTable, type Standing } from "./table.ts";

/** What is sewn with what: by the stitch and the leather up to which it serves, mm; none has no end. */
export type Sewn = {
  readonly pitch?: number;
  readonly stack?: number;
  /** Linen cords in the thread. */
  readonly cords: number;
  /** Number of the needle: the higher, the finer. */
  readonly needle: number;
};

/** Where the numbers of needles come from. */
export const NEEDLE_STANDING: Standing = "from memory";
/** Where the choice of a thread by stitch and leather comes from. */
export const CORDS_STANDING: Standing = "common practice, no source";

/** Fine work first. Cords are common practice, needles from memory. */
const SEWN: readonly Sewn[] = [
  { pitch: 2.5, stack: 1.5, cords: 2, needle: 5 },
  { pitch: 3, stack: 3.5, cords: 3, needle: 4 },
  { pitch: 3.7, stack: 7, cords: 4, needle: 3 },
  { pitch: 4.6, stack: 10, cords: 5, needle: 2 },
  { cords: 6, needle: 1 },
];

/** A pitch that was worked out comes a hair over the one that was asked, mm. */
const SLACK_MM = 0.05;

/**
 * Thread and needles for a seam by its pitch and the leather it goes through, mm: the finer of what the stitch
 * asks for and what the leather does. Common practice, no source.
 */
export function sewnWith(pitch: number, stack: number): Sewn {
  const serves = (have: number, most: number | undefined): boolean => have <= (most ?? Infinity) + SLACK_MM;
  return SEWN.find((s) => serves(pitch, s.pitch) || serves(stack, s.stack))!;
}

export const needleFacts = factTable({
  name: "needles",
  title: "Thread and needles for hand sewing",
  columns: [
    { title: "stitch up to, mm", kind: "number" },
    { title: "leather up to, mm", kind: "number" },
    { title: "linen cords", kind: "count" },
    { title: "needle, about No.", kind: "count", standing: NEEDLE_STANDING },
  ],
  rows: SEWN.map(
    (s): FactRow => ({
      cells: [s.pitch, s.stack, s.cords, s.needle],
      standing: CORDS_STANDING,
      source: CORDS_STANDING,
    }),
  ),
  note: "The finer of what stitch and leather ask for is taken. Needles are blunt harness needles, the higher number the finer: try yours with your thread.",
});
