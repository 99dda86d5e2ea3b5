import type { Fault } from "../model/finding.ts";
import { resolve } from "../model/resolve.ts";
import type { Units } from "../model/say.ts";
import type { Shop } from "../model/shop.ts";
import { shopTopTable } from "../trade/shopTables.ts";
import { branchesOf } from "./branch.ts";
import type { Entry } from "./entry.ts";
import { together } from "./faults.ts";
import { SHOP_WORDS } from "./fileWords.ts";
import { solveSections } from "./sections.ts";
import { readPunches, readSizes } from "./shopOpen.ts";
import { priceFaults } from "./shopPrices.ts";
import { shopSections, tabled } from "./shopSections.ts";
import { shopOf } from "./shopValues.ts";
import { type GivenSection, NOTHING_GIVEN, sortEntries } from "./sort.ts";
import { surely } from "./surely.ts";
import { readTree } from "./tree.ts";

/** What reading a shop file gives: the shop, or what is wrong with the file. */
export type ShopRead = { readonly faults: readonly Fault[]; readonly shop?: Shop };

/** An order that was named as a shop file: one fault, not one for each of its lines. */
function orderInstead(entries: readonly Entry[]): Fault | undefined {
  const article = entries.find(({ key }) => key === "article");
  return (
    article && {
      code: "not-a-shop-file",
      key: "article",
      place: article.keyPlace,
      problem: "this is an order, not a shop file",
      mend: "name the file with your rates; begin one with: whittaw begin shop",
    }
  );
}

/** Lines at the top of a shop file that no order has. */
const SHOP_ALONE = ["currency", "labour", "minutes", "thread", "strips", "punches", "sizes", "address"];

/** Whether a text is a shop file, and no order. Never throws. */
export function isShopFile(text: string): boolean {
  const keys = (readTree(text, SHOP_WORDS).entries ?? []).map(({ key }) => key);
  return !keys.includes("article") && keys.some((key) => SHOP_ALONE.includes(key));
}

/** The units as written; inches where they can't be read, so that the rest can be. */
const unitsOf = (top: GivenSection): Units =>
  shopTopTable.units.choices.find((c) => c === top.given.units?.text) ?? shopTopTable.units.default;

/**
 * Reads a shop file's text: all faults at once, each with its place, or the shop. Never throws on a text,
 * however odd. `file` is the name that messages show.
 */
export function readShop(text: string, file: string): ShopRead {
  const tree = readTree(text, SHOP_WORDS);
  if (!tree.entries) return { faults: together(tree.faults) };
  const other = orderInstead(tree.entries);
  if (other) return { faults: [other] };
  const { sections, faults: sorting } = sortEntries(
    tree.entries,
    branchesOf(shopTopTable, { sections: shopSections }),
  );
  const given = sections.get("") ?? NOTHING_GIVEN;
  const units = unitsOf(given);
  const top = resolve({ table: shopTopTable, section: "", label: "", given: given.given, units, file });
  const solved = solveSections({ sections: tabled, sample: {} }, sections, units, file);
  const punches = readPunches(sections, units);
  const sizes = readSizes(sections, file);
  const later = [
    ...sorting,
    ...top.faults,
    ...solved.faults,
    ...priceFaults(sections),
    ...punches.faults,
    ...sizes.faults,
  ].filter((f) => surely(f, tree));
  const faults = together([...tree.faults, ...later]);
  if (faults.length > 0 || !top.values) return { faults };
  const open = { punches: punches.found, sizes: sizes.found };
  return { faults, shop: shopOf(top.values, solved.values, open, { file, given: sections }) };
}

/** A workshop without a shop file: the built-in habits, and no prices. */
export const NO_SHOP: Shop = { ...readShop("units: in", "").shop!, file: "" };

/** The file that an order's line `shop` names, as it stands there; "" when it names none. Never throws. */
export function shopNamedIn(orderText: string): string {
  const value = readTree(orderText).entries?.find(({ key }) => key === "shop")?.value;
  return value?.kind === "text" ? value.text : "";
}
