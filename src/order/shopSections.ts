import { type ArticleDefinition, type Section, section } from "../articles/definition.ts";
import { articles } from "../articles/index.ts";
import { type Dimension, orderKey } from "../model/dimension.ts";
import { FITTING_KINDS, type FittingKind } from "../model/fitting.ts";
import {
  hardwareRateTable,
  labourTable,
  leatherRateTable,
  minutesTable,
  shankRateTable,
  shopPriceTable,
  stripsTable,
  threadRateTable,
} from "../trade/shopTables.ts";
import type { FileSection } from "./branch.ts";

// The sections of a shop file.

export const labour = section({
  path: "labour",
  label: "labour",
  title: "Your time, and what the workshop costs beside it",
  table: labourTable,
});
export const shopPrice = section({
  path: "price",
  label: "price",
  title: "How a price is made of the cost; an order can have its own margin, tax and deposit",
  table: shopPriceTable,
});
export const thread = section({
  path: "thread",
  label: "thread",
  title: "Thread",
  table: threadRateTable,
});
export const strips = section({
  path: "strips",
  label: "strip",
  title: "Strips that straps are cut from",
  table: stripsTable,
});
export const minutes = section({
  path: "minutes",
  label: "minutes",
  title: "How long your work takes, in minutes; work without minutes is listed and not priced",
  table: minutesTable,
});

const LEATHER = "leather.";

/** Every leather that any article is made of, by its name in orders. */
const leatherNames: readonly string[] = [
  ...new Set(
    articles.flatMap((a) =>
      a.sections.filter((s) => s.path.startsWith(LEATHER)).map((s) => s.path.slice(LEATHER.length)),
    ),
  ),
];

export const leathers = leatherNames.map((name) => ({
  name,
  section: section({
    path: `${LEATHER}${name}`,
    label: `${name} leather`,
    title: `Leather that orders call leather.${name}`,
    table: leatherRateTable,
  }),
}));

/** Kinds that are bought by the length of a shank too. */
const WITH_SHANK: readonly FittingKind[] = ["binding screw", "rivet"];

const aboutHardware = (kind: FittingKind) => ({
  path: `hardware.${kind.replaceAll(" ", "-")}`,
  label: kind,
  title: `${kind.charAt(0).toUpperCase()}${kind.slice(1)}s`,
});

export const hardware = FITTING_KINDS.map((kind) =>
  WITH_SHANK.includes(kind)
    ? ({ kind, shank: true, section: section({ ...aboutHardware(kind), table: shankRateTable }) } as const)
    : ({
        kind,
        shank: false,
        section: section({ ...aboutHardware(kind), table: hardwareRateTable }),
      } as const),
);

const open = (path: string, title: string): FileSection => ({
  path,
  label: "",
  title,
  table: {},
  open: true,
});

export const punches = open(
  "punches",
  "Your round punches, each by its own number and its size, as in 3: 2 mm",
);

const MEASURES = "measures";

/** Another setting of an article's order that a size may have: its section and dimension; undefined for what is none. */
export function settingOf(
  article: ArticleDefinition,
  path: string,
): { readonly section: Section; readonly dimension: Dimension } | undefined {
  const at = path.lastIndexOf(".");
  const section = article.sections.find((s) => s.path === path.slice(0, Math.max(at, 0)));
  const found = Object.entries(section?.table ?? {}).find(
    ([name, d]) => !d.handed && orderKey(name) === path.slice(at + 1),
  );
  return section && found ? { section, dimension: found[1] } : undefined;
}

/** Every setting of an article's order by its path. */
export const settingsOf = (article: ArticleDefinition): readonly string[] =>
  article.sections.flatMap((s) =>
    Object.entries(s.table).flatMap(([name, d]) => (d.handed ? [] : [`${s.path}.${orderKey(name)}`])),
  );

/** An article's own measures. */
export const measuresOf = (article: ArticleDefinition): Section | undefined =>
  article.sections.find((s) => s.path === MEASURES);

export const sizes = articles.map((article) => ({
  article,
  section: open(
    `sizes.${article.slug}`,
    `Your sizes of ${article.name}, each with its measures; other settings with their section, as in pieces.strap.length 30 in`,
  ),
}));

/** Those with a table. */
export const tabled: readonly Section[] = [
  labour,
  shopPrice,
  ...leathers.map((l) => l.section),
  ...hardware.map((h) => h.section),
  thread,
  strips,
  minutes,
];

/** All sections of a shop file, in their order. */
export const shopSections: readonly FileSection[] = [...tabled, punches, ...sizes.map((s) => s.section)];
