import type { Made } from "../../model/article.ts";
import type { Bench } from "../../model/bench.ts";
import type { Finish, JobOrder } from "../../model/job.ts";
import type { ResolvedDimension } from "../../model/resolve.ts";
import type { Shop } from "../../model/shop.ts";
import { capital } from "../../model/words.ts";
import { cutSection, stripSection } from "./cutSection.ts";
import type { BenchDocument, DocumentBlock } from "./document.ts";
import { capacitySection, fitSection } from "./fitSection.ts";
import { hardwareSection, punchSection } from "./hardwareSection.ts";
import { leatherSection } from "./leatherSection.ts";
import { priceSection } from "./priceSection.ts";
import { careSection, stepsSection } from "./stepsSection.ts";
import { threadSection } from "./threadSection.ts";

/** Read at the bench, mm; tables need their width. */
const TYPE_MM = 3;

export type BenchPaper = {
  readonly bench: Bench;
  readonly made: Made;
  readonly order: JobOrder;
  /** What the order came to, value by value. */
  readonly dimensions: readonly ResolvedDimension[];
  readonly shop: Shop;
  /** How many articles are ordered. */
  readonly quantity: number;
  readonly finish?: Finish;
};

/** `Dye`, `havana`: what is left blank isn't said. */
export const finishWords = (finish: Finish | undefined): readonly (readonly [string, string])[] =>
  (
    [
      ["Dye", finish?.dye ?? ""],
      ["Edges", finish?.edges ?? ""],
      ["Thread", finish?.thread ?? ""],
    ] as const
  ).filter(([, says]) => says !== "");

function subtitle({ order, shop, quantity, finish }: BenchPaper): readonly string[] {
  const how = finishWords(finish).map(([what, says]) => `${what.toLowerCase()}: ${says}`);
  return [
    ...(order.forWhom === "" ? [] : [`For ${order.forWhom}`]),
    [`Order: ${order.file}`, ...(shop.name === "" ? [] : [`shop: ${shop.name}`])].join("; "),
    quantity === 1
      ? "Ordered: 1"
      : `Ordered: ${quantity}. Counts, areas, sums and minutes are for all ${quantity}.`,
    ...(how.length === 0 ? [] : [capital(how.join("; "))]),
  ];
}

const listUnder = (text: string, items: readonly string[]): readonly DocumentBlock[] =>
  items.length === 0
    ? []
    : [
        { kind: "heading", text },
        { kind: "list", items: items.map(capital) },
      ];

/** `One-ear headstall for Juniper` */
export const jobName = ({ made, order }: Pick<BenchPaper, "made" | "order">): string =>
  capital(`${made.article}${order.forWhom === "" ? "" : ` for ${order.forWhom}`}`);

/**
 * The paper that lies on the bench from cutting to delivery. With `priced`, and where there is a price, the
 * maker's own reckoning comes last, on a page of its own.
 */
export function benchDocument(paper: BenchPaper & { readonly priced: boolean }): BenchDocument {
  const { bench, made, order, priced } = paper;
  const { units } = order;
  return {
    title: `Bench sheet: ${made.article}`,
    type: TYPE_MM,
    subtitle: subtitle(paper),
    head: `Bench sheet: ${jobName(paper)}`,
    blocks: [
      { kind: "blanks", labels: ["Date", "Delivery by"] },
      ...cutSection(bench.cut, units),
      ...stripSection(bench.strips, units),
      ...leatherSection(bench.leather, made, units),
      ...hardwareSection(bench.hardware, made, units),
      ...punchSection(bench.punches, made),
      ...threadSection(bench.thread, made, { units, ordered: paper.finish?.thread ?? "" }),
      ...fitSection(made.fit, units),
      ...capacitySection(made.capacity, units),
      ...listUnder("Not priced or not timed", bench.unpriced),
      ...careSection(bench.steps, made),
      // Last of all: what is short would stand on a page of its own after it.
      ...stepsSection(bench, made),
      ...(priced && bench.price ? priceSection(bench.price, paper.shop.roundTo) : []),
    ],
  };
}
