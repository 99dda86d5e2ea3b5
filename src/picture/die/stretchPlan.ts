// How a long piece is parted into stretches: on whole 10 mm of x, off holes and centre lines where it can be.

import type { Die } from "../../die/die.ts";
import { holeTable } from "../../die/holeTable.ts";
import type { Box } from "../../geometry/path.ts";
import { clipped } from "../../layout/clip.ts";
import * as trig from "../../units/trigonometry.ts";
import { chordsOf } from "../piece/chords.ts";
import { outlineBox } from "./partLines.ts";

/** x of both ends, mm from the datum; the letter of the line that joins it to the one before and after. */
export type Stretch = {
  readonly from: number;
  readonly to: number;
  readonly before?: string;
  readonly after?: string;
};

/** Lines where rows join lie on the ruler's ticks, mm; others are tried so many ticks aside. */
const ON_MM = 10;
const TRIED = [0, 1, -1, 2, -2];
/** A line keeps this far from the middles of holes and from a centre line, mm. */
const OFF_MM = 6;
const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

/** A to Z, then AA, AB. */
const letterOf = (i: number): string =>
  i < LETTERS.length
    ? LETTERS[i]!
    : `${letterOf(Math.floor(i / LETTERS.length) - 1)}${LETTERS[i % LETTERS.length]}`;

/** Places where a line would lie on something. */
const busy = ({ features, axis }: Die): readonly number[] => [
  ...holeTable(features).map(({ x }) => x),
  ...(axis && Math.abs(trig.cos(axis.angle)) < 0.5 ? [axis.at[0]] : []),
];

function joinNear(x: number, taken: readonly number[]): number {
  const tries = TRIED.map((k) => (Math.round(x / ON_MM) + k) * ON_MM);
  return tries.find((at) => taken.every((t) => Math.abs(t - at) >= OFF_MM)) ?? tries[0]!;
}

/** The stretches of a piece from left to right, none longer than `width`. */
export function stretchesOf(die: Die, width: number): readonly Stretch[] {
  const { minX, maxX } = outlineBox(die, 1);
  const taken = busy(die);
  // A column that is hardly wider than a tick is none; so the search comes to an end.
  const longest = Math.max(width, 6 * ON_MM);
  for (let count = Math.ceil((maxX - minX) / longest); ; count++) {
    const joins = Array.from({ length: count - 1 }, (_, i) =>
      joinNear(minX + ((i + 1) * (maxX - minX)) / count, taken),
    );
    const ends = [minX, ...joins, maxX];
    const stretches = ends.slice(1).map(
      (to, i): Stretch => ({
        from: ends[i]!,
        to,
        ...(i === 0 ? {} : { before: letterOf(i - 1) }),
        ...(i === count - 1 ? {} : { after: letterOf(i) }),
      }),
    );
    if (stretches.every(({ from, to }) => to - from <= longest)) return stretches;
  }
}

/** The box of what of the outline lies from one x to another. */
export function boxWithin(die: Die, from: number, to: number): Box {
  const whole = outlineBox(die, 1);
  const strip = { minX: from, maxX: to, minY: whole.minY - 1, maxY: whole.maxY + 1 };
  const ys = chordsOf(die.rules[0]!.path).flatMap((chord) => (clipped(chord, strip) ?? []).map(([, y]) => y));
  return { minX: from, maxX: to, minY: Math.min(...ys), maxY: Math.max(...ys) };
}
