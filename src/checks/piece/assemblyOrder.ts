import type { AssemblyStep, Made } from "../../model/article.ts";
import { CONTRADICTION } from "../measure/words.ts";
import { type Remark, rule } from "../rule.ts";

const fault = (step: string, message: string, value: string, limit: string): Remark => ({
  severity: "error",
  piece: "",
  place: `step ${step}`,
  message,
  value,
  limit,
  mend: CONTRADICTION,
});

/** Steps named before that don't come before, among them those that wait for one another in a circle. */
function outOfOrder(steps: readonly AssemblyStep[]): readonly Remark[] {
  const at = new Map(steps.map((s, i) => [s.name, i]));
  return steps.flatMap((step, i) =>
    step.after.flatMap((name) => {
      const before = at.get(name);
      if (before !== undefined && before < i) return [];
      return before === undefined
        ? [fault(step.name, `"${step.name}" comes after "${name}", which is no step.`, "missing", name)]
        : [
            fault(
              step.name,
              `"${step.name}" must come after "${name}", but stands as step ${i + 1} where that is step ${before + 1}.`,
              `step ${i + 1}`,
              `after step ${before + 1}`,
            ),
          ];
    }),
  );
}

/** Nothing is done in a place that an earlier step has shut. */
function shutIn(steps: readonly AssemblyStep[]): readonly Remark[] {
  return steps.flatMap((step, i) =>
    step.reaches.flatMap((place) => {
      const shutBy = steps.slice(0, i).find((s) => s.shuts.includes(place));
      if (!shutBy) return [];
      return [
        fault(
          step.name,
          `"${step.name}" needs the ${place}, which "${shutBy.name}" has shut before.`,
          `after "${shutBy.name}"`,
          `before "${shutBy.name}"`,
        ),
      ];
    }),
  );
}

const twice = (steps: readonly AssemblyStep[]): readonly Remark[] =>
  steps
    .filter((s, i) => steps.findIndex((other) => other.name === s.name) !== i)
    .map((s) => fault(s.name, `"${s.name}" is a step twice.`, "2", "1"));

/** A seam join is named after its seam and its run: "front to gusset: edge". */
const seamOf = (name: string): string => name.split(":")[0]!;

/** Whatever is joined must be joined at some time. */
function forgotten(job: Made, steps: readonly AssemblyStep[]): readonly Remark[] {
  const known = new Set(steps.map((s) => s.name));
  const joined = job.joins.flatMap((j) =>
    j.kind === "seam" ? [seamOf(j.name)] : j.kind === "fixed" ? [j.name] : [],
  );
  return [...new Set(joined)]
    .filter((name) => !known.has(name))
    .map((name) => fault(name, `"${name}" is joined, and no step says when.`, "missing", name));
}

/**
 * The steps of putting together can be done in their order: each comes after what it waits for, none reaches
 * a place that is shut already, and every seam and every riveted or stitched place has its step.
 */
export const assemblyOrder = rule(
  "assembly-order",
  "the steps of putting together can be done in their order",
  (job) => {
    const steps = job.assembly ?? [];
    return [...twice(steps), ...outOfOrder(steps), ...shutIn(steps), ...forgotten(job, steps)];
  },
);
