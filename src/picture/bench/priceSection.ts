import type { Price, PriceLine } from "../../model/bench.ts";
import type { Decimal } from "../../model/money.ts";
import { capital } from "../../model/words.ts";
import { printMoney, totalOf } from "../../units/money.ts";
import { type Column, type DocumentBlock, left, right } from "./document.ts";

// The maker's own reckoning: not for the customer.

const columns = (what: string, { currency }: Price): readonly Column[] => [
  left(what),
  left("Reckoned"),
  right(currency.code),
];

const lineRow = (price: Price, { what, how, minor }: PriceLine): readonly string[] => [
  capital(what),
  how,
  printMoney(minor, price.currency),
];

const together = (lines: readonly PriceLine[]): number => totalOf(lines.map((l) => l.minor));

/** Lines with their sum at the foot. */
const linesTable = (price: Price, what: string, lines: readonly PriceLine[]): DocumentBlock =>
  lines.length === 0
    ? { kind: "text", text: `${what}: none.` }
    : {
        kind: "table",
        columns: columns(what, price),
        rows: lines.map((l) => lineRow(price, l)),
        foot: [`${what} together`, "", printMoney(together(lines), price.currency)],
      };

/** From cost to total, each line after what it is reckoned on. */
function totalTable(price: Price, roundTo: Decimal | undefined): DocumentBlock {
  const row = (what: string, how: string, minor: number): readonly string[] =>
    lineRow(price, { what, how, minor });
  return {
    kind: "table",
    columns: columns("Price", price),
    rows: [
      row("Materials", "as above", together(price.materials)),
      row("Labour", "as above", together(price.labour)),
      lineRow(price, price.overhead),
      row("Cost", "materials, labour and overhead", price.cost),
      lineRow(price, price.margin),
      ...(price.rounding === 0
        ? []
        : [row("Rounding", roundTo === undefined ? "up" : `up to a whole ${roundTo}`, price.rounding)]),
      row("Price before tax", "", price.beforeTax),
      lineRow(price, price.tax),
    ],
    foot: [price.incomplete ? "Total so far" : "Total", "", printMoney(price.total, price.currency)],
  };
}

/** How it is paid; what isn't all reckoned isn't paid for yet. */
const payTables = (price: Price): readonly DocumentBlock[] =>
  price.incomplete
    ? []
    : [
        {
          kind: "table",
          columns: [left("To pay"), left("When"), right(price.currency.code)],
          rows: [
            ["Deposit", "when ordering", printMoney(price.deposit, price.currency)],
            ["Balance", "on delivery", printMoney(price.balance, price.currency)],
          ],
        },
      ];

const INCOMPLETE = "Not complete: what has no price yet is named under “Not priced or not timed”.";

/** Materials, labour, overhead, cost, margin, tax, total, deposit and balance, on a page of its own. */
export const priceSection = (price: Price, roundTo?: Decimal): readonly DocumentBlock[] => [
  { kind: "heading", text: "Your own reckoning: keep it from the customer", newPage: true },
  { kind: "text", text: `Amounts are in ${price.currency.code} (${price.currency.name}).` },
  ...(price.incomplete ? [{ kind: "text", text: INCOMPLETE } as const] : []),
  linesTable(price, "Materials", price.materials),
  linesTable(price, "Labour", price.labour),
  totalTable(price, roundTo),
  ...payTables(price),
];
