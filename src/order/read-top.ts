import type { Fault } from "../model/finding.ts";
import { type ResolvedDimension, resolve } from "../model/resolve.ts";
import type { Units } from "../model/say.ts";
import { oneOf } from "../model/words.ts";
import type { Order } from "./order.ts";
import { readPaper } from "./paper.ts";
import type { GivenSection } from "./sort.ts";
import type { topTable } from "./top.ts";

type Table = ReturnType<typeof topTable>;

type Settled = Pick<Order, "forWhom" | "shop" | "units" | "paper" | "margin" | "overlap" | "endsOnly">;

export type Top = {
  /** Undefined when there are faults. */
  readonly settled: Settled | undefined;
  /** Undefined when nobody knows what a bare number means. */
  readonly units: Units | undefined;
  readonly dimensions: readonly ResolvedDimension[];
  readonly faults: readonly Fault[];
};

const noArticle = (table: Table): Fault => ({
  code: "missing",
  key: "article",
  place: { line: 1, column: 1 },
  problem: "the order doesn't say what is ordered",
  allowed: oneOf(table.article.choices),
  mend: `add a line such as "article: ${table.article.choices[0] ?? ""}"`,
});

/** The units as written, whatever else of the top level is at fault. */
function unitsOf(top: GivenSection, table: Table): Units | undefined {
  if (top.faulty.includes("units")) return undefined;
  const text = top.given.units?.text;
  return text === undefined ? table.units.default : table.units.choices.find((c) => c === text);
}

/** Reads the lines that stand in no section. */
export function readTop(table: Table, top: GivenSection, file: string): Top {
  const { values, resolved, faults } = resolve({
    table,
    section: "",
    label: "",
    given: top.given,
    units: unitsOf(top, table) ?? "in",
    file,
  });
  const given = top.given.paper;
  const paper = readPaper(given?.text ?? table.paper.default);
  const all: Fault[] = faults
    .filter((f) => f.code !== "missing" || !top.faulty.includes(f.key))
    .map((f) => (f.code === "missing" ? noArticle(table) : f));
  if (!paper.ok) {
    const { problem, allowed, mend } = paper;
    const place = given ? { place: given.place } : {};
    all.push({ code: "unreadable", key: "paper", ...place, problem, allowed, mend });
  }
  const settled = values && paper.ok && all.length === 0;
  return {
    settled: settled
      ? {
          forWhom: values.for,
          shop: values.shop,
          units: values.units,
          paper: paper.paper,
          margin: values.margin.value,
          overlap: values.overlap.value,
          endsOnly: values.endsOnly,
        }
      : undefined,
    units: unitsOf(top, table),
    dimensions: resolved,
    faults: all,
  };
}
