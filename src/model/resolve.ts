import {
  type Dimension,
  type DimensionTable,
  isFormula,
  isMeasured,
  orderKey,
  type Value,
  type Values,
  workingOrder,
} from "./dimension.ts";
import type { Fault, TextPlace } from "./finding.ts";
import { judge } from "./judge.ts";
import { type Look, lookInto, work } from "./known.ts";
import { missing } from "./missing.ts";
import { leaf, named } from "./quantity.ts";
import { readGiven } from "./readGiven.ts";
import type { Units } from "./say.ts";
import { unknownKeys } from "./unknownKeys.ts";

// The only judge of ranges, defaults and unknown keys.

/** A value as the order has it. */
export type GivenText = { readonly text: string; readonly place: TextPlace };

/** One dimension after resolving, as job.json and `explain` show it. */
export type ResolvedDimension = {
  readonly key: string;
  readonly kind: Dimension["kind"];
  readonly value: number | string | boolean | undefined;
  readonly origin: "given" | "default" | "article";
  readonly least?: number;
  readonly most?: number;
  readonly means: string;
};

export type Resolution<T extends DimensionTable> = {
  /** Complete only when there are no faults. */
  readonly values: Values<T> | undefined;
  readonly resolved: readonly ResolvedDimension[];
  readonly faults: readonly Fault[];
  /** Readings worth telling, e.g. that a range of thickness was read as its middle. */
  readonly remarks: readonly { readonly key: string; readonly text: string }[];
};

export type Resolving<T extends DimensionTable> = {
  readonly table: T;
  /** Path of the section in the order, e.g. "pieces.crown"; "" for the top level. */
  readonly section: string;
  /** What names begin with in explanations, e.g. "crown". */
  readonly label: string;
  /** Given texts by hyphenated key. */
  readonly given: Readonly<Record<string, GivenText>>;
  /** What the article hands over, by name. */
  readonly handed?: Readonly<Record<string, Value>>;
  /** The article's sample values by hyphenated key: examples for what is missing. */
  readonly sample?: Readonly<Record<string, string>>;
  readonly units: Units;
  readonly file: string;
  /** Where the section stands, for faults of missing values. */
  readonly place?: TextPlace;
};

type Origin = ResolvedDimension["origin"];

/** What a dimension came to: a value, a fault, or nothing because one of its inputs has a fault. */
type Found =
  | { readonly value: Value | undefined; readonly origin: Origin; readonly remark?: string }
  | { readonly fault: Fault }
  | "no input";

const pathIn = (section: string, key: string): string => (section === "" ? key : `${section}.${key}`);

/**
 * Resolves one section of an order: reads, fills in defaults, judges ranges; all faults at once, and
 * none for what only follows from another. Throws on faults of the table, never on an order's.
 */
export function resolve<T extends DimensionTable>(r: Resolving<T>): Resolution<T> {
  const unknown = unknownKeys(r.table, r.given, (key) => pathIn(r.section, key));
  const values = new Map<string, Value | undefined>();
  const resolved = new Map<string, ResolvedDimension>();
  const broken = new Set<string>();
  const faults: Fault[] = [...unknown.faults];
  const remarks: { key: string; text: string }[] = [];
  const look = lookInto(values, broken);
  for (const name of workingOrder(r.table)) {
    const d = r.table[name]!;
    const own = orderKey(name);
    const key = pathIn(r.section, own);
    const found = valueFor(r, name, d, look);
    if (found === "no input" || "fault" in found) {
      broken.add(name);
      const told = found !== "no input" && found.fault.code === "missing" && unknown.meant.includes(own);
      if (found !== "no input" && !told) faults.push(found.fault);
      continue;
    }
    const { value, origin, remark } = found;
    if (remark !== undefined) remarks.push({ key, text: remark });
    const given = r.given[own];
    const place = given?.place ?? r.place;
    const { fault, ...range } = judge(
      d,
      {
        key,
        orderKey: own,
        value,
        origin,
        units: r.units,
        ...(given ? { text: given.text.trim() } : {}),
        ...(place ? { place } : {}),
      },
      look,
    );
    if (fault) {
      faults.push(fault);
      broken.add(name);
      continue;
    }
    values.set(name, value);
    const plain = typeof value === "object" ? value.value : value;
    resolved.set(name, { key, kind: d.kind, value: plain, origin, ...range, means: d.means });
  }
  const complete = faults.length === 0 && broken.size === 0;
  return {
    values: complete ? (Object.fromEntries(values) as Values<T>) : undefined,
    resolved: Object.keys(r.table).flatMap((name) => resolved.get(name) ?? []),
    faults,
    remarks,
  };
}

/** Given by the order, handed over by the article, or by default; in that order. */
function valueFor(r: Resolving<DimensionTable>, name: string, d: Dimension, look: Look): Found {
  const own = orderKey(name);
  const label = `${r.label} ${own.replaceAll("-", " ")}`.trim();
  const given = d.handed ? undefined : r.given[own];
  if (given) return fromText(r, own, label, d, given);
  const handed = r.handed?.[name];
  if (handed !== undefined) return { value: handed, origin: "article" };
  return byDefault(label, d, look) ?? { fault: missing(r, own, d, look) };
}

function fromText(
  r: Resolving<DimensionTable>,
  own: string,
  label: string,
  d: Dimension,
  given: GivenText,
): Found {
  const where = `${r.file}:${given.place.line}`;
  const read = readGiven(d, given.text.trim(), label, { kind: "given", where }, r.units);
  if ("value" in read) return { ...read, origin: "given" };
  return { fault: { code: "unreadable", key: pathIn(r.section, own), place: given.place, ...read } };
}

/** The default; undefined when there is none and a value is needed. */
function byDefault(label: string, d: Dimension, look: Look): Found | undefined {
  if (d.default === undefined) {
    return isMeasured(d) && d.optional ? { value: undefined, origin: "default" } : undefined;
  }
  const kind = isMeasured(d) && d.kind !== "hands" ? { kind: d.kind } : {};
  if (isFormula(d.default)) {
    const worked = work(d.default, look);
    if (worked === undefined) return "no input";
    const value = typeof worked === "object" ? named(label, worked, { source: d.source, ...kind }) : worked;
    return { value, origin: "default" };
  }
  if (typeof d.default !== "number") return { value: d.default as Value, origin: "default" };
  const origin = { kind: "default", source: d.source } as const;
  return { value: leaf(label, d.default, kind.kind ?? "length", origin), origin: "default" };
}
