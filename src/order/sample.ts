import type { ArticleDefinition } from "../articles/definition.ts";
import type { Order } from "./order.ts";
import { readOrder } from "./read.ts";
import { sayFault } from "./say.ts";
import { scalarText } from "./scalar.ts";

type Lines = { [name: string]: string | Lines };

/** Names and values as nested lines of an order. */
function written(lines: Lines, indent: string): string {
  return Object.entries(lines)
    .map(([name, value]) =>
      typeof value === "string"
        ? `${indent}${name}: ${scalarText(value, false)}\n`
        : `${indent}${name}:\n${written(value, `${indent}  `)}`,
    )
    .join("");
}

/** The shortest order of an article: its name and its sample values. */
export function sampleText(article: ArticleDefinition): string {
  const top: Lines = { article: article.name };
  for (const [path, value] of Object.entries(article.sample)) {
    const names = path.split(".");
    const last = names.pop()!;
    let at = top;
    for (const name of names) {
      at[name] ??= {};
      at = at[name] as Lines;
    }
    at[last] = value;
  }
  return written(top, "");
}

/**
 * The order of an article's sample values, read: from it come worked defaults and ranges.
 * Throws when the sample has faults: that is the article's own, and its test finds it.
 */
export function sampleOrder(article: ArticleDefinition): Order {
  const { order, faults } = readOrder(sampleText(article), "sample", [article]);
  if (!order)
    throw new Error(
      `the sample of ${article.name} has faults: ${faults.map((f) => sayFault(f, "sample")).join(" ")}`,
    );
  return order;
}
