// The space left between rules: across the leather (a neck) or across the waste (a gap).
import { boundsOf, boxGap } from "../geometry/bounds.ts";
import { containsPoint } from "../geometry/contains.ts";
import { distanceBetween, nearestOnPath } from "../geometry/distance.ts";
import { pathLength, pointAt, subPath } from "../geometry/length.ts";
import type { Path, Point } from "../geometry/path.ts";
import { between } from "../geometry/vector.ts";
import { nearPairs, type Pair } from "./nearness.ts";
import { steelBetween } from "./ruleBody.ts";
import type { RulePath } from "./rulePaths.ts";
import type { DieSettings } from "./settings.ts";
import { SHORT_MM } from "./short.ts";

export type Gap = {
  /** The two rules, by their features; the same twice where a rule comes near itself. */
  readonly a: string;
  readonly b: string;
  readonly tube: boolean;
  /** Half way between both. */
  readonly at: Point;
  /** From cutting edge to cutting edge, mm. */
  readonly distance: number;
  /** From steel to steel, mm: below 0 the rules run into each other. */
  readonly clear: number;
  readonly across: "leather" | "waste";
};

/**
 * Two sides of one rule that meet in a corner come near each other at its tip; that is no neck unless this
 * many spacings lie between them along the rule. A corner of 29° or more never does.
 */
const CORNER = 4;
/** Places along a rule that are looked at for each length that counts as near. */
const PER_REACH = 4;

/** True where there is leather: inside the outline and in no slot or hole. */
function isLeather(rules: readonly RulePath[], at: Point): boolean {
  return rules
    .filter(({ kind }) => kind !== "notch")
    .every(({ kind, path }) => containsPoint(path, at) === (kind === "outline"));
}

function gapOf(
  rules: readonly RulePath[],
  settings: DieSettings,
  pair: { readonly a: RulePath; readonly b: RulePath; readonly at: Point; readonly distance: number },
): Gap {
  const across = isLeather(rules, pair.at) ? "leather" : "waste";
  const { a, b, at, distance } = pair;
  const tube = a.kind === "tube" || b.kind === "tube";
  const clear = distance - steelBetween(across, settings);
  return { a: a.id, b: b.id, tube, at, distance, clear, across };
}

/** A place half way over the gap between two paths: the nearest ends looked for to and fro. */
function halfWay(a: Path, b: Path, from: Point): Point {
  let onA = nearestOnPath(from, a).point;
  let onB = nearestOnPath(onA, b).point;
  for (let i = 0; i < 4; i++) [onA, onB] = [nearestOnPath(onB, a).point, nearestOnPath(onA, b).point];
  return between(onA, onB, 0.5);
}

/** A notch's rule stands on the outline's. */
const isJoined = (a: RulePath, b: RulePath): boolean => a.kind === "outline" && b.kind === "notch";

/** Gaps between different rules. */
function gapsBetween(rules: readonly RulePath[], settings: DieSettings, reach: number): readonly Gap[] {
  return rules.flatMap((a, i) =>
    rules.slice(i + 1).flatMap((b) => {
      if (isJoined(a, b)) return [];
      if (boxGap(boundsOf(a.path), boundsOf(b.path)) >= reach) return [];
      const distance = distanceBetween(a.path, b.path);
      if (distance >= reach) return [];
      const { minX, minY, maxX, maxY } = boundsOf(b.path);
      const at = halfWay(a.path, b.path, [(minX + maxX) / 2, (minY + maxY) / 2]);
      return [gapOf(rules, settings, { a, b, at, distance })];
    }),
  );
}

/** Near places of one rule, gathered where they follow one another along it; of each the nearest. */
function gathered(pairs: readonly Pair[], step: number): readonly Pair[] {
  const groups: { best: Pair; last: number; other: number }[] = [];
  for (const pair of pairs) {
    const open = groups.find(
      (g) => pair.a.s - g.last <= 2 * step && Math.abs(pair.b.s - g.other) <= 4 * step,
    );
    if (!open) groups.push({ best: pair, last: pair.a.s, other: pair.b.s });
    else {
      if (pair.distance < open.best.distance) open.best = pair;
      open.last = pair.a.s;
      open.other = pair.b.s;
    }
  }
  return groups.map((g) => g.best);
}

/** The stretch of a rule this far to both sides of a place. */
const around = (path: Path, s: number, reach: number): Path =>
  path.closed && 2 * reach < pathLength(path) ? subPath(path, s - reach, s + reach) : path;

/** Gaps between two stretches of the same rule. */
function gapsWithin(rules: readonly RulePath[], settings: DieSettings, reach: number): readonly Gap[] {
  return rules
    .filter(({ kind }) => kind !== "tube" && kind !== "notch")
    .flatMap((rule) => {
      const pairs = nearPairs([rule], {
        within: reach,
        step: reach / PER_REACH,
        along: () => CORNER * reach,
      }).filter(({ a, b }) => a.s < b.s);
      const step = reach / 2;
      return gathered(pairs, step).flatMap(({ a, b }) => {
        const [one, other] = [around(rule.path, a.s, step), around(rule.path, b.s, step)];
        const distance = distanceBetween(one, other);
        if (distance >= reach) return [];
        const at = halfWay(one, other, pointAt(rule.path, a.s));
        return [gapOf(rules, settings, { a: rule, b: rule, at, distance })];
      });
    });
}

/**
 * Every place where two rules, a rule and a tube, or two stretches of one rule stand nearer than `reach` mm
 * from edge to edge, in the order of the rules. `rules` are those of one piece, the outline first.
 */
const gapsNearer = (rules: readonly RulePath[], settings: DieSettings, reach: number): readonly Gap[] => [
  ...gapsBetween(rules, settings, reach),
  ...gapsWithin(rules, settings, reach),
];

const leavesRoom = ({ clear }: Gap, { spacing }: DieSettings): boolean => clear >= spacing.value - SHORT_MM;

/** The gaps that leave less than the least spacing clear between the steel. */
export const narrowGaps = (rules: readonly RulePath[], settings: DieSettings): readonly Gap[] =>
  gapsNearer(rules, settings, settings.spacing.value + 2 * settings.ruleThickness.value).filter(
    (gap) => !leavesRoom(gap, settings),
  );

/** The gaps that leave room for the rubber and are narrower from edge to edge than the leather is thick, mm. */
export const tightGaps = (
  rules: readonly RulePath[],
  settings: DieSettings,
  thickness: number,
): readonly Gap[] =>
  gapsNearer(rules, settings, thickness).filter(
    (gap) => gap.distance < thickness - SHORT_MM && leavesRoom(gap, settings),
  );
