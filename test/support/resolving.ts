import { type DimensionTable, from } from "../../src/model/dimension.ts";
import { minus, over, sum, times } from "../../src/model/quantity.ts";
import { type Resolving, resolve } from "../../src/model/resolve.ts";

export const source = "common practice, no source";

/** A made-up strap with a dimension of each kind. */
export const strap = {
  width: { kind: "length", default: 16, least: 8, most: 60, means: "width", source },
  leather: { kind: "thickness", default: 3.5, least: 2, most: 5, means: "leather", source },
  point: {
    kind: "choice",
    choices: ["english", "round", "spear"],
    default: "english",
    means: "kind of point",
    source,
  },
  crease: { kind: "flag", default: true, means: "creased or not", source },
  remark: { kind: "text", default: "", longest: 12, means: "a remark", source },
  cut: { kind: "length", least: 100, most: 2000, means: "length to cut", source },
  holes: { kind: "count", default: 7, least: 1, most: 21, means: "how many holes", source },
  pitch: {
    kind: "length",
    default: from(["width"], (k) => sum(k.q("width"), 3)),
    least: from(["width"], (k) => k.q("width")),
    most: 80,
    means: "hole to hole",
    source,
  },
  row: {
    kind: "length",
    default: from(["holes", "pitch"], (k) => times(minus(k.q("holes"), 1), k.q("pitch"))),
    least: 10,
    most: from(["cut"], (k) => over(k.q("cut"), 2)),
    means: "row of holes",
    source,
  },
  spare: { kind: "length", optional: true, least: 1, most: 20, means: "spare", source },
} as const satisfies DimensionTable;

/** What the strap has no default for. */
export const CUT = { cut: "600" };

/** Resolves a section from bare texts, each on a line of its own. */
export function work<T extends DimensionTable>(
  table: T,
  texts: Readonly<Record<string, string>>,
  more: Partial<Resolving<T>> = {},
) {
  const given = Object.fromEntries(
    Object.entries(texts).map(([key, text], i) => [key, { text, place: { line: i + 10, column: 7 } }]),
  );
  return resolve({
    table,
    section: "pieces.strap",
    label: "strap",
    given,
    units: "mm",
    file: "juniper.yaml",
    place: { line: 9, column: 1 },
    ...more,
  });
}

export const faultsOf = (
  texts: Readonly<Record<string, string>>,
  more: Partial<Resolving<typeof strap>> = {},
) => work(strap, texts, more).faults;
