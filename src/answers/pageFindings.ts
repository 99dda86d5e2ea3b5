import { finishSection, priceSection } from "../articles/benchSections.ts";
import { articles } from "../articles/index.ts";
import { benchOf } from "../bench/bench.ts";
import { checkPieces } from "../checks/index.ts";
import type { Finding } from "../model/finding.ts";
import { readOrder } from "../order/read.ts";
import { gravestFirst, remarksOf } from "./findings.ts";
import type { Beside } from "./jobResult.ts";
import { notMade, type Said, said } from "./said.ts";
import { shopFor } from "./shopFor.ts";

/** All that is found on an order's pieces and bench, gravest first; sheets are looked at when they are made. */
export function pageFindings(
  text: string,
  file: string,
  options: { readonly shop?: Beside } = {},
): Said<readonly Finding[]> {
  const { order, faults } = readOrder(text, file, articles);
  if (!order) return notMade(faults, file);
  const shop = shopFor(order, options.shop);
  if (!shop.ok) return notMade(shop.faults, file);
  const made = order.article.make(order.values);
  const [finish, price] = [order.values.of(finishSection), order.values.of(priceSection)];
  const { findings } = benchOf({ made, shop: shop.shop, finish, price, units: order.units });
  return said(
    gravestFirst([
      ...made.findings,
      ...findings,
      ...shop.findings,
      ...checkPieces(made, { units: order.units }),
      ...remarksOf(order),
    ]),
  );
}
