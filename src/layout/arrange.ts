import { freeRects, placeFor, type Rect, type Rule, type Size } from "./pack.ts";
import { covered, type Tile, tilesFor } from "./tile.ts";

// Which pieces share a plate. Plates are filled greedily, in many orders and ways; the judge is elsewhere.

export type Item = Size & { readonly id: string };
/** An item on a plate, measured from the plate's upper left corner. */
export type Laid = Rect & { readonly id: string; readonly turned: boolean };
/** A plate of columns × rows tiles, filled or being filled. */
export type Bin = {
  readonly tile: Tile;
  readonly columns: number;
  readonly rows: number;
  readonly laid: readonly Laid[];
  /** Every largest free rectangle beside what is laid. */
  readonly free: readonly Rect[];
};

/** One way of going about it. */
export type Way = {
  readonly tiles: readonly Tile[];
  readonly overlap: number;
  readonly order: (a: Item, b: Item) => number;
  readonly rule: Rule;
  /** A plate of its own lies along x whatever it needs; else whichever way needs fewest sheets. */
  readonly across: boolean;
  /** Between a plate that grows and a new one at the same number of sheets: grow. */
  readonly grow: boolean;
};

const wholeOf = (bin: Bin, overlap: number): Rect => ({
  x: 0,
  y: 0,
  width: covered(bin.columns, bin.tile.width, overlap),
  height: covered(bin.rows, bin.tile.height, overlap),
});

/** A plate with nothing on it yet. */
function emptyBin(tile: Tile, columns: number, rows: number, overlap: number): Bin {
  const bin = { tile, columns, rows, laid: [], free: [] };
  return { ...bin, free: [wholeOf(bin, overlap)] };
}

/** The plate with more columns or rows, what lies on it left where it is. */
function grown(bin: Bin, columns: number, rows: number, overlap: number): Bin {
  const larger = { ...bin, columns: bin.columns + columns, rows: bin.rows + rows };
  return { ...larger, free: freeRects([wholeOf(larger, overlap)], bin.laid) };
}

type Spot = Rect & { readonly turned: boolean };

function withItem(bin: Bin, item: Item, { x, y, width, height, turned }: Spot): Bin {
  const laid: Laid = { id: item.id, x, y, width, height, turned };
  return { ...bin, laid: [...bin.laid, laid], free: freeRects(bin.free, [laid]) };
}

/** The plate with the item on it, when there is room. */
function filled(bin: Bin, item: Item, rule: Rule): Bin | undefined {
  const spot = placeFor(item, bin.free, rule);
  return spot && withItem(bin, item, spot);
}

type Offer = { readonly bin: Bin; readonly sheets: number };
const cheapest = (offers: readonly Offer[]): Offer | undefined =>
  offers.reduce<Offer | undefined>((best, o) => (best && best.sheets <= o.sheets ? best : o), undefined);

const turnsFor = (item: Item, way: Way): readonly boolean[] =>
  way.across ? [item.height > item.width] : [false, true];

/** A plate of its own for an item, lying or turned, on the tile that needs fewest sheets. */
function newBin(item: Item, way: Way): Offer {
  const offers = way.tiles.flatMap((tile) =>
    turnsFor(item, way).map((turned): Offer => {
      const [width, height] = turned ? [item.height, item.width] : [item.width, item.height];
      const columns = tilesFor(width, tile.width, way.overlap);
      const rows = tilesFor(height, tile.height, way.overlap);
      const bin = withItem(emptyBin(tile, columns, rows, way.overlap), item, {
        x: 0,
        y: 0,
        width,
        height,
        turned,
      });
      return { bin, sheets: columns * rows };
    }),
  );
  return cheapest(offers)!;
}

/** A plate that has grown by a column or a row to take the item; `sheets` are the ones added. */
function grownBin(bin: Bin, item: Item, way: Way): Offer | undefined {
  const wider = filled(grown(bin, 1, 0, way.overlap), item, way.rule);
  const taller = filled(grown(bin, 0, 1, way.overlap), item, way.rule);
  return cheapest([
    ...(wider ? [{ bin: wider, sheets: bin.rows }] : []),
    ...(taller ? [{ bin: taller, sheets: bin.columns }] : []),
  ]);
}

