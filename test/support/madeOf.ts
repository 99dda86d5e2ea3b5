import { articles } from "../../src/articles/index.ts";
import type { Made } from "../../src/model/article.ts";
import { readOrder } from "../../src/order/read.ts";
import { orderFiles } from "./orders.ts";

/** The order's text by the name of its file. */
export function orderText(name: string): string {
  const found = orderFiles.find((o) => o.name === `${name}.yaml`);
  if (!found) throw new Error(`no order ${name}`);
  return found.text;
}

/** The article of an order, made and not laid out; throws when the order can't be read. */
export function madeOf(text: string): Made {
  const { order, faults } = readOrder(text, "order.yaml", articles);
  if (!order) throw new Error(`not read: ${JSON.stringify(faults)}`);
  return order.article.make(order.values);
}
