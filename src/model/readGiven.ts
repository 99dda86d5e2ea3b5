import {
  type Reading,
  readAngle,
  readCount,
  readHands,
  readLength,
  readPlainNumber,
  readRatio,
  readStitchPitch,
  readThickness,
} from "../units/index.ts";
import { quote } from "../units/quote.ts";
import {
  type Dimension,
  isMeasured,
  type MeasuredDimension,
  type TextDimension,
  type Value,
} from "./dimension.ts";
import { leaf, type Origin, type Quantity } from "./quantity.ts";
import type { Units } from "./say.ts";
import { oneOf, wordMeant } from "./words.ts";

// An order's text, read as the kind of value that its dimension wants.

type Misread = { readonly problem: string; readonly mend: string; readonly allowed?: string };

/** The value, and a remark when something was decided in reading it; or what is wrong with the text. */
export type Given = { readonly value: Value; readonly remark?: string } | Misread;

type Number = { readonly value: number; readonly range?: Quantity["range"]; readonly remark?: string };

function numberFrom<T>(r: Reading<T>, number: (v: T) => number): Number | Misread {
  if (!r.ok) return { problem: r.problem, mend: r.mend };
  return { value: number(r.value), ...(r.note === undefined ? {} : { remark: r.note }) };
}

function readNumber(kind: MeasuredDimension["kind"], text: string, units: Units): Number | Misread {
  const same = (v: number): number => v;
  switch (kind) {
    case "length":
      return numberFrom(readLength(text, units), same);
    case "thickness": {
      const r = readThickness(text);
      const middle = numberFrom(r, (v) => v.middle);
      return r.ok && "value" in middle ? { ...middle, range: [r.value.thinnest, r.value.thickest] } : middle;
    }
    case "hands":
      return numberFrom(readHands(text), same);
    case "pitch":
      return numberFrom(readStitchPitch(text), same);
    case "count":
      return numberFrom(readCount(text), same);
    case "angle":
      return numberFrom(readAngle(text), same);
    case "number":
      return numberFrom(readPlainNumber(text), same);
    default:
      return numberFrom(readRatio(text), same);
  }
}

const YES = ["yes", "true"];
const NO = ["no", "false"];

/** Reads the text given for a dimension; `name` is what its value goes by in explanations. */
export function readGiven(d: Dimension, text: string, name: string, origin: Origin, units: Units): Given {
  if (isMeasured(d)) {
    const r = readNumber(d.kind, text, units);
    if ("problem" in r) return r;
    const q = leaf(name, r.value, d.kind === "hands" ? "length" : d.kind, origin);
    return {
      value: r.range ? { ...q, range: r.range } : q,
      ...(r.remark === undefined ? {} : { remark: r.remark }),
    };
  }
  const got = `got ${quote(text)}`;
  if (d.kind === "choice") {
    if (d.choices.includes(text)) return { value: text };
    const near = wordMeant(text, d.choices);
    const mend = near ? `write ${near}` : "write one of the allowed words";
    return { problem: got, allowed: oneOf(d.choices), mend };
  }
  if (d.kind === "flag") {
    if (YES.includes(text.toLowerCase())) return { value: true };
    if (NO.includes(text.toLowerCase())) return { value: false };
    return { problem: got, allowed: "yes or no", mend: "write yes or no" };
  }
  return readText(d, text);
}

function readText({ longest, reads, default: usual }: TextDimension, text: string): Given {
  const letters = Array.from(text).length;
  if (letters > longest)
    return { problem: `got ${letters} letters`, allowed: `up to ${longest} letters`, mend: "shorten it" };
  const read = text === usual ? undefined : reads?.(text);
  return read && !read.ok ? { problem: read.problem, mend: read.mend } : { value: text };
}
