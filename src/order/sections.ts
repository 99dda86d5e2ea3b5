import type { ArticleDefinition, Resolved, Section } from "../articles/definition.ts";
import type { DimensionTable, Value, Values } from "../model/dimension.ts";
import type { Fault } from "../model/finding.ts";
import { type Resolution, resolve } from "../model/resolve.ts";
import type { Units } from "../model/say.ts";
import { type GivenSection, NOTHING_GIVEN } from "./sort.ts";

/** A section that was resolved without a fault. */
export type Solved = { readonly section: Section; readonly resolution: Resolution<DimensionTable> };

export type SectionsSolved = {
  readonly solved: readonly Solved[];
  readonly faults: readonly Fault[];
  readonly values: Resolved;
};

/** Thrown to get out of a hand-over that asks for a section with faults. */
const FAILED = Symbol("failed");

type Handed = Readonly<Record<string, Value>>;

/** What is handed to a section; undefined when a section that it needs has faults. */
function handedTo(section: Section, values: Resolved): Handed | undefined {
  if (!section.handOver) return {};
  try {
    const all = Object.entries(section.handOver(values));
    return Object.fromEntries(all.filter((e): e is [string, Value] => e[1] !== undefined));
  } catch (e) {
    if (e === FAILED) return undefined;
    throw e;
  }
}

/** Faults that hold whatever the values are that could not be had. */
function certain(fault: Fault, given: GivenSection, complete: boolean): boolean {
  const name = fault.key.slice(fault.key.lastIndexOf(".") + 1);
  if (fault.code === "missing") return complete && !given.faulty.includes(name);
  if (fault.code === "range") return complete || Object.hasOwn(given.given, name);
  if (fault.code === "contradiction") return complete && given.faulty.length === 0;
  return true;
}

/** What is read of an article, or of a shop file. */
export type Sections = Pick<ArticleDefinition, "sections" | "sample">;

/** The article's sample values of one section, by name. */
function sampleOf(article: Sections, path: string): Readonly<Record<string, string>> {
  const own = Object.entries(article.sample).filter(([p]) => p.slice(0, p.lastIndexOf(".")) === path);
  return Object.fromEntries(own.map(([p, text]) => [p.slice(p.lastIndexOf(".") + 1), text]));
}

/**
 * Resolves an article's sections in their order, each with what those before it hand over. A section
 * that needs one with faults is still read; only its given texts and plain ranges are judged then.
 */
export function solveSections(
  article: Sections,
  sections: ReadonlyMap<string, GivenSection>,
  units: Units,
  file: string,
): SectionsSolved {
  const done = new Map<string, Solved | undefined>();
  const values: Resolved = {
    of<T extends DimensionTable>(section: Section<T>): Values<T> {
      if (!done.has(section.path)) throw new Error(`section ${section.path} is not reached yet`);
      const solved = done.get(section.path);
      if (!solved) throw FAILED;
      return solved.resolution.values as Values<T>;
    },
  };
  const faults: Fault[] = [];
  for (const section of article.sections) {
    const { path, label, table } = section;
    const given = sections.get(path) ?? NOTHING_GIVEN;
    const handed = handedTo(section, values);
    const place = given.place ? { place: given.place } : {};
    const resolution = resolve({
      table,
      section: path,
      label,
      given: given.given,
      handed: handed ?? {},
      sample: sampleOf(article, path),
      units,
      file,
      ...place,
    });
    faults.push(...resolution.faults.filter((f) => certain(f, given, handed !== undefined)));
    const whole = handed !== undefined && given.faulty.length === 0 && resolution.values !== undefined;
    done.set(path, whole ? { section, resolution } : undefined);
  }
  return { solved: [...done.values()].filter((s) => s !== undefined), faults, values };
}
