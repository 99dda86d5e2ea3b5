import { type DimensionTable, orderKey, type Value } from "../model/dimension.ts";
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

const examplesIn = (path: string, table: DimensionTable): readonly (readonly [string, string])[] =>
  Object.entries(table).flatMap(([name, d]) =>
    d.kind === "text" && d.default === "" && d.example !== undefined
      ? [[under(path, orderKey(name)), d.example] as const]
      : [],
  );

const EXAMPLES: Readonly<Record<string, string>> = Object.fromEntries([
  ...examplesIn("", shopTopTable),
  ...tabled.flatMap(({ path, table }) => examplesIn(path, table)),
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
