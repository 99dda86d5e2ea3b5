import type { Fault, Finding } from "../model/finding.ts";
import type { Shop } from "../model/shop.ts";
import type { Order } from "../order/order.ts";
import { sayFault } from "../order/say.ts";
import { NO_SHOP, readShop } from "../order/shopRead.ts";
import type { Beside } from "./jobResult.ts";

type ShopFound =
  | { readonly ok: true; readonly shop: Shop; readonly findings: readonly Finding[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** The templates need no rates: they are made all the same, and the sheet says that nothing is priced. */
const notThere = (message: string): Finding => ({
  rule: "shop-file",
  severity: "caution",
  piece: "",
  place: "shop",
  message: `nothing is priced: ${message}`,
  mend: "lay the shop file there, name another one (counted from the order's folder), or take the line out; begin one with: whittaw begin shop",
});

const MEND = " To mend: ";

/** The place of such a fault lies in the shop file: its words carry it, and it is mended there. */
function inShop(fault: Fault, file: string): Fault {
  const words = sayFault(fault, file);
  const at = words.lastIndexOf(MEND);
  return { code: fault.code, key: "shop", problem: words.slice(0, at), mend: words.slice(at + MEND.length) };
}

/** The shop whose rates an order is priced by: the file it names, or the built-in habits without a price. */
export function shopFor(order: Order, beside: Beside | undefined): ShopFound {
  // Whoever asks for no prices hands no shop file over.
  if (order.shop === "" || !beside) return { ok: true, shop: NO_SHOP, findings: [] };
  if ("missing" in beside) return { ok: true, shop: NO_SHOP, findings: [notThere(beside.missing)] };
  const { shop, faults } = readShop(beside.text, beside.file);
  if (!shop) return { ok: false, faults: faults.map((f) => inShop(f, beside.file)) };
  return { ok: true, shop, findings: [] };
}
