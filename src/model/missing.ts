import { type Dimension, isMeasured } from "./dimension.ts";
import type { Fault, TextPlace } from "./finding.ts";
import { rangeOf } from "./judge.ts";
import type { Look } from "./known.ts";
import { within, writtenMiddle } from "./limit.ts";
import { sayAllowed } from "./rangeFault.ts";
import { readGiven } from "./readGiven.ts";
import type { Units } from "./say.ts";
import { oneOf } from "./words.ts";

/** The section that a value is missing from. */
type Where = {
  readonly section: string;
  readonly sample?: Readonly<Record<string, string>>;
  readonly units: Units;
  readonly place?: TextPlace;
};

/** An even number is no example where one in the middle is needed. */
function oddText(text: string, most: number): string {
  const n = Number(text);
  return n % 2 !== 0 ? text : String(n + 1 <= most ? n + 1 : n - 1);
}

type Hint = { readonly allowed?: string; readonly example?: string };

/** What may be written for a dimension, and an example: the article's own, or the middle of its range. */
function hintFor(d: Dimension, sample: string | undefined, units: Units, look: Look): Hint {
  if (d.kind === "choice") return { allowed: oneOf(d.choices), example: sample ?? d.choices[0] ?? "" };
  const given = sample === undefined ? {} : { example: sample };
  if (!isMeasured(d)) return given;
  const range = rangeOf(d, look);
  if (!range || Number.isNaN(range.bounds.least + range.bounds.most)) return given;
  const { bounds } = range;
  const read =
    sample === undefined ? undefined : readGiven(d, sample, "", { kind: "given", where: "" }, units);
  const fits = read && "value" in read && typeof read.value === "object" && within(read.value.value, bounds);
  const middle = writtenMiddle(bounds, d.kind, units);
  const example = fits ? sample : middle && d.odd ? oddText(middle, bounds.most) : middle;
  return { allowed: sayAllowed(d, range, units), ...(example === undefined ? {} : { example }) };
}

/** The fault of a value that must be given and was not; `own` is its name in the order. */
export function missing(w: Where, own: string, d: Dimension, look: Look): Fault {
  const fault = {
    code: "missing",
    key: w.section === "" ? own : `${w.section}.${own}`,
    ...(w.place ? { place: w.place } : {}),
  };
  if (d.handed) {
    const problem = `${d.means}: it follows from ${d.source}, where it was not found`;
    return { ...fault, problem, mend: `look at ${d.source}` };
  }
  const { allowed, example } = hintFor(d, w.sample?.[own], w.units, look);
  const under = w.section === "" ? "at the top level" : `under ${w.section}`;
  return {
    ...fault,
    problem: `${d.means}: not given, and it has no default`,
    ...(allowed === undefined ? {} : { allowed }),
    mend: `add ${own} ${under}${example === undefined ? "" : `, as in ${own}: ${example}`}`,
  };
}
