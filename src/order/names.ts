import { isScalar, type Pair } from "yaml";
import type { Fault, TextPlace } from "../model/finding.ts";
import { quote } from "../units/quote.ts";
import { type Entry, under } from "./entry.ts";

// Names that are none.

/** No name of a value is half as long. */
const LONGEST_NAME = 60;
const UNSEEN = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/u;
const HOW = "write a name, a colon, a space and a value";

/** The fault of a key that can't be the name of a value. */
export function nameFault(pair: Pair, path: string, place: TextPlace): Fault | undefined {
  const { key } = pair;
  const explicit = pair.srcToken?.start.some((t) => t.type === "explicit-key-ind");
  const text = isScalar(key) && !key.anchor && key.tag === undefined ? String(key.value) : "";
  if (explicit || text === "") {
    return {
      code: "not-a-name",
      key: path,
      place,
      problem: "a value's name is one plain word, such as over-poll",
      mend: HOW,
    };
  }
  if (text === "<<") {
    return {
      code: "merge-key",
      key: path,
      place,
      problem: 'values can\'t be fetched from elsewhere with "<<"',
      mend: "write the values themselves",
    };
  }
  if (text.length > LONGEST_NAME || UNSEEN.test(text)) {
    return {
      code: "not-a-name",
      key: path,
      place,
      problem: `${quote(text)} is no name of a value`,
      mend: HOW,
    };
  }
  return undefined;
}

/** `width5/8`, `width:5/8`, `width=5/8`: the name and the value, when both can be told. */
export function unglued(text: string): string | undefined {
  const parts = /^([A-Za-z][A-Za-z-]*)(?: *[:：=] *| +)(\S.*)$/.exec(text);
  return parts ? `${parts[1]}: ${parts[2]}` : undefined;
}

/** `{ bar: 3,2 mm }`: YAML takes "2 mm" for a name without a value. `last` is the value before it. */
export function commaSlip(name: string, last: Entry | undefined, path: string): Fault | undefined {
  if (last?.value.kind !== "text" || !/^\d/.test(name) || !/\d$/.test(last.value.text)) return undefined;
  const { text } = last.value;
  const thousands = /^[1-9]\d{0,2}$/.test(text) && /^\d{3}(?!\d)/.test(name);
  const ways = [...(thousands ? [`${text}${name}`] : []), `${text}.${name}`].map(quote);
  return {
    code: "decimal-comma",
    key: under(path, last.key),
    place: last.place,
    problem: `got ${quote(`${text},${name}`)}: inside { } a comma ends a value; it is not read as a decimal point`,
    mend: `write ${ways.join(" or ")}${ways.length > 1 ? ", whichever is meant" : ""}`,
  };
}

/** `{ bar:3 }` and `{ bar 3 }`: a name and a value that have grown together. */
export function gluedSlip(name: string, path: string, place: TextPlace): Fault | undefined {
  const apart = unglued(name);
  if (apart === undefined) return undefined;
  const problem = `${quote(name)} lacks a colon and a space after its name`;
  return { code: "no-colon", key: path, place, problem, mend: `write ${quote(apart)}` };
}
