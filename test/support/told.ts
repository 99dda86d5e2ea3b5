import type { ArticleDefinition } from "../../src/articles/definition.ts";
import { type Dimension, isMeasured, orderKey } from "../../src/model/dimension.ts";
import type { ResolvedDimension } from "../../src/model/resolve.ts";
import { conditionsOf, isSaid, namesIn, type Sentence, sentenceParts } from "../../src/model/sentence.ts";
import type { Order } from "../../src/order/order.ts";
import { topTable } from "../../src/order/top.ts";
import { measuredText, plainText } from "../../src/order/value-text.ts";

// What an article's sentences must keep to, and how they read with an order's values.

/** Every name that an order of the article may set, but `article`, which it is. */
export function settable(article: ArticleDefinition): ReadonlyMap<string, Dimension> {
  const tables = [
    ["", topTable([article.name])] as const,
    ...article.sections.map((s) => [`${s.path}.`, s.table] as const),
  ];
  const all = tables.flatMap(([prefix, table]) =>
    Object.entries(table)
      .filter(([, d]) => !d.handed)
      .map(([name, d]): [string, Dimension] => [`${prefix}${orderKey(name)}`, d]),
  );
  return new Map(all.filter(([key]) => key !== "article"));
}

/** One line for each fault of the article's sentences; none when they are sound. */
export function toldFaults(article: ArticleDefinition): readonly string[] {
  const known = settable(article);
  const { sentences, rest } = article.told;
  const placed = sentences.flatMap(namesIn);
  const named = [...placed, ...rest];
  return [
    ...[...known.keys()].filter((n) => !named.includes(n)).map((n) => `${n} is told nowhere`),
    ...named.filter((n) => !known.has(n)).map((n) => `${n} is no name that can be set`),
    ...named.filter((n, k) => named.indexOf(n) !== k).map((n) => `${n} is told twice`),
    ...sentences.flatMap((s) => sentenceFaults(s, known, placed)),
  ];
}

function sentenceFaults(
  s: Sentence,
  known: ReadonlyMap<string, Dimension>,
  placed: readonly string[],
): readonly string[] {
  const names = namesIn(s);
  const words = sentenceParts(s.text).filter((p) => typeof p === "string");
  const form = [
    ...(names.length === 0 ? ["sets no value"] : []),
    ...(words.some((w) => /[{}]/.test(w)) ? ["has a stray brace"] : []),
    ...(/^[A-Z{].*\.$/.test(s.text) && !/ {2}| [,;.]/.test(s.text) ? [] : ["isn't written as a sentence"]),
    ...(words.some((w) => /(^|\s)an? $/i.test(w)) ? ["has a or an before a value"] : []),
    ...(s.or && !s.when ? ["has an alternative to nothing"] : []),
  ];
  const conditions = conditionsOf(s).flatMap(({ name, is }) => {
    const d = known.get(name);
    if (!d || isMeasured(d)) return [`hangs on ${name}, which is no choice, flag or text`];
    const wrong = is.filter((v) => !mayBe(d, v)).map((v) => `hangs on ${name}: ${v}, which it can't be`);
    return [
      ...wrong,
      ...(is.length === 0 ? [`hangs on ${name} and no value`] : []),
      ...(names.includes(name) ? [`would take ${name} away with itself`] : []),
      ...(placed.includes(name) ? [] : [`hangs on ${name}, which no sentence sets`]),
    ];
  });
  return [...form, ...conditions].map((fault) => `"${s.text}" ${fault}`);
}

function mayBe(d: Dimension, value: string): boolean {
  if (d.kind === "choice") return d.choices.includes(value);
  if (d.kind === "flag") return value === "yes" || value === "no";
  return true;
}

const NOTHING = "–";

function textOf({ value, kind, least, most }: ResolvedDimension): string {
  if (value === undefined || value === "") return NOTHING;
  if (typeof value !== "number") return plainText(value);
  return measuredText(value, kind as Parameters<typeof measuredText>[1], { least, most });
}

/** The texts of an order's values by name, defaults included. */
export const orderTexts = (order: Order): ReadonlyMap<string, string> =>
  new Map(order.sections.flatMap((s) => s.dimensions).map((d) => [d.key, textOf(d)]));

/** The sentences that an order reads aloud, its values in place. */
export function readAloud(
  sentences: readonly Sentence[],
  texts: ReadonlyMap<string, string>,
): readonly string[] {
  return sentences
    .filter((s) => isSaid(s, (name) => texts.get(name)))
    .map((s) =>
      sentenceParts(s.text)
        .map((p) => (typeof p === "string" ? p : (texts.get(p.name) ?? `?${p.name}?`)))
        .join(""),
    );
}

/** Names of the sentences that the order doesn't read aloud. */
export const unsaidNames = (
  article: ArticleDefinition,
  texts: ReadonlyMap<string, string>,
): readonly string[] =>
  article.told.sentences.filter((s) => !isSaid(s, (name) => texts.get(name))).flatMap(namesIn);
