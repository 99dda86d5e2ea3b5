import type { WorkStep } from "../model/bench.ts";
import type { Finding } from "../model/finding.ts";
import { WORK_KINDS, type WorkKind } from "../model/work.ts";
import { dependOrder } from "../trade/dependOrder.ts";

type Step = Pick<WorkStep, "id" | "does" | "says" | "after"> & {
  /** The step that it is done right before: it waits for all that this waits for, and for no more. */
  readonly rightBefore?: string;
};

/** WORK's order, but skiving right after tooling: the knife catches in holes that are there before it. */
const PREFERENCE: readonly WorkKind[] = WORK_KINDS.filter((kind) => kind !== "skive").flatMap((kind) =>
  kind === "tool" ? [kind, "skive" as const] : [kind],
);
const RANK = new Map(PREFERENCE.map((kind, i) => [kind, i]));

/**
 * The steps in an order in which each comes after those it names; where that leaves a choice, in the order that
 * PREFERENCE says, then as given. What is done right before another stands next to it. Steps of a circle come last, as given, and are reported as one error.
 */
export function stepOrder<T extends Step>(
  steps: readonly T[],
): { readonly steps: readonly T[]; readonly findings: readonly Finding[] } {
  const ids = new Set(steps.map((s) => s.id));
  const held = steps.filter((s) => s.rightBefore !== undefined && ids.has(s.rightBefore));
  const withHeld = (list: readonly T[]): readonly T[] =>
    list.flatMap((s) => [...held.filter((h) => h.rightBefore === s.id), s]);
  const { done, left } = dependOrder(
    steps.filter((s) => !held.includes(s)),
    (first, then) => then.after.includes(first.id),
    (s) => RANK.get(s.does) ?? RANK.size,
  );
  return { steps: withHeld([...done, ...left]), findings: left.length === 0 ? [] : [circleIn(left)] };
}

/** Without those that only wait for the circle and that nothing in it waits for. */
function circleIn<T extends Step>(left: readonly T[]): Finding {
  let circle = left;
  for (;;) {
    const kept = circle.filter((s) => circle.some((other) => other.after.includes(s.id) && other !== s));
    if (kept.length === circle.length) break;
    circle = kept;
  }
  const names = circle.map((s) => `"${s.says}"`);
  return {
    rule: "work-order",
    severity: "error",
    piece: "",
    place: "order of work",
    message: `these steps wait for one another in a circle: ${names.join("; ")}`,
    value: `${circle.length} steps`,
    limit: "an order in which each can be done",
    mend: "please report this: the order of putting together contradicts itself",
  };
}

/** The steps, each naming only what it waits for at first hand: not what those wait for already. */
export function directOnly<T extends Step>(steps: readonly T[]): readonly T[] {
  const before = new Map<string, ReadonlySet<string>>();
  return steps.map((step) => {
    const known = step.after.filter((id) => before.has(id));
    const implied = new Set(known.flatMap((id) => [...before.get(id)!]));
    before.set(step.id, new Set([...known, ...implied]));
    return { ...step, after: step.after.filter((id) => !implied.has(id)) };
  });
}
