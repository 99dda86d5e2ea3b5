import type { Point } from "../../geometry/path.ts";
import { clearWidth } from "../clearWidth.ts";
import type { Die } from "../die.ts";
import { tightGaps } from "../gaps.ts";
import { SHORT_MM } from "../short.ts";
import { dieRule, saySize } from "./dieRule.ts";
import { ruleName } from "./ruleName.ts";

type Tight = {
  readonly place: string;
  readonly what: string;
  readonly size: number;
  readonly at: Point;
};

/** Where rules stand nearer to each other, from edge to edge, than the leather is thick; the nearest first. */
function tightPlaces(die: Die): readonly Tight[] {
  const { rules, features, settings, piece } = die;
  const { thickest } = piece.leather;
  const gaps = tightGaps(rules, settings, thickest).map(({ a, b, at, distance }): Tight => {
    const [one, other] = [ruleName(die, a), ruleName(die, b)];
    const what = a === b ? `two sides of ${one}` : `${one} and ${other}`;
    return { place: a === b ? a : `${a} and ${b}`, what, size: distance, at };
  });
  // A short slot has no two stretches far enough apart along its rule to be a gap: its width says it.
  const slots = features.flatMap(({ id, kind, made, paths, size: drawn, at }): readonly Tight[] => {
    if (made !== "in the die" || (kind !== "slot" && kind !== "opening")) return [];
    const size = kind === "slot" && drawn && "width" in drawn ? drawn.width : clearWidth(paths[0]!);
    const told = gaps.some(({ place }) => place === id);
    if (told || size >= thickest - SHORT_MM) return [];
    return [{ place: id, what: `two sides of ${ruleName(die, id)}`, size, at }];
  });
  return [...gaps, ...slots].sort((a, b) => a.size - b.size);
}

/** Leather is squeezed between rules that stand closer than it is thick; common practice, no source. */
export const thickLeather = dieRule(
  "die-thick-leather",
  "rules stand no closer than the leather is thick",
  (die, units) => {
    const all = tightPlaces(die);
    const [nearest] = all;
    if (!nearest) return [];
    const { name, id, leather } = die.piece;
    const [size, thickest] = [saySize(nearest.size, units), saySize(leather.thickest, units)];
    const count = all.length === 1 ? "in one place" : `in ${all.length} places`;
    return [
      {
        severity: "caution",
        place: all.map(({ place }) => place).join(", "),
        at: nearest.at,
        message: `Rules on ${name} stand closer ${count} than the leather is thick (up to ${thickest}), and it jams there; the nearest are ${nearest.what}, ${size} from edge to edge.`,
        value: size,
        limit: `at least ${thickest}, the leather's thickness`,
        mend: `Move them apart on the piece (pieces.${id}), leave some to be made by hand (die.least-slot, die.least-tube), or ask the die maker and try one cut.`,
      },
    ];
  },
);
