// A letter for each kind and size of hole, and a number for each hole of it.
import { roundTo } from "../units/index.ts";
import type { DieFeature } from "./feature.ts";

/** I, O and Q are left out on drawings: they read as 1 and 0 (common practice, no source). */
const LETTERS = "ABCDEFGHJKLMNPRSTUVWXYZ";

/** A to Z, then AA, AB … */
function letterOf(index: number): string {
  const last = LETTERS[index % LETTERS.length]!;
  return index < LETTERS.length ? last : letterOf(Math.floor(index / LETTERS.length) - 1) + last;
}

/** Sizes that print the same are one size. */
const DECIMALS = 2;

type Key = readonly [made: number, kind: number, size: number, other: number];
const KINDS: readonly string[] = ["round hole", "slot", "opening", "staple hole", "notch"];

function keyOf({ made, kind, size }: DieFeature): Key {
  const sizes = !size ? [0, 0] : "diameter" in size ? [size.diameter, 0] : [size.width, size.length];
  const [one, other] = sizes.map((n) => roundTo(n, DECIMALS));
  return [made === "in the die" ? 0 : 1, KINDS.indexOf(kind), one!, other!];
}

function compared(a: readonly number[], b: readonly number[]): number {
  const index = a.findIndex((n, i) => n !== b[i]);
  return index < 0 ? 0 : a[index]! - b[index]!;
}

/** By size within a kind; holes of one size from left to right, then from below, at 0.001 mm. */
const placeKey = (f: DieFeature): readonly number[] => [
  ...keyOf(f),
  roundTo(f.at[0], 3),
  roundTo(f.at[1], 3),
];

/**
 * The holes with their letters: those in the die first, round ones before slots, the smallest first: A1, A2,
 * B1 … In the order of their letters.
 */
export function lettered(holes: readonly DieFeature[]): readonly DieFeature[] {
  const sorted = [...holes].sort((a, b) => compared(placeKey(a), placeKey(b)));
  let [group, number] = [-1, 0];
  return sorted.map((hole, i) => {
    const before = sorted[i - 1];
    if (!before || compared(keyOf(before), keyOf(hole)) !== 0) [group, number] = [group + 1, 0];
    number++;
    return { ...hole, letter: `${letterOf(group)}${number}` };
  });
}
