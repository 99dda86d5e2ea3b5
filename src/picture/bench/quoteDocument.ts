import type { Price } from "../../model/bench.ts";
import { capital } from "../../model/words.ts";
import { printMoney } from "../../units/money.ts";
import { type BenchPaper, finishWords, jobName } from "./benchDocument.ts";
import { type BenchDocument, type DocumentBlock, left, right, type TableBlock } from "./document.ts";
import { broughtWords, howMany, leatherWords, metalWords, orderedRows, type Said } from "./ordered.ts";

// What the customer is given: the article, its price, and where to sign. Nothing of the maker's reckoning.

/** A letter's type, mm: about 10 points. */
const TYPE_MM = 3.6;

/** The article and its choices, each with its word. */
function whatRows(paper: BenchPaper): readonly Said[] {
  const { order, finish } = paper;
  const [what, ...sizes] = orderedRows(paper);
  const said: readonly Said[] = [
    ["For", order.forWhom],
    ...(what ? [what] : []),
    ["How many", `${howMany(paper)}`],
    ...sizes,
    ["Leather", leatherWords(paper)],
    ["Metal parts", metalWords(paper)],
    ...finishWords(finish),
    ["You bring", broughtWords(paper)],
  ];
  return said.filter(([, says]) => says !== "");
}

/** The price of one of several; "about" where it doesn't come out even. */
function sayEach({ beforeTax, currency }: Price, count: number): string {
  const each = Math.round(beforeTax / count);
  return `${count} at ${each * count === beforeTax ? "" : "about "}${printMoney(each, currency)} each`;
}

/** Price, tax and total; without tax the total alone. */
function priceTable(price: Price, paper: BenchPaper): TableBlock {
  const { currency, tax, beforeTax, total } = price;
  const name = orderedRows(paper)[0]?.[1].split(":")[0] ?? capital(paper.made.article);
  const count = howMany(paper);
  const what = count === 1 ? name : `${name}, ${sayEach(price, count)}`;
  // The rate; what the maker's sheet says after it is the amount that stands in the line above.
  const rate = tax.how.split(",")[0]!;
  return {
    kind: "table",
    columns: [left("Price"), right(currency.code)],
    rows: [
      [what, printMoney(beforeTax, currency)],
      ...(tax.minor === 0
        ? []
        : [[[capital(tax.what), rate].filter((w) => w !== "").join(", "), printMoney(tax.minor, currency)]]),
    ],
    foot: [`Total in ${currency.code}`, printMoney(total, currency)],
  };
}

const payTable = ({ currency, deposit, balance }: Price): TableBlock => ({
  kind: "table",
  columns: [left("To pay"), right(currency.code)],
  rows: [
    ...(deposit === 0 ? [] : [["Deposit, when ordering", printMoney(deposit, currency)]]),
    [deposit === 0 ? "On delivery" : "Balance, on delivery", printMoney(balance, currency)],
  ],
});

const reference = (file: string): string => file.replace(/^.*[\\/]/, "").replace(/\.ya?ml$/i, "");

function blocks(paper: BenchPaper, price: Price): readonly DocumentBlock[] {
  const { validDays } = paper.shop;
  const days = validDays === 1 ? "1 day" : `${validDays} days`;
  const rows: readonly Said[] = [["Our reference", reference(paper.order.file)], ...whatRows(paper)];
  return [
    { kind: "blanks", labels: ["Date", "Delivery by"] },
    { kind: "table", columns: [left(""), left("")], rows },
    priceTable(price, paper),
    payTable(price),
    { kind: "text", text: `Amounts are in ${price.currency.code} (${price.currency.name}).` },
    ...(validDays > 0
      ? [{ kind: "text", text: `This quote holds for ${days} from its date.` } as const]
      : []),
    { kind: "heading", text: "Please make it as written above" },
    { kind: "blanks", labels: ["Name", "Signature", "Date"] },
  ];
}

/** The quote for the customer; undefined when there is no price, or when it leaves something out. */
export function quoteDocument(paper: BenchPaper): BenchDocument | undefined {
  const { shop, bench } = paper;
  if (!bench.price || bench.price.incomplete) return undefined;
  return {
    title: shop.name === "" ? "Quote" : `Quote from ${shop.name}`,
    type: TYPE_MM,
    subtitle: shop.address === "" ? [] : [shop.address],
    head: `Quote: ${jobName(paper)}`,
    blocks: blocks(paper, bench.price),
  };
}
