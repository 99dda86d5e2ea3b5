import type { ArticleDefinition } from "../articles/definition.ts";
import { type Dimension, isMeasured, orderKey, type Value } from "../model/dimension.ts";
import { leaf } from "../model/quantity.ts";
import { MM_PER_OUNCE } from "../units/index.ts";
import { allowedWords, boundOf, defaultWords, type Known, PRACTICE, sentence, textOf } from "./about.ts";
import { type Branch, branchesOf, nameOf, tableOf } from "./branch.ts";
import { under } from "./entry.ts";
import type { Order } from "./order.ts";
import { sampleOrder } from "./sample.ts";
import { scalarText } from "./scalar.ts";
import { topTable } from "./top.ts";

/** Fits a window and a printed page. */
const LINE_LENGTH = 100;
const STEP = "  ";

const HEAD =
  "A line with # before it does nothing. Those with a space after the # explain; those without one are " +
  "settings as they are when left alone: to change one, take its # away and write what you want.";
const WORKED =
  'Ranges, and defaults with "from", are worked out for the figures in this file and change with them.';
const UNITS =
  "Lengths: 41 1/2 in, 41.5 in, 3 ft 5 1/2 in, 1054 mm or 105.4 cm. Leather: 9 oz, 8-9 oz, 6 iron or " +
  `3.5 mm. A default with no source in brackets is ${PRACTICE}.`;

/** Words as lines of comment, none longer than a line may be. */
function comment(words: string, indent: string): readonly string[] {
  const lines: string[] = [];
  let line = `${indent}#`;
  for (const word of words.split(" ").filter(Boolean)) {
    if (line.length + 1 + word.length > LINE_LENGTH && line !== `${indent}#`) {
      lines.push(line);
      line = `${indent}#`;
    }
    line += ` ${word}`;
  }
  return [...lines, line];
}

/** Steps of round sizes, mm and radians. */
const ROUND_STEPS: Partial<Record<Dimension["kind"], number>> = {
  length: 25.4 / 8,
  thickness: MM_PER_OUNCE / 2,
  hands: 101.6,
  pitch: 0.5,
  angle: Math.PI / 36,
  count: 1,
  ratio: 0.01,
};

/** A round size from the middle of the range: something to overwrite. */
function example(d: Dimension, known: Known): string {
  if (!isMeasured(d)) return "";
  const least = boundOf(d.least, known) ?? 0;
  const most = boundOf(d.most, known) ?? least;
  const middle = (least + most) / 2;
  const step = ROUND_STEPS[d.kind] ?? 1;
  const near = Math.round(middle / step) * step;
  const round = d.odd && near % 2 === 0 ? near + 1 : near;
  return textOf(d, round >= least && round <= most ? round : middle, known);
}

type Setting = { readonly d: Dimension; readonly known: Known; readonly value: Value | undefined };

/** Its meaning on a line, and on the next its range and its default. */
function explained({ d, known, value }: Setting, sample: string | undefined): readonly string[] {
  const byDefault = defaultWords(d, known);
  const followed =
    byDefault === "" && typeof value === "object" && value.origin?.kind !== "given" && value.name;
  const otherwise = followed
    ? `Default ${textOf(d, value, known)}, from ${value.name}`
    : byDefault || `Must be given${sample === undefined ? "" : ". An example: put your own"}`;
  return [sentence(d.means), [allowedWords(d, known), otherwise].map(sentence).filter(Boolean).join(" ")];
}

/** One setting: its explanation, and its line, with a # before it unless the sample gives it. */
function setting(s: Setting, key: string, indent: string, sample: string | undefined): readonly string[] {
  const own = s.value === undefined ? example(s.d, s.known) : textOf(s.d, s.value, s.known);
  const mark = sample === undefined ? "#" : "";
  return [
    ...explained(s, sample).flatMap((words) => comment(words, indent)),
    `${indent}${mark}${key}: ${scalarText(sample ?? own, false)}`,
  ];
}

/** The values of a branch's own section; the top level has none but its defaults. */
function valuesOf(branch: Branch, order: Order): Known["values"] {
  const isSection = branch.path !== "" && branch.section !== undefined;
  return isSection ? (order.values.of(branch.section) as Record<string, Value | undefined>) : undefined;
}

/** A default of the top level, which no article resolves. */
const topDefault = (name: string, d: Dimension): Value =>
  isMeasured(d)
    ? leaf(orderKey(name), d.default as number, "length", { kind: "default", source: d.source })
    : (d.default as Value);

function settings(branch: Branch, order: Order, indent: string): readonly string[] {
  const table = tableOf(branch);
  const values = valuesOf(branch, order);
  const lines: string[] = [];
  for (const [name, d] of Object.entries(table)) {
    const path = under(branch.path, orderKey(name));
    // The article's own line stands at the top, before all settings.
    if (d.handed || path === "article") continue;
    const value = values ? values[name] : topDefault(name, d);
    const apart = lines.length === 0 ? [] : [""];
    const s = { d, known: { table, values }, value };
    lines.push(...apart, ...setting(s, orderKey(name), indent, order.article.sample[path]));
  }
  return lines;
}

function section(branch: Branch, order: Order, indent: string): readonly string[] {
  const title = branch.section?.title ?? "";
  const inner = `${indent}${STEP}`;
  const own = settings(branch, order, inner);
  return [
    "",
    ...(title === "" ? [] : comment(sentence(title), indent)),
    `${indent}${nameOf(branch)}:`,
    ...own,
    ...branch.branches.flatMap((b, i) => section(b, order, inner).slice(own.length === 0 && i === 0 ? 1 : 0)),
  ];
}

/**
 * The text of a new order: every setting with its meaning, range and default, those of the article's
 * sample set, all others as comments. Read back, it gives the sample's order.
 */
export function beginOrder(article: ArticleDefinition): string {
  const order = sampleOrder(article);
  const root = branchesOf(topTable([article.name]), article);
  return [
    ...comment(`An order: ${article.name}, ${article.means}.`, ""),
    "#",
    ...comment(HEAD, ""),
    ...comment(WORKED, ""),
    ...comment(UNITS, ""),
    "",
    `article: ${scalarText(article.name, false)}`,
    "",
    ...settings(root, order, ""),
    ...root.branches.flatMap((b) => section(b, order, "")),
    "",
  ].join("\n");
}
