import { remembered } from "../geometry/remember.ts";
import {
  type Dimension,
  isFormula,
  isMeasured,
  type MeasuredDimension,
  orderKey,
} from "../model/dimension.ts";
import type { Units } from "../model/say.ts";
import { allowedWords, defaultWords, type Known, textOf } from "../order/about.ts";
import type { Field, FieldGroup } from "./pageData.ts";
import type { Settable } from "./pageSettable.ts";

// The inputs of the page, made from the dimension tables.

const LENGTH_WORDS: Readonly<Record<Units, string>> = { in: "inches", mm: "millimetres", cm: "centimetres" };

/** The unit that a maker thinks of such a value in; "" where there is none. */
function unitWords(kind: MeasuredDimension["kind"], units: Units): string {
  switch (kind) {
    case "length":
      return LENGTH_WORDS[units];
    case "thickness":
      return units === "in" ? "ounces" : "millimetres";
    case "pitch":
      return units === "in" ? "stitches to the inch" : "millimetres";
    case "angle":
      return "degrees";
    case "hands":
      return "hands";
    default:
      return "";
  }
}

/** "crown width, inches" */
function labelOf({ section, name, d }: Settable, units: Units): string {
  const words = `${section.label} ${orderKey(name).replaceAll("-", " ")}`.trim();
  const unit = isMeasured(d) ? unitWords(d.kind, units) : "";
  return unit === "" ? words : `${words}, ${unit}`;
}

function choicesOf({ d }: Settable): readonly string[] {
  if (d.kind === "choice") return d.choices;
  return d.kind === "flag" ? ["yes", "no"] : [];
}

/** Ranges without a formula read the same in every order. */
const plainAllowed = remembered((d: Dimension) => allowedWords(d, { table: {} }));
const allowedFor = (d: Dimension, known: Known): string =>
  isMeasured(d) && (isFormula(d.least) || isFormula(d.most)) ? allowedWords(d, known) : plainAllowed(d);

export type Written = {
  readonly units: Units;
  /** The texts of the order by key. */
  readonly texts: Readonly<Record<string, string>>;
  /** Keys and names of sizes that move with a key. */
  readonly feeds: (key: string) => readonly string[];
};

/** A value's input: its text as it stands in the order, or as its default would be written. */
export function fieldOf(s: Settable, { units, texts, feeds }: Written): Field {
  const { d, key, value } = s;
  const known: Known = { table: s.section.table, values: s.values };
  return {
    key,
    label: labelOf(s, units),
    kind: isMeasured(d) ? "measured" : d.kind,
    text: texts[key] ?? (value === undefined ? "" : textOf(d, value, known)),
    given: s.given,
    optional: isMeasured(d) && d.optional === true,
    choices: choicesOf(s),
    means: d.means,
    allowed: allowedFor(d, known),
    origin: defaultWords(d, known),
    feeds: feeds(key),
  };
}

/** The inputs by section; a section without any has no group. */
export function fieldGroups(all: readonly Settable[], written: Written): readonly FieldGroup[] {
  const groups = new Map<string, { path: string; title: string; fields: Field[] }>();
  for (const s of all) {
    const { path, title } = s.section;
    const group = groups.get(path) ?? { path, title, fields: [] };
    group.fields.push(fieldOf(s, written));
    groups.set(path, group);
  }
  return [...groups.values()];
}
