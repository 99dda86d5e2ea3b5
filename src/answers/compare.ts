import type { Units } from "../model/say.ts";
import { type Change, changeOf, union } from "./change.ts";
import { type HardwareChange, hardwareChanges } from "./compareHardware.ts";
import type { Summary, SummaryDimension, SummaryPiece, SummaryPrice, SummarySize } from "./summary.ts";
import { whyChanged } from "./whyChanged.ts";
import { whyPrice } from "./whyPrice.ts";

// What differs between two orders, or between an order as it was made once and as it is made now.

/** A piece that differs, or that one side lacks; the piece "" is the whole article. */
export type PieceChange = {
  readonly piece: string;
  readonly name: string;
  readonly only?: "before" | "after";
  readonly changes: readonly Change[];
};

export type PriceChange = {
  readonly what: string;
  /** Whole minor units; absent where a side isn't priced. */
  readonly before?: number;
  readonly after?: number;
  /** Where both are in one currency. */
  readonly difference?: number;
};

export type Comparison = {
  readonly units: Units;
  readonly before: SideName;
  readonly after: SideName;
  /** What stands in no section, measures and the rest as given, then what follows by default. */
  readonly order: readonly Change[];
  readonly given: readonly Change[];
  readonly byDefault: readonly Change[];
  readonly pieces: readonly PieceChange[];
  readonly hardware: readonly HardwareChange[];
  readonly currencies: {
    readonly before?: SummaryPrice["currency"];
    readonly after?: SummaryPrice["currency"];
  };
  readonly price: readonly PriceChange[];
  /** The lines that make a price another one. */
  readonly whyPrice: readonly string[];
  /** Of one order made twice: why sizes came out otherwise. */
  readonly why: readonly { readonly because: string; readonly sizes: readonly string[] }[];
  /** What could not be compared. */
  readonly notCompared: readonly string[];
  /** What else to know, as that another file could have been meant. */
  readonly notes: readonly string[];
};

export type SideName = { readonly name: string; readonly engine: string };
export type Side = { readonly name: string; readonly summary: Summary };

export type CompareOptions = {
  /** Both sides are one order's text: sizes that differ are explained. */
  readonly again?: boolean;
  /** The rates of one side are not at hand: neither prices nor what a shop has in stock is compared. */
  readonly withoutShop?: boolean;
  readonly notes?: readonly string[];
};

/** Compares two jobs, `before` with `after`; figures are said in the units of the first. */
export function compareJobs(before: Side, after: Side, options: CompareOptions = {}): Comparison {
  const [a, b] = [before.summary, after.summary];
  const { withoutShop = false } = options;
  const dimensions = dimensionChanges(a.dimensions, b.dimensions);
  const pieces = pieceChanges(a, b);
  const [benchA, benchB] = [a.bench, b.bench];
  const hasHardware = benchA !== undefined && benchB !== undefined;
  const prices = { before: benchA?.price, after: benchB?.price };
  return {
    units: a.order.units,
    before: { name: before.name, engine: a.engine },
    after: { name: after.name, engine: b.engine },
    ...dimensions,
    pieces,
    hardware: hasHardware ? hardwareChanges(benchA.hardware, benchB.hardware, withoutShop) : [],
    currencies: withoutShop || !hasHardware ? {} : currenciesOf(prices),
    price: withoutShop || !hasHardware ? [] : priceChanges(prices),
    whyPrice: withoutShop || !hasHardware ? [] : whyPrice(prices.before, prices.after),
    why: options.again ? reasons(a, b, pieces) : [],
    notCompared: [
      ...(hasHardware ? [] : ["hardware and price: the job.json doesn't hold them"]),
      ...(withoutShop && hasHardware
        ? ["price, spares and lengths in stock: a job.json doesn't keep the shop file"]
        : []),
    ],
    notes: options.notes ?? [],
  };
}

/** Whether there is nothing to tell. */
export const nothingDiffers = (c: Comparison): boolean =>
  [c.order, c.given, c.byDefault, c.pieces, c.hardware, c.price].every((part) => part.length === 0);

function dimensionChanges(
  before: readonly SummaryDimension[],
  after: readonly SummaryDimension[],
): Pick<Comparison, "order" | "given" | "byDefault"> {
  // What the article hands on to its pieces is told where it comes from.
  const own = (all: readonly SummaryDimension[]): ReadonlyMap<string, SummaryDimension> =>
    new Map(all.filter((d) => d.origin !== "article").map((d) => [d.key, d]));
  const [as, bs] = [own(before), own(after)];
  const found = union([...as.keys()], [...bs.keys()]).flatMap((key) => {
    const [a, b] = [as.get(key), bs.get(key)];
    const given = a?.origin === "given" || b?.origin === "given";
    return changeOf(key, b?.kind ?? a?.kind ?? "", a?.value, b?.value).map((change) => ({ change, given }));
  });
  const inSection = found.filter(({ change }) => change.what.includes("."));
  const only = (given: boolean): readonly Change[] =>
    inSection.filter((f) => f.given === given).map((f) => f.change);
  return {
    order: found.filter((f) => !inSection.includes(f)).map((f) => f.change),
    given: only(true),
    byDefault: only(false),
  };
}

