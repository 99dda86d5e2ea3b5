import type { ArticleDefinition } from "../articles/definition.ts";
import type { Value } from "../model/dimension.ts";
import { type Known, PRACTICE } from "./about.ts";
import { type Beginning, comment, sectionLines, settings } from "./beginLines.ts";
import { type Branch, branchesOf } from "./branch.ts";
import type { Order } from "./order.ts";
import { sampleOrder } from "./sample.ts";
import { scalarText } from "./scalar.ts";
import { topTable } from "./top.ts";

const HEAD =
  "A line with # before it does nothing. Those with a space after the # explain; those without one are " +
  "settings as they are when left alone: to change one, take its # away and write what you want.";
const WORKED =
  'Ranges, and defaults with "from", are worked out for the figures in this file and change with them.';
const UNITS =
  "Lengths: 41 1/2 in, 41.5 in, 3 ft 5 1/2 in, 1054 mm or 105.4 cm. Leather: 9 oz, 8-9 oz, 6 iron or " +
  `3.5 mm. A default with no source in brackets is ${PRACTICE}.`;

/** The values of a branch's own section; the top level has none but its defaults. */
function valuesOf(branch: Branch, order: Order): Known["values"] {
  const isSection = branch.path !== "" && branch.section !== undefined;
  return isSection ? (order.values.of(branch.section) as Record<string, Value | undefined>) : undefined;
}

const beginning = (order: Order): Beginning => ({
  valuesOf: (branch) => valuesOf(branch, order),
  sample: order.article.sample,
  examples: {},
  first: "article",
  explainedElsewhere: () => false,
  openLines: () => [],
});

/**
 * The text of a new order: every setting with its meaning, range and default, those of the article's
 * sample set, all others as comments. Read back, it gives the sample's order.
 */
export function beginOrder(article: ArticleDefinition): string {
  const order = sampleOrder(article);
  const file = beginning(order);
  const root = branchesOf(topTable([article.name]), article);
  return [
    ...comment(`An order: ${article.name}, ${article.means}.`, ""),
    "#",
    ...comment(HEAD, ""),
    ...comment(WORKED, ""),
    ...comment(UNITS, ""),
    "",
    `article: ${scalarText(article.name, false)}`,
    "",
    ...settings(root, file, ""),
    ...root.branches.flatMap((b) => sectionLines(b, file, "")),
    "",
  ].join("\n");
}
