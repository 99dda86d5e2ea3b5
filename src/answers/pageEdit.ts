import { articles } from "../articles/index.ts";
import { isMeasured, orderKey } from "../model/dimension.ts";
import type { Units } from "../model/say.ts";
import { editOrder } from "../order/edit.ts";
import { under } from "../order/entry.ts";
import { articleOf } from "../order/read.ts";
import { sayFault } from "../order/say.ts";
import { readTree } from "../order/tree.ts";
import { readLength } from "../units/length.ts";
import { quote } from "../units/quote.ts";
import { TOP } from "./pageSettable.ts";
import { textsIn } from "./pageTexts.ts";
import { refused, type Said, said } from "./said.ts";
import { valueAt } from "./valueAt.ts";

// Changes of an order's text that the page asks for.

/** Why a value could not be set: the text itself is at fault, or the value can't be written. */
function refusal(text: string, key: string, value: string | undefined): string {
  const { faults } = readTree(text);
  const [fault] = faults.filter((f) => f.code !== "no-order");
  if (fault) return `The text of the order must be mended first: ${sayFault(fault, "the order")}`;
  if (value === undefined) return `${key} holds several values: take out each by its own name.`;
  return `${quote(value)} can't be written as ${key}: write it on one line, in plain letters.`;
}

/** Whether several values stand under that name. */
const isSection = (text: string, key: string): boolean =>
  Object.keys(textsIn(readTree(text), text)).some((name) => name.startsWith(`${key}.`));

/**
 * The text with one value set or, with `undefined`, taken out; all else stays to the byte. A value that
 * the order then can't be made with is set all the same: the page says what is wrong with it.
 */
export function pageEdit(text: string, key: string, value: string | undefined): Said<string> {
  const before = valueAt(text, key);
  if (before === value?.trim() && !isSection(text, key)) return said(text);
  const edited = editOrder(text, key, value);
  return edited !== text && valueAt(edited, key) === value?.trim()
    ? said(edited)
    : refused(refusal(text, key, value));
}

/** Keys of all lengths of an article. */
function lengthKeys(text: string): ReadonlySet<string> {
  const article = articleOf(readTree(text), articles);
  return new Set(
    [TOP, ...(article?.sections ?? [])].flatMap(({ path, table }) =>
      Object.entries(table).flatMap(([name, d]) =>
        isMeasured(d) && d.kind === "length" && !d.handed ? [under(path, orderKey(name))] : [],
      ),
    ),
  );
}

/** Whether a text is a length only when somebody says what a bare number means. */
const isBare = (text: string, units: Units): boolean => readLength(text, units).ok && !readLength(text).ok;

const UNITS: readonly string[] = TOP.table.units?.kind === "choice" ? TOP.table.units.choices : [];

/**
 * The text in other units. Bare numbers of lengths get the unit that they had, so that each length is
 * the very same to the reader; what can't be read stays as it is.
 */
export function pageUnits(text: string, units: Units): Said<string> {
  const before = valueAt(text, "units") ?? "in";
  if (before === units) return said(text);
  const old = UNITS.find((u): u is Units => u === before);
  // Nobody knows what the bare numbers meant: only the word itself can be mended.
  if (old === undefined) return pageEdit(text, "units", units);
  const lengths = lengthKeys(text);
  const bare = Object.entries(textsIn(readTree(text), text)).filter(
    ([key, value]) => lengths.has(key) && isBare(value, old),
  );
  let edited = text;
  for (const [key, value] of bare) {
    const step = pageEdit(edited, key, `${value} ${old}`);
    if (!step.ok) return step;
    edited = step.value;
  }
  return pageEdit(edited, "units", units);
}