function sizeChanges(before: readonly SummarySize[], after: readonly SummarySize[]): readonly Change[] {
  const named = (sizes: readonly SummarySize[], name: string): SummarySize | undefined =>
    sizes.find((s) => s.name === name);
  const names = union(
    before.map((s) => s.name),
    after.map((s) => s.name),
  );
  return names.flatMap((name) => {
    const [a, b] = [named(before, name), named(after, name)];
    return changeOf(name, b?.kind ?? a?.kind ?? "number", a?.value, b?.value);
  });
}

/** What of a piece differs beside its named sizes: its count, and an outline that no size tells of. */
function shapeChanges(a: SummaryPiece, b: SummaryPiece, sized: boolean): readonly Change[] {
  const outline = [
    ...changeOf("length over all", "length", a.extent.length, b.extent.length),
    ...changeOf("width over all", "length", a.extent.width, b.extent.width),
    ...changeOf("area", "area", a.area, b.area),
  ];
  return [...changeOf("how many", "count", a.count, b.count), ...(sized ? [] : outline)];
}

function pieceChanges(a: Summary, b: Summary): readonly PieceChange[] {
  const whole: PieceChange = {
    piece: "",
    name: "the whole article",
    changes: sizeChanges(a.sizes, b.sizes),
  };
  const ids = union(
    a.pieces.map((p) => p.id),
    b.pieces.map((p) => p.id),
  );
  const each = ids.flatMap((id): readonly PieceChange[] => {
    const [x, y] = [a.pieces.find((p) => p.id === id), b.pieces.find((p) => p.id === id)];
    if (x && y) {
      const sizes = sizeChanges(x.sizes, y.sizes);
      return [{ piece: id, name: y.name, changes: [...sizes, ...shapeChanges(x, y, sizes.length > 0)] }];
    }
    const name = (x ?? y)?.name ?? id;
    return [{ piece: id, name, only: x ? "before" : "after", changes: [] }];
  });
  return [whole, ...each].filter((p) => p.only !== undefined || p.changes.length > 0);
}

type Prices = { readonly before: SummaryPrice | undefined; readonly after: SummaryPrice | undefined };

const currenciesOf = ({ before, after }: Prices): Comparison["currencies"] => ({
  ...(before ? { before: before.currency } : {}),
  ...(after ? { after: after.currency } : {}),
});

const sumOf = (lines: readonly { readonly minor: number }[]): number =>
  lines.reduce((sum, l) => sum + l.minor, 0);

/** The parts of a price, as the quote adds them up. */
const PARTS: readonly (readonly [what: string, of: (p: SummaryPrice) => number])[] = [
  ["materials", (p) => sumOf(p.materials)],
  ["labour", (p) => sumOf(p.labour)],
  ["overhead", (p) => p.overhead.minor],
  ["margin", (p) => p.margin.minor],
  ["rounding up", (p) => p.rounding],
  ["price before tax", (p) => p.beforeTax],
  ["tax", (p) => p.tax.minor],
  ["price", (p) => p.total],
];

function priceChanges({ before, after }: Prices): readonly PriceChange[] {
  const comparable = before?.currency.code === after?.currency.code;
  // Beside nothing, the price alone tells enough.
  const parts = before && after ? PARTS : PARTS.slice(-1);
  const rows = parts.map(([what, of]): PriceChange => {
    const [x, y] = [before && of(before), after && of(after)];
    return {
      what,
      ...(x === undefined ? {} : { before: x }),
      ...(y === undefined ? {} : { after: y }),
      ...(comparable && x !== undefined && y !== undefined ? { difference: y - x } : {}),
    };
  });
  const differs = (p: PriceChange): boolean => !comparable || p.before !== p.after;
  // Where rounding takes up what the parts differ by, the price is told to be the same.
  return rows.some(differs) ? rows.filter((p, i) => differs(p) || i === rows.length - 1) : [];
}

/** Why sizes changed, alike reasons together, in the order of the pieces. */
function reasons(a: Summary, b: Summary, pieces: readonly PieceChange[]): Comparison["why"] {
  const found = new Map<string, string[]>();
  for (const { piece, changes, only } of pieces) {
    for (const { what } of only === undefined ? changes : []) {
      const of = (s: Summary) => s.derivations.find((d) => d.piece === piece && d.result === what);
      const [x, y] = [of(a), of(b)];
      const told = x && y ? whyChanged(x, y, a.order.units) : undefined;
      const because = told ?? versions(a, b);
      const name = piece === "" ? what : `${piece}: ${what}`;
      found.set(because, [...(found.get(because) ?? []), name]);
    }
  }
  return [...found].map(([because, sizes]) => ({ because, sizes }));
}

const versions = (a: Summary, b: Summary): string =>
  a.engine === b.engine
    ? `version ${a.engine} made both, and no step of how it came about differs`
    : `made by version ${a.engine}, now by ${b.engine}; no step of how it came about tells more`;
