import type { ArticleDefinition } from "../articles/definition.ts";
import { type Dimension, orderKey } from "../model/dimension.ts";
import type { Fault } from "../model/finding.ts";
import { readGiven } from "../model/readGiven.ts";
import { type GivenText, resolve } from "../model/resolve.ts";
import type { Units } from "../model/say.ts";
import type { ShopSize } from "../model/shop.ts";
import { nearestWord, oneOf } from "../model/words.ts";
import { type NamedMeasure, readNamedMeasures } from "../trade/shopLists.ts";
import { readLength } from "../units/index.ts";
import { quote } from "../units/quote.ts";
import { measuresOf, punches, settingOf, settingsOf, sizes } from "./shopSections.ts";
import { type GivenSection, NOTHING_GIVEN } from "./sort.ts";

// Sections of a shop file whose names are the workshop's own.

type Sections = ReadonlyMap<string, GivenSection>;
type Opened<T> = { readonly found: readonly T[]; readonly faults: readonly Fault[] };

type Punch = { readonly number: string; readonly size: number };

/** No round punch is smaller or larger, mm. */
const PUNCH_MM = { least: 0.2, most: 60 };

/** The workshop's round punches, smallest first. */
export function readPunches(sections: Sections, units: Units): Opened<Punch> {
  const found: Punch[] = [];
  const faults: Fault[] = [];
  for (const [number, { text, place }] of Object.entries(
    (sections.get(punches.path) ?? NOTHING_GIVEN).given,
  )) {
    const fault = { code: "unreadable", key: `${punches.path}.${number}`, place };
    const size = readLength(text, units);
    if (!size.ok) faults.push({ ...fault, problem: size.problem, mend: size.mend });
    else if (size.value >= PUNCH_MM.least && size.value <= PUNCH_MM.most)
      found.push({ number, size: size.value });
    else
      faults.push({
        ...fault,
        code: "range",
        problem: `size of the punch: got ${quote(text)}`,
        allowed: `${PUNCH_MM.least} mm to ${PUNCH_MM.most} mm`,
        mend: "write the diameter of its hole with its unit, as in 2 mm",
      });
  }
  return { found: found.sort((a, b) => a.size - b.size), faults };
}

/** One size's text under an article, and where it stands. */
type Given = { readonly article: ArticleDefinition; readonly key: string; readonly at: GivenText };

/** A measure that an article hasn't, with the nearest that it has. */
function unknownMeasure(
  { name }: NamedMeasure,
  names: readonly string[],
  { key, at, article }: Given,
): Fault {
  const near = nearestWord(name, names);
  return {
    code: "unknown-key",
    key,
    place: at.place,
    problem: `${quote(name)} is no measure of ${article.name}`,
    allowed: oneOf(names),
    mend: near === undefined ? "take it out" : `write ${near}`,
  };
}

/** Orders differ in what a bare number means, so a length of a size has its unit beside it. */
function bareLength(d: Dimension, { text }: NamedMeasure, { key, at }: Given): Fault | undefined {
  const read = d.kind === "length" ? readLength(text) : undefined;
  return read && !read.ok
    ? { code: "unreadable", key, place: at.place, problem: read.problem, mend: read.mend }
    : undefined;
}

/**
 * What is wrong with a setting that stands with its section. Its text must be readable; its range may follow from
 * the whole order, which judges it when the size is made.
 */
function otherSetting(m: NamedMeasure, given: Given): Fault | undefined {
  const found = settingOf(given.article, m.name);
  if (!found) return unknownMeasure(m, settingsOf(given.article), given);
  const bare = bareLength(found.dimension, m, given);
  if (bare) return bare;
  const read = readGiven(found.dimension, m.text, m.name, { kind: "given", where: given.key }, "in");
  return "problem" in read
    ? {
        code: "unreadable",
        key: given.key,
        place: given.at.place,
        problem: `${m.name}: ${read.problem}`,
        mend: read.mend,
      }
    : undefined;
}

const isWithSection = ({ name }: NamedMeasure): boolean => name.includes(".");

/** The measures of one size, each judged as an order's would be. */
function measuresIn(given: Given, file: string): Opened<readonly [string, string]> {
  const { article, key, at } = given;
  const fault = (problem: string, mend: string): Fault => ({
    code: "unreadable",
    key,
    place: at.place,
    problem,
    mend,
  });
  const list = readNamedMeasures(at.text);
  if (!list.ok) return { found: [], faults: [fault(list.problem, list.mend)] };
  const table = measuresOf(article)?.table ?? {};
  const byKey = new Map(
    Object.entries(table).flatMap(([name, d]) => (d.handed ? [] : [[orderKey(name), d] as const])),
  );
  const faults = list.value.flatMap((m) => {
    if (isWithSection(m)) return otherSetting(m, given) ?? [];
    const d = byKey.get(m.name);
    return d ? (bareLength(d, m, given) ?? []) : unknownMeasure(m, [...byKey.keys()], given);
  });
  if (faults.length > 0) return { found: [], faults };
  const all = list.value.map(({ name, text }): [string, string] => [name, text]);
  const texts = all.filter(([name]) => !name.includes("."));
  const judged = resolve({
    table,
    section: key,
    label: "",
    given: Object.fromEntries(texts.map(([name, text]) => [name, { text, place: at.place }])),
    units: "in",
    file,
  });
  // A size need not have every measure: what is missing, or follows from what is, the order's own reading tells.
  const own = judged.faults.filter((f) => texts.some(([name]) => f.key === `${key}.${name}`));
  return { found: own.length > 0 ? [] : all, faults: own };
}

/** The workshop's own sizes, by article. */
export function readSizes(sections: Sections, file: string): Opened<ShopSize> {
  const found: ShopSize[] = [];
  const faults: Fault[] = [];
  for (const { article, section } of sizes) {
    for (const [name, at] of Object.entries((sections.get(section.path) ?? NOTHING_GIVEN).given)) {
      const measures = measuresIn({ article, key: `${section.path}.${name}`, at }, file);
      faults.push(...measures.faults);
      found.push({ article: article.slug, name, measures: Object.fromEntries(measures.found) });
    }
  }
  return { found, faults };
}
