import type { Price } from "../../model/bench.ts";
import { sayValue } from "../../model/say.ts";
import { printMoney } from "../../units/money.ts";
import { sayCapacity } from "../sheet/article.ts";
import { type BenchPaper, finishWords, jobName } from "./benchDocument.ts";
import { type BenchDocument, type DocumentBlock, left, right, type TableBlock } from "./document.ts";
import { capital, sayLeather } from "./words.ts";

// What the customer is given: the article, its price, and where to sign. Nothing of the maker's reckoning.

/** A letter's type, mm: about 10 points. */
const TYPE_MM = 3.6;

type Said = readonly [what: string, says: string];

/** The sizes that a customer knows: the measure it is fitted to, what goes in; else the sizes of the whole. */
function sizes({ made: { fit, capacity, sizes: all }, order: { units } }: BenchPaper): readonly Said[] {
  const say = (mm: number): string => sayValue(mm, "length", units);
  const fitted: readonly Said[] = fit
    ? [
        [
          capital(fit.name),
          `${say(fit.wanted)}, can be buckled from ${say(fit.shortest)} to ${say(fit.longest)}`,
        ],
      ]
    : [];
  const holds: readonly Said[] = capacity ? [["Holds", sayCapacity(capacity, units)[0]!]] : [];
  const known = [...fitted, ...holds];
  if (known.length > 0) return known;
  return all.flatMap((q): readonly Said[] =>
    q.kind === "length" && q.name !== undefined ? [[capital(q.name), say(q.value)]] : [],
  );
}

/** The article and its choices, each with its word. */
function whatRows(paper: BenchPaper): readonly Said[] {
  const { made, order, bench, quantity, finish } = paper;
  const leathers = made.pieces.map((p) => sayLeather(p.leather.kind, p.leather.thickness, order.units));
  const brought = bench.hardware.filter((h) => h.brought).map((h) => `${h.count} ${h.name}`);
  return [
    ...(order.forWhom === "" ? [] : [["For", order.forWhom] as const]),
    ["What", capital(made.article)],
    ["How many", `${quantity}`],
    ...sizes(paper),
    ["Leather", [...new Set(leathers)].join("; ")],
    ...finishWords(finish),
    ...(brought.length === 0 ? [] : [["You bring", brought.join("; ")] as const]),
  ];
}

/** Price, tax and total; without tax the total alone. */
function priceTable(price: Price, { made, quantity }: BenchPaper): TableBlock {
  const { currency, tax, beforeTax, total } = price;
  const what = `${capital(made.article)}${quantity === 1 ? "" : ` × ${quantity}`}`;
  // The rate; what the maker's sheet says after it is the amount that stands in the line above.
  const rate = tax.how.split(",")[0]!;
  return {
    kind: "table",
    columns: [left("Price"), right(currency.code)],
    rows: [
      [what, printMoney(beforeTax, currency)],
      ...(tax.minor === 0
        ? []
        : [[[tax.what, rate].filter((w) => w !== "").join(", "), printMoney(tax.minor, currency)]]),
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
    { kind: "blanks", labels: ["Date"] },
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
