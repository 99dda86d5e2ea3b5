import { signedArea } from "../../geometry/area.ts";
import { cornerTurns } from "../../geometry/corners.ts";
import { type ArcCurve, curveAt, curvesOf } from "../../geometry/curve.ts";
import type { RulePath } from "../rulePaths.ts";
import { SHORT_MM } from "../short.ts";
import { dieRule, saySize } from "./dieRule.ts";

/**
 * How far a bend of radius r stays from the sharp corner that it stands for, turning by θ: r (1 ÷ cos(θ/2) − 1).
 * Within the die's tolerance the corner is bent and nobody sees a difference.
 */
const cutShort = (radius: number, turn: number): number => radius * (1 / Math.cos(turn / 2) - 1);

/** +1 when the leather lies to the left of the path's direction. */
const leatherSide = ({ kind, path }: RulePath): number =>
  (kind === "outline" ? 1 : -1) * (signedArea(path) > 0 ? 1 : -1);

const tightArcs = (rule: RulePath, least: number): readonly ArcCurve[] =>
  rule.kind === "tube"
    ? []
    : curvesOf(rule.path).filter((c): c is ArcCurve => c.kind === "arc" && c.radius < least - SHORT_MM);

/**
 * A rule is bent to the least radius and no tighter; a corner for which that is too round is a joint of two
 * rules. In a corner that goes into the leather a joint leaves a point where the leather tears.
 */
export const bendRadius = dieRule(
  "die-bend-radius",
  "the rule is bent to no less than its least radius; inner corners are round",
  ({ rules, piece, settings }, units) => {
    const least = settings.leastRadius.value;
    const say = (mm: number): string => saySize(mm, units);
    return rules.flatMap((rule) => {
      const side = leatherSide(rule);
      const arcs = tightArcs(rule, least).map((arc) => {
        const inner = arc.sweep * side < 0;
        return {
          severity: inner ? ("caution" as const) : ("note" as const),
          place: rule.id,
          at: curveAt(arc, 0.5),
          message: `${inner ? "An inner" : "An outer"} corner of ${rule.id} on ${piece.name} has a radius of ${say(arc.radius)}; the rule is bent to ${say(least)} and no tighter, so it is made as a joint of two rules and comes out sharp.`,
          value: say(arc.radius),
          limit: `at least ${say(least)}`,
          mend: `Make that corner rounder on the piece (pieces.${piece.id}), or ask the die maker for a tighter bend and say so in die.least-radius.`,
        };
      });
      const corners = rule.kind === "tube" ? [] : cornerTurns(rule.path);
      const sharp = corners
        .filter(({ turn }) => turn * side < 0 && cutShort(least, turn) > settings.tolerance.value)
        .map(({ at }) => ({
          severity: "caution" as const,
          place: rule.id,
          at,
          message: `An inner corner of ${rule.id} on ${piece.name} is sharp: it is a mitred joint of two rules, and the leather tears from there.`,
          value: say(0),
          limit: `at least ${say(least)}`,
          mend: `Round that corner on the piece (pieces.${piece.id}) by ${say(least)} or more, or let it be a mitred joint and look at each cut.`,
        }));
      return [...arcs, ...sharp];
    });
  },
);
