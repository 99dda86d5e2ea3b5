import type { WorkStep } from "../model/bench.ts";
import type { Finding } from "../model/finding.ts";
import type { Shop } from "../model/shop.ts";
import { bendSteps, glueEdgeSteps, hemSteps, mouldSteps } from "./bendSteps.ts";
import { cutSteps } from "./cutSteps.ts";
import { withDamping } from "./dampSteps.ts";
import { type Draft, sumOf, type WorkInput } from "./draft.ts";
import { edgeSteps } from "./edgeSteps.ts";
import { foldedPunchSteps, liningSlotSteps, punchSteps, slotSteps } from "./holeSteps.ts";
import { joinId, joinSteps } from "./joinSteps.ts";
import { grooveSteps, prickSteps } from "./lineSteps.ts";
import { LININGS, liningPrickSteps } from "./liningSteps.ts";
import { markSteps } from "./markSteps.ts";
import { AFTER } from "./phases.ts";
import { directOnly, stepOrder } from "./stepOrder.ts";
import { dyeSteps, skiveSteps, toolSteps } from "./surfaceSteps.ts";

export type { WorkInput } from "./draft.ts";

const SET_UP: Draft = {
  id: "set-up",
  phase: "set up",
  does: "setUp",
  says: "Lay out templates, leather, hardware and thread; measure the bars on the first sheet",
  pieces: [],
  tool: "",
  setting: "",
  amount: 1,
  after: [],
  serves: [],
};
const CHECK: Draft = {
  ...SET_UP,
  id: "check",
  phase: "check",
  does: "check",
  says: "Check every seam, fold and fixing against this sheet; clean and pack",
};

/** Everything that is to be done, as the pieces and joins say, not yet in order. */
export function draftSteps(input: WorkInput): readonly Draft[] {
  const joins = joinSteps(input);
  const glue = glueEdgeSteps(input, joins);
  const work = [
    ...cutSteps(input),
    ...markSteps(input),
    ...toolSteps(input),
    ...grooveSteps(input),
    ...punchSteps(input),
    ...slotSteps(input),
    ...prickSteps(input),
    ...skiveSteps(input),
    ...dyeSteps(input),
    ...bendSteps(input),
    ...mouldSteps(input),
    ...hemSteps(input),
    ...foldedPunchSteps(input),
    ...glue,
    ...joins,
    ...liningSlotSteps(input),
    ...liningPrickSteps(input),
    ...edgeSteps(input),
  ];
  const ordered = withDamping(withOrder([SET_UP, ...work, CHECK]), input);
  return ordered.map((s) => (s.phase === "check" ? lastOf(s, ordered) : s));
}

/** The steps with all that they wait for: the trade's rules on each piece, and what they name themselves. */
function withOrder(steps: readonly Draft[]): readonly Draft[] {
  const meets = (a: Draft, b: Draft): boolean => a.pieces.some((p) => b.pieces.includes(p));
  const linings = steps.filter((s) => s.phase === "lining");
  return steps.map((step) => {
    const ruled = steps.filter(
      (s) => AFTER[step.phase].includes(s.phase) && (s.phase === "set up" || meets(s, step)),
    );
    const glued = steps.filter(
      (s) => s.phase === "glue edges" && joinId(s.id.slice("glue.".length)) === step.id,
    );
    const shut = isLined(step) ? linings : [];
    const after = [...step.after, ...idsOf([...ruled, ...glued, ...shut])];
    return { ...step, after: [...new Set(after)].filter((id) => id !== step.id) };
  });
}

/** It comes after everything. */
const lastOf = (step: Draft, steps: readonly Draft[]): Draft => ({
  ...step,
  after: idsOf(steps.filter((s) => s.id !== step.id)),
});

/** What is sewn once the linings are in waits for them to be trimmed and cut through. */
const isLined = (s: Draft): boolean =>
  (s.phase === "put together" || s.phase === "glue edges") && s.after.includes(joinId(LININGS));

const idsOf = (steps: readonly Draft[]): readonly string[] => steps.map((s) => s.id);

/** The order of work with what is wrong with it: an error where steps wait for one another in a circle. */
export function workOrder(input: WorkInput): {
  readonly steps: readonly WorkStep[];
  readonly findings: readonly Finding[];
} {
  const { steps, findings } = stepOrder(draftSteps(input));
  return { steps: directOnly(steps).map((s) => timed(s, input.shop)), findings };
}

/**
 * The work of the whole order, step by step, in an order in which each can be done. Everything is derived from
 * what the pieces, joins, fittings and the order of putting together hold. Amounts are in what WORK counts by: edge
 * in metres as `edgedLength` and `finishedLength` say, areas in square decimetres of the outlines, stitches with those
 * that are sewn back. Minutes are the amount times the shop's for one, undefined where the shop doesn't say.
 */
export const workSteps = (input: WorkInput): readonly WorkStep[] => workOrder(input).steps;

function timed(
  { phase: _phase, serves: _serves, rightBefore: _before, damp: _damp, ...step }: Draft,
  shop: Shop,
): WorkStep {
  const each = shop.minutes[step.does];
  return each === undefined ? step : { ...step, minutes: each * step.amount };
}

/** Minutes of all steps that have them. */
export const stepsMinutes = (steps: readonly WorkStep[]): number => sumOf(steps.map((s) => s.minutes ?? 0));
