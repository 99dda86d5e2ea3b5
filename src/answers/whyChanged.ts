import type { QuantityKind } from "../model/quantity.ts";
import { sayFigure, sayValue, type Units } from "../model/say.ts";
import { isSame } from "./same.ts";
import type { SummaryDerivation, SummaryStep } from "./summary.ts";

/** The names that decided a result; a value that only stood beside others in a choice did not. */
function decided(d: SummaryDerivation): ReadonlySet<string> {
  const found = new Set<string>();
  const visit = (name: string): void => {
    if (found.has(name)) return;
    found.add(name);
    for (const s of d.steps) if (s.name === name) s.inputs.forEach(visit);
  };
  visit(d.result);
  return found;
}

/** A step's fellow in another chain: of several with one name, the one in the same place among them. */
function fellow(step: SummaryStep, of: SummaryDerivation, among: SummaryDerivation): SummaryStep | undefined {
  const place = of.steps.filter((s) => s.name === step.name).indexOf(step);
  return among.steps.filter((s) => s.name === step.name)[place];
}

/** A formula in names alone, without the figures of this order. */
const words = (s: SummaryStep): string => s.parts.map((p) => (typeof p === "string" ? p : p.name)).join("");
const figures = (s: SummaryStep, units: Units): string =>
  s.parts
    .map((p) => (typeof p === "string" ? p : sayFigure(p.value, p.kind as QuantityKind, units)))
    .join("");

const ORIGINS: Readonly<Record<string, string>> = {
  given: "what the order gives",
  default: "the default",
  fact: "a figure of the built-in tables",
};

const sourceOf = (s: SummaryStep): string => s.origin?.source ?? s.source ?? "";
const inBrackets = (text: string): string => (text === "" ? "" : ` (${text})`);

function sayStep(before: SummaryStep, after: SummaryStep, units: Units): string {
  const value = (s: SummaryStep): string => sayValue(s.value, s.kind as QuantityKind, units);
  const source = inBrackets(sourceOf(after));
  if (after.origin && before.origin)
    return `${after.name}: ${ORIGINS[after.origin.kind] ?? "the value"} was ${value(before)}, is now ${value(after)}${source}`;
  if (after.origin)
    return `${after.name}: was reckoned, ${words(before)}; is now ${value(after)}, ${ORIGINS[after.origin.kind] ?? "set"}${source}`;
  if (before.origin)
    return `${after.name}: was ${value(before)}${inBrackets(sourceOf(before))}; is now reckoned, ${words(after)}${source}`;
  const [was, is] = [words(before), words(after)];
  return was === is
    ? `${after.name}: the formula's figures were ${figures(before, units)}, are now ${figures(after, units)}${source}`
    : `${after.name}: the formula was ${was}, is now ${is}${source}`;
}

const differs = (a: SummaryStep, b: SummaryStep): boolean =>
  !isSame(a.value, b.value, b.kind) ||
  (a.origin === undefined) !== (b.origin === undefined) ||
  words(a) !== words(b);

/**
 * Why a size of the same order came out otherwise: the first step of how it came about that is not as it
 * was; undefined when no step tells, so that only the engine's version does.
 */
export function whyChanged(
  before: SummaryDerivation,
  after: SummaryDerivation,
  units: Units,
): string | undefined {
  const counts = new Set([...decided(before), ...decided(after)]);
  for (const step of after.steps) {
    if (!counts.has(step.name)) continue;
    const was = fellow(step, after, before);
    // A step that is new comes with the formula that asks for it: that one tells more.
    if (was && differs(was, step)) return sayStep(was, step, units);
  }
  return undefined;
}
