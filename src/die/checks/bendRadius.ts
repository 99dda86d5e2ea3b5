import { signedArea } from "../../geometry/area.ts";
import { cornerTurns } from "../../geometry/corners.ts";
import { type ArcCurve, curveAt, curvesOf } from "../../geometry/curve.ts";
import type { Point } from "../../geometry/path.ts";
import * as trig from "../../units/trigonometry.ts";
import type { Die } from "../die.ts";
import type { RulePath } from "../rulePaths.ts";
import { SHORT_MM } from "../short.ts";
import { dieRule, saySize } from "./dieRule.ts";
import { inWords, ruleName } from "./ruleName.ts";

/** How far a bend of radius r stays from the sharp corner that it stands for, turning by θ: r (1 ÷ cos(θ/2) − 1). */
const cutShort = (radius: number, turn: number): number => radius * (1 / trig.cos(turn / 2) - 1);

/**
 * A corner that a bend keeps within this share of the die's tolerance is bent, and nobody sees a difference; the
 * rest of it is for the maker's hand. Common practice, no source.
 */
const UNSEEN = 0.2;

/** +1 when the leather lies to the left of the path's direction. */
const leatherSide = ({ kind, path }: RulePath): number =>
  (kind === "outline" ? 1 : -1) * (signedArea(path) > 0 ? 1 : -1);

const tightArcs = (rule: RulePath, least: number): readonly ArcCurve[] =>
  rule.kind === "tube"
    ? []
    : curvesOf(rule.path).filter((c): c is ArcCurve => c.kind === "arc" && c.radius < least - SHORT_MM);

const isSlot = ({ features }: Die, { id }: RulePath): boolean =>
  features.some((f) => f.id === id && f.kind === "slot");

type Tight = {
  readonly rule: RulePath;
  readonly at: Point;
  readonly what: "slot end" | "inner" | "outer" | "sharp";
  /** Of the arc; 0 for a sharp corner. */
  readonly radius: number;
};

/** Every place where the rule can't follow, each once. */
function tightPlaces(die: Die): readonly Tight[] {
  const least = die.settings.leastRadius.value;
  return die.rules.flatMap((rule): readonly Tight[] => {
    if (rule.kind === "tube") return [];
    const side = leatherSide(rule);
    const slot = isSlot(die, rule);
    const arcs = tightArcs(rule, least).map((arc): Tight => {
      const inner = arc.sweep * side < 0;
      const what = inner ? (slot ? "slot end" : "inner") : "outer";
      return { rule, at: curveAt(arc, 0.5), what, radius: arc.radius };
    });
    const sharp = cornerTurns(rule.path)
      .filter(({ turn }) => turn * side < 0 && cutShort(least, turn) > UNSEEN * die.settings.tolerance.value)
      .map(({ at }): Tight => ({ rule, at, what: "sharp", radius: 0 }));
    return [...arcs, ...sharp];
  });
}

/** "2 inner corners of the outline have", "The round ends of slots A1 and A2 have". */
function subject(
  die: Die,
  alike: readonly Tight[],
  says: string,
  have: readonly [one: string, many: string],
) {
  const ids = [...new Set(alike.map(({ rule }) => rule.id))];
  const names = inWords(ids.map((id) => ruleName(die, id)));
  if (alike[0]!.what === "slot end") return `The round ends of ${names} ${have[1]}`;
  const [count, verb] =
    alike.length === 1 ? [`An ${says} of`, have[0]] : [`${alike.length} ${says}s of`, have[1]];
  return `${count} ${names} ${verb}`;
}

function messageOf(die: Die, alike: readonly Tight[], say: (mm: number) => string): string {
  const [{ what, radius }] = alike as readonly [Tight];
  const least = say(die.settings.leastRadius.value);
  const on = `on ${die.piece.name}`;
  if (what === "sharp")
    return `${subject(die, alike, "inner corner", [`${on} is sharp`, `${on} are sharp`])}: ${alike.length === 1 ? "it is a mitred joint" : "each is a mitred joint"} of two rules, and the leather tears from there.`;
  const has = subject(die, alike, `${what} corner`, [`${on} has`, `${on} have`]);
  if (what === "slot end")
    return `${has} a radius of ${say(radius)}, as drawn, and the rule is bent to ${least} and no tighter: the die maker says first whether these ends can be bent.`;
  return `${has} a radius of ${say(radius)}; the rule is bent to ${least} and no tighter, so ${alike.length === 1 ? "it is made" : "each is made"} as a joint of two rules and comes out sharp.`;
}

function mendOf({ what }: Tight, { piece }: Die, least: string): string {
  const ask = "ask the die maker for a tighter bend and say so in die.least-radius.";
  if (what === "sharp")
    return `Round that corner on the piece (pieces.${piece.id}) by ${least} or more, or let it be a mitred joint and look at each cut.`;
  if (what === "slot end") return `Make the slot wider on the piece (pieces.${piece.id}), or ${ask}`;
  return `Make that corner rounder on the piece (pieces.${piece.id}), or ${ask}`;
}

/**
 * A rule is bent to the least radius and no tighter; a corner for which that is too round is a joint of two
 * rules, and a slot's round end can't be one: the die maker must say. In a corner that goes into the leather
 * a joint leaves a point where the leather tears. Places that are alike have one message between them.
 */
export const bendRadius = dieRule(
  "die-bend-radius",
  "the rule is bent to no less than its least radius; inner corners are round",
  (die, units) => {
    const say = (mm: number): string => saySize(mm, units);
    const least = say(die.settings.leastRadius.value);
    const places = tightPlaces(die);
    // Slots that are alike are said together; else each rule by itself.
    const key = ({ rule, what, radius }: Tight): string =>
      [what === "slot end" ? "" : rule.id, what, say(radius)].join("|");
    return places.map((tight) => ({
      severity: tight.what === "outer" ? ("note" as const) : ("caution" as const),
      place: tight.rule.id,
      at: tight.at,
      message: messageOf(
        die,
        places.filter((other) => key(other) === key(tight)),
        say,
      ),
      value: say(tight.radius),
      limit: `at least ${least}`,
      mend: mendOf(tight, die, least),
    }));
  },
);
