import { articles } from "../articles/index.ts";
import { orderKey } from "../model/dimension.ts";
import { shopSections } from "../order/shopSections.ts";
import { topTable } from "../order/top.ts";
import { readTree } from "../order/tree.ts";
import { shopTopTable } from "../trade/shopTables.ts";
import { valueAt } from "./valueAt.ts";

const first = (path: string): string => path.split(".")[0] ?? "";

const orderNames: ReadonlySet<string> = new Set([
  ...Object.keys(topTable([])).map(orderKey),
  ...articles.flatMap((a) => a.sections.map((s) => first(s.path))),
]);

/** Names at the top of a shop file that no order has. */
const shopNames: ReadonlySet<string> = new Set(
  [...Object.keys(shopTopTable).map(orderKey), ...shopSections.map((s) => first(s.path))].filter(
    (name) => !orderNames.has(name),
  ),
);

/** What a file of a folder is at first sight, faulty or not: whose order, or a shop's rates. Never throws. */
export function fileKind(
  text: string,
):
  | { readonly kind: "shop" }
  | { readonly kind: "order"; readonly article: string; readonly forWhom: string } {
  const entries = readTree(text).entries ?? [];
  const isOrder = entries.some((e) => e.key === "article");
  if (!isOrder && entries.some((e) => shopNames.has(e.key))) return { kind: "shop" };
  return { kind: "order", article: valueAt(text, "article") ?? "", forWhom: valueAt(text, "for") ?? "" };
}
