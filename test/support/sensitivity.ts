import type { Quantity } from "../../src/model/quantity.ts";
import { allIn, readExpression } from "./readExpression.ts";

// Does a size change with what its history says it changes with, and with nothing else?

type Numbers = Readonly<Record<string, number>>;

/** Works a size from numbers by name; the leaves of its history carry these names. */
export type Work = (values: Numbers) => Quantity;

/** Small first: steps and whole counts need a larger change than a formula does. */
const SHARES = [1e-4, -1e-4, 1e-3, -1e-3, 0.01, -0.01, 0.05, -0.05, 0.2, -0.2, 0.5, -0.5, 1, 2];
/** What decides a choice, or is beside it, is told apart by a change this small. */
const SMALL = SHARES.slice(0, 2);
/** Changes smaller than this are rounding. */
const SAME = 1e-9;

const differs = (a: number, b: number): boolean => Math.abs(a - b) > SAME * Math.max(1, Math.abs(a));
const moved = (v: number, share: number): number => (v === 0 ? share : v * (1 + share));

/** The names of the given values that a history says its result changes with. */
export function namedInputs(result: Quantity): ReadonlySet<string> {
  const seen = new Set<Quantity>();
  const visit = (q: Quantity): void => {
    if (seen.has(q)) return;
    seen.add(q);
    for (const input of q.inputs) visit(input);
  };
  visit(result);
  return new Set([...seen].filter((q) => q.origin && q.origin.kind !== "fact").map((q) => q.name ?? ""));
}

/** A step's text, worked again with each of its named values changed. */
function faultsOfStep(q: Quantity): readonly string[] {
  const value = readExpression(q);
  if (value === undefined) return [];
  const parts = q.parts.filter((p) => typeof p !== "string");
  const felt = (part: Quantity, shares: readonly number[]): boolean =>
    shares.some((share) =>
      differs(readExpression(q, { part, to: moved(part.value, share) }) ?? value, value),
    );
  const stray = q.inputs
    .filter((i) => !parts.includes(i))
    .map((i) => `${q.name} names ${i.name}, which its text lacks`);
  // Only what is rounded may sleep through a small change; a large one would also turn a choice round.
  const steps = q.parts.some((p) => typeof p === "string" && /rounded|odd/.test(p));
  const deaf = q.inputs.filter((i) => parts.includes(i) && !felt(i, steps ? SHARES : SMALL));
  const hidden = parts.filter((p) => !q.inputs.includes(p) && felt(p, SMALL));
  return [
    ...stray,
    ...deaf.map((i) => `${q.name} names ${i.name}, but doesn't change with it`),
    ...hidden.map((p) => `${q.name} changes with ${p.name}, but doesn't name it`),
  ];
}

/**
 * What is wrong with a history: one sentence a fault; none when it tells the truth. Each step is worked
 * again from its text; the whole is worked again from changed values. A value that is named may cancel out
 * over several steps (a length less half a fold, plus that half), so that it is looked for in the whole
 * only where every input was given.
 */
export function faultsOfHistory(work: Work, values: Numbers): readonly string[] {
  const result = work(values);
  const inputs = namedInputs(result);
  const direct = result.inputs.every((i) => i.origin !== undefined);
  const faults = [...inputs].filter((n) => !(n in values)).map((n) => `names ${n}, which nobody gave`);
  for (const name of Object.keys(values)) {
    const felt = (shares: readonly number[]): boolean =>
      shares.some((share) =>
        differs(work({ ...values, [name]: moved(values[name]!, share) }).value, result.value),
      );
    if (inputs.has(name)) {
      if (direct && !felt(SHARES)) faults.push(`names ${name}, but doesn't change with it`);
    } else if (felt(SMALL)) {
      faults.push(`changes with ${name}, but doesn't name it`);
    }
  }
  return [...faults, ...allIn(result).flatMap(faultsOfStep)];
}
