import type { ArticleDefinition, Resolved, Section } from "../../src/articles/definition.ts";
import {
  type Dimension,
  type DimensionTable,
  isFormula,
  isMeasured,
  type Known,
  type MeasuredDimension,
  orderKey,
  type Value,
  workingOrder,
} from "../../src/model/dimension.ts";
import type { Quantity } from "../../src/model/quantity.ts";
import { type GivenText, resolve } from "../../src/model/resolve.ts";

// Orders drawn from the whole of an article's dimension tables: each value lies anywhere between its least
// and its most, as they stand after the values before it. Nothing is filtered out.

export type AnyOrder = { readonly text: string; readonly given: Readonly<Record<string, string>> };

/** How often a value is left to its default. */
const LEFT_OUT = 0.5;

export function anyOrder(article: ArticleDefinition, random: () => number): AnyOrder {
  const values = new Map<string, unknown>();
  const done: Resolved = {
    of: (s) => {
      const v = values.get(s.path);
      if (!v) throw new Error(`${s.path} is not resolved`);
      return v as never;
    },
  };
  const given: Record<string, string> = {};
  for (const section of article.sections) {
    const handed = handedTo(section, done);
    if (handed === undefined) break;
    const texts = anySection(section.table, handed, random);
    for (const [key, text] of Object.entries(texts)) given[`${section.path}.${key}`] = text;
    const resolved = resolve({
      table: section.table,
      section: section.path,
      label: section.label,
      given: asGiven(texts),
      handed,
      units: "mm",
      file: "any.yaml",
    });
    if (resolved.values) values.set(section.path, resolved.values);
  }
  return { text: orderText(article, given), given };
}

/** What a section is handed, or undefined when an earlier one has a fault. */
function handedTo(section: Section, done: Resolved): Record<string, Value> | undefined {
  try {
    const handed = section.handOver?.(done) ?? {};
    return Object.fromEntries(Object.entries(handed).filter(([, v]) => v !== undefined)) as Record<
      string,
      Value
    >;
  } catch {
    return undefined;
  }
}

const asGiven = (texts: Readonly<Record<string, string>>): Record<string, GivenText> =>
  Object.fromEntries(Object.entries(texts).map(([k, text]) => [k, { text, place: { line: 1, column: 1 } }]));

function anySection(
  table: DimensionTable,
  handed: Readonly<Record<string, Value>>,
  random: () => number,
): Record<string, string> {
  const known = new Map<string, Value | undefined>(Object.entries(handed));
  const texts: Record<string, string> = {};
  const look: Known = {
    q: (n) => known.get(n) as Quantity,
    maybe: (n) => known.get(n) as Quantity | undefined,
    choice: (n) => known.get(n) as string,
    flag: (n) => known.get(n) as boolean,
  };
  for (const name of workingOrder(table)) {
    const d = table[name]!;
    if (known.has(name)) continue;
    if (d.handed) {
      known.set(name, defaultOf(d, look));
      continue;
    }
    const must = isMeasured(d) && d.default === undefined && !d.optional;
    if (!must && random() < LEFT_OUT) {
      known.set(name, defaultOf(d, look));
      continue;
    }
    const picked = pick(d, look, random);
    if (picked === undefined) {
      known.set(name, defaultOf(d, look));
      continue;
    }
    known.set(name, picked.value);
    texts[orderKey(name)] = picked.text;
  }
  return texts;
}

const bare = (value: number, kind: Quantity["kind"]): Quantity => ({
  value,
  kind,
  name: "any",
  origin: { kind: "fact", source: "any" },
  parts: [],
  inputs: [],
});

function defaultOf(d: Dimension, look: Known): Value | undefined {
  if (isFormula(d.default)) return d.default.of(look);
  if (isMeasured(d))
    return d.default === undefined
      ? undefined
      : bare(d.default as number, d.kind === "hands" ? "length" : d.kind);
  return d.default;
}

const UNIT: Partial<Record<MeasuredDimension["kind"], string>> = {
  length: " mm",
  thickness: " mm",
  pitch: " mm",
};

function pick(d: Dimension, look: Known, random: () => number): { value: Value; text: string } | undefined {
  if (d.kind === "choice") {
    const value = d.choices[Math.floor(random() * d.choices.length)]!;
    return { value, text: value };
  }
  if (d.kind === "flag") {
    const value = random() < 0.5;
    return { value, text: value ? "yes" : "no" };
  }
  if (!isMeasured(d)) {
    const text = d.example ?? "any";
    return { value: text, text };
  }
  const bound = (b: MeasuredDimension["least"]): number =>
    isFormula(b) ? (b.of(look) as Quantity).value : (b as number);
  const [least, most] = [bound(d.least), bound(d.most)];
  if (!(most >= least)) return undefined;
  const raw = least + random() * (most - least);
  if (d.kind === "count") {
    const value = Math.max(Math.ceil(least - 1e-9), Math.min(Math.floor(most + 1e-9), Math.round(raw)));
    const whole = d.odd && value % 2 === 0 ? (value + 1 <= most ? value + 1 : value - 1) : value;
    return { value: bare(whole, "count"), text: String(whole) };
  }
  if (d.kind === "angle") {
    const degrees = Math.round((raw * 180) / Math.PI);
    return { value: bare((degrees * Math.PI) / 180, "angle"), text: `${degrees} deg` };
  }
  // Written with 8 decimals, turned inward so that writing can't leave the range.
  const text = inward(raw, least, most);
  return {
    value: bare(Number(text), d.kind === "hands" ? "length" : d.kind),
    text: `${text}${UNIT[d.kind] ?? ""}`,
  };
}

function inward(value: number, least: number, most: number): string {
  const text = value.toFixed(8);
  if (Number(text) < least) return (Math.ceil(least * 1e8) / 1e8).toFixed(8);
  return Number(text) > most ? (Math.floor(most * 1e8) / 1e8).toFixed(8) : text;
}

/** The order as a file would have it. */
export function orderText(article: ArticleDefinition, given: Readonly<Record<string, string>>): string {
  const tree: Record<string, unknown> = {};
  for (const [path, text] of Object.entries(given)) {
    let at = tree;
    const keys = path.split(".");
    for (const key of keys.slice(0, -1)) {
      at[key] ??= {};
      at = at[key] as Record<string, unknown>;
    }
    at[keys.at(-1)!] = text;
  }
  const lines = (node: Record<string, unknown>, indent: string): string[] =>
    Object.entries(node).flatMap(([k, v]) =>
      typeof v === "string"
        ? [`${indent}${k}: ${v}`]
        : [`${indent}${k}:`, ...lines(v as Record<string, unknown>, `${indent}  `)],
    );
  return [`article: ${article.name}`, "units: mm", ...lines(tree, ""), ""].join("\n");
}