/** Puts one more item where it costs fewest sheets. */
function added(bins: readonly Bin[], item: Item, way: Way): readonly Bin[] {
  for (const [i, bin] of bins.entries()) {
    const room = filled(bin, item, way.rule);
    if (room) return bins.with(i, room);
  }
  const fresh = newBin(item, way);
  let [at, best] = [-1, fresh];
  for (const [i, bin] of bins.entries()) {
    const offer = grownBin(bin, item, way);
    if (offer && (offer.sheets < best.sheets || (way.grow && at < 0 && offer.sheets === best.sheets))) {
      [at, best] = [i, offer];
    }
  }
  return at < 0 ? [...bins, fresh.bin] : bins.with(at, best.bin);
}

const inOrder = (items: readonly Item[], way: Way): readonly Bin[] =>
  items.reduce<readonly Bin[]>((bins, item) => added(bins, item, way), []);

const sorted = (items: readonly Item[], way: Way): readonly Item[] =>
  [...items].sort((a, b) => way.order(a, b) || (a.id < b.id ? -1 : 1));

/** All items on plates, gone about in one way. */
export const arranged = (items: readonly Item[], way: Way): readonly Bin[] =>
  inOrder(sorted(items, way), way);

const areaOf = (bin: Bin): number => bin.laid.reduce((sum, l) => sum + l.width * l.height, 0);

/**
 * More arrangements of one way: what lay on the emptiest plate, and so cost most for its size, is laid
 * first next time, and so on for some rounds.
 */
export function rearranged(items: readonly Item[], way: Way, rounds: number): readonly (readonly Bin[])[] {
  let order = sorted(items, way);
  const found: (readonly Bin[])[] = [];
  for (let round = 0; round < rounds; round++) {
    const bins = inOrder(order, way);
    if (round > 0) found.push(bins);
    if (bins.length < 2) break;
    const emptiest = bins.reduce((least, bin) => (areaOf(bin) < areaOf(least) ? bin : least));
    const first = emptiest.laid.map((l) => l.id);
    order = [...order.filter((i) => first.includes(i.id)), ...order.filter((i) => !first.includes(i.id))];
  }
  return found;
}

/** How many sheets a filled plate will need: its places, cut back to its extent, where something lies. */
export function sheetsFor({ tile, laid }: Bin, overlap: number): number {
  const width = Math.max(...laid.map((l) => l.x + l.width));
  const height = Math.max(...laid.map((l) => l.y + l.height));
  const columns = tilesFor(width, tile.width, overlap);
  const rows = tilesFor(height, tile.height, overlap);
  let used = 0;
  for (let c = 0; c < columns; c++) {
    for (let r = 0; r < rows; r++) {
      const [left, top] = [(c * width) / columns, (r * height) / rows];
      const lies = (l: Laid): boolean =>
        l.x < left + width / columns &&
        l.x + l.width > left &&
        l.y < top + height / rows &&
        l.y + l.height > top;
      if (laid.some(lies)) used++;
    }
  }
  return used;
}

const long = (i: Item): number => Math.max(i.width, i.height);
const short = (i: Item): number => Math.min(i.width, i.height);
const ORDERS: readonly ((a: Item, b: Item) => number)[] = [
  (a, b) => long(b) - long(a) || short(b) - short(a),
  (a, b) => b.width * b.height - a.width * a.height,
  (a, b) => short(b) - short(a) || long(b) - long(a),
  (a, b) => long(b) + short(b) - long(a) - short(a),
];

/** Every way that is tried with tiles of an upright and of a lying sheet; only one of them on a roll. */
export function waysOf(upright: Tile, lying: Tile | undefined, overlap: number): readonly Way[] {
  const rules: readonly Rule[] = ["up", "left", "close"];
  const tileSets = lying ? [[lying], [upright], [upright, lying]] : [[upright]];
  return tileSets.flatMap((tiles) =>
    [true, false]
      .filter((across) => !across || tiles.length === 1)
      .flatMap((across) =>
        ORDERS.flatMap((order) =>
          rules.flatMap((rule) =>
            [true, false].map((grow): Way => ({ tiles, overlap, order, rule, across, grow })),
          ),
        ),
      ),
  );
}
