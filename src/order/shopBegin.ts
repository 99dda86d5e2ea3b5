import { type DimensionTable, orderKey, type Value } from "../model/dimension.ts";
import type { FittingKind } from "../model/fitting.ts";
import type { WorkKind } from "../model/work.ts";
import { shopTopTable } from "../trade/shopTables.ts";
import { PRACTICE } from "./about.ts";
import { type Beginning, comment, sectionLines, settings } from "./beginLines.ts";
import { type Branch, branchesOf, withAllUnder } from "./branch.ts";
import { under } from "./entry.ts";
import { solveSections } from "./sections.ts";
import { minutes, punches, shopSections, sizes, tabled, thread } from "./shopSections.ts";

const HEAD =
  "A line with # before it does nothing. Those with a space after the # explain; those without one are " +
  "settings: to use one, take its # away and write your own figure. Prices and minutes have no default: " +
  "what stands there is an example, and what you leave out is listed and not priced.";
const USE =
  "Name this file in an order with a line at its top, shop: shop.yaml, found from the order's folder. " +
  "Write prices as plain numbers, 14.50: the currency stands once. A default with no source in brackets " +
  `is ${PRACTICE}.`;

/** Figures to overwrite, invented. */
const EXAMPLE_MINUTES: Readonly<Record<WorkKind, string>> = {
  setUp: "15",
  cutStrap: "2",
  cutByDie: "0.5",
  cutByKnife: "6",
  mark: "0.25",
  case: "2",
  tool: "25",
  edge: "1.5",
  groove: "1.5",
  punchHole: "0.2",
  punchSlot: "0.5",
  prick: "0.02",
  skive: "3",
  dye: "0.8",
  fold: "1",
  fix: "2",
  glue: "2",
  stitch: "0.25",
  turn: "15",
  trim: "4",
  finish: "9",
  check: "10",
};

/** Of hardware that isn't sold by the width of a strap: a price of one, and of sizes that it has. */
const EXAMPLE_HARDWARE: Readonly<Partial<Record<FittingKind, readonly [each: string, bySize: string]>>> = {
  "binding screw": ["0.80", "1/4 in 0.80, 3/8 in 0.90"],
  rivet: ["0.20", "1/4 in 0.20, 3/8 in 0.25"],
  "press stud": ["0.60", "10 mm 0.55, 1/2 in 0.60"],
  "magnetic snap": ["1.20", "14 mm 1.10, 18 mm 1.30"],
  "turn lock": ["4.00", "20 mm 4.00, 25 mm 4.50"],
  staple: ["0.90", "3/4 in 0.90, 1 in 1.00"],
  "strap tip": ["1.40", "5/8 in 1.40, 3/4 in 1.60"],
  bit: ["30.00", "5 in 30.00, 5 1/2 in 32.00"],
};

const examplesIn = (path: string, table: DimensionTable): readonly (readonly [string, string])[] =>
  Object.entries(table).flatMap(([name, d]) =>
    d.kind === "text" && d.default === "" && d.example !== undefined
      ? [[under(path, orderKey(name)), d.example] as const]
      : [],
  );

const EXAMPLES: Readonly<Record<string, string>> = Object.fromEntries([
  ...examplesIn("", shopTopTable),
  ...tabled.flatMap(({ path, table }) => examplesIn(path, table)),
  ...Object.entries(EXAMPLE_HARDWARE).flatMap(([kind, [each, bySize]]) => {
    const path = `hardware.${kind.replaceAll(" ", "-")}`;
    return [
      [under(path, "each"), each],
      [under(path, "by-size"), bySize],
    ];
  }),
  ...Object.entries(EXAMPLE_MINUTES).map(([kind, text]) => [under(minutes.path, orderKey(kind)), text]),
  [under(thread.path, "reel"), "100 m"],
]);

/** Lines of an open section: a punch, or one size with the measures of the article's sample. */
function openLines(branch: Branch): readonly string[] {
  if (branch.path === punches.path) return ["3: 2 mm"];
  const article = sizes.find(({ section }) => section.path === branch.path)?.article;
  if (!article) return [];
  const measures = Object.entries(article.sample)
    .filter(([path]) => path.startsWith("measures."))
    .map(([path, text]) => `${path.slice("measures.".length)} ${text}`);
  return [`my-size: ${measures.join(", ")}`];
}

/** The text of a new shop file: every line explained, none of them set. Read back, it is a shop without prices. */
export function beginShop(): string {
  const root = branchesOf(shopTopTable, { sections: shopSections });
  const { values } = solveSections({ sections: tabled, sample: {} }, new Map(), "in", "");
  const branches = withAllUnder(root);
  const file: Beginning = {
    valuesOf: ({ path, section }) =>
      path === "" || !section || !tabled.includes(section)
        ? undefined
        : (values.of(section) as Record<string, Value | undefined>),
    sample: {},
    examples: EXAMPLES,
    first: "",
    explainedElsewhere: ({ section, path }) =>
      section !== undefined &&
      Object.keys(section.table).length > 0 &&
      branches.find((b) => b.section?.table === section.table)?.path !== path,
    openLines,
  };
  return [
    ...comment("A shop file: a workshop's rates and habits, for the bench sheet and the price.", ""),
    "#",
    ...comment(HEAD, ""),
    ...comment(USE, ""),
    "",
    ...settings(root, file, ""),
    ...root.branches.flatMap((b) => sectionLines(b, file, "")),
    "",
  ].join("\n");
}
