import type { Piece } from "../model/piece.ts";
import type { Layout, Paper, Plate, PrinterFactor, Sheet } from "../model/sheet.ts";
import { roundMm } from "../units/round.ts";
import { arranged, type Bin, type Item, rearranged, sheetsFor, waysOf } from "./arrange.ts";
import { type UsedCell, usedCells } from "./cells.ts";
import { keptOf } from "./ends.ts";
import { type Parts, partOf } from "./part.ts";
import { TRUE_FACTOR } from "./printer.ts";
import { type Settled, settledWays } from "./settle.ts";
import { sheetsOf } from "./sheets.ts";
import { rollLacksSquare, SQUARE_ROOM_MM, sheetsWithoutSquare } from "./squareRoom.ts";
import { FOOT_MM, paperFault, type Tile, tileOf, tilesFor } from "./tile.ts";

export type LayoutOptions = {
  readonly paper: Paper;
  /** mm; 10 unless said. */
  readonly margin?: number;
  /** mm; 10 unless said. */
  readonly overlap?: number;
  readonly factor?: PrinterFactor;
  /** Straight straps are printed ends only. */
  readonly endsOnly?: boolean;
};

export const MARGIN_MM = 10;
export const OVERLAP_MM = 10;

/** How many arrangements with few sheets are looked at closely. */
const LOOKED_AT = 24;

type Frame = Pick<Layout, "paper" | "margin" | "overlap" | "factor">;
type Jointed = { readonly settled: Settled; readonly cells: readonly UsedCell[] };
type Solution = {
  readonly plates: readonly Jointed[];
  /** Lower is better, the first figure first. */
  readonly cost: readonly number[];
};

/** One text for one arrangement, to see which ways came to the same. */
const keyOf = (bins: readonly Bin[]): string =>
  JSON.stringify(
    bins.map((b) => [b.tile.landscape, b.tile.height, b.laid.map((l) => [l.id, l.x, l.y, l.turned])]),
  );

/** The plate that needs fewest sheets; then the one whose joints cross least. */
function bestSettled(ways: readonly Settled[], parts: Parts, overlap: number): Jointed {
  const all = ways.map((one): Jointed => ({ settled: one, cells: usedCells(one, parts, overlap) }));
  return all.reduce((best, s) => {
    const fewer = s.cells.length - best.cells.length || s.settled.crossed - best.settled.crossed;
    return fewer < 0 ? s : best;
  });
}

function solutionOf(
  bins: readonly Bin[],
  parts: Parts,
  items: ReadonlyMap<string, Item>,
  { paper, overlap }: Frame,
): Solution {
  const plates = bins.map((bin) => bestSettled(settledWays(bin, parts, items, overlap), parts, overlap));
  const sum = (of: (p: Solution["plates"][number]) => number): number =>
    plates.reduce((total, p) => total + of(p), 0);
  const lying = plates.filter((p) => p.settled.tile.landscape).length;
  const cost = [
    sum((p) => p.cells.length),
    paper.roll ? roundMm(sum((p) => p.settled.height)) : 0,
    roundMm(sum((p) => p.settled.crossed)),
    // A piece in fewer parts is sooner joined.
    sum((p) => p.cells.reduce((parts, c) => parts + c.pieces.length, 0)),
    sum((p) => sheetsWithoutSquare(p.settled, p.cells, parts)),
    lying > 0 && lying < plates.length ? 1 : 0,
    plates.length,
    roundMm(sum((p) => turnedLength(p.settled, items))),
  ];
  return { plates, cost };
}

/** Pieces that stand on end are read with the head on one side: the shorter they are in all, the better. */
function turnedLength({ placed }: Settled, items: ReadonlyMap<string, Item>): number {
  const turned = placed.filter((p) => p.placement.angle !== 0);
  return turned.reduce((sum, p) => sum + items.get(p.piece)!.width, 0);
}

function cheaper(a: Solution, b: Solution): boolean {
  const at = a.cost.findIndex((c, i) => c !== b.cost[i]);
  return at >= 0 && a.cost[at]! < b.cost[at]!;
}

type Task = { readonly parts: Parts; readonly items: ReadonlyMap<string, Item>; readonly frame: Frame };

const tilesWith = ({ paper, margin, factor }: Frame, foot: number): readonly [Tile, Tile | undefined] => [
  tileOf(paper, margin, factor, false, foot),
  paper.roll ? undefined : tileOf(paper, margin, factor, true, foot),
];

/** Filled plates, and how many sheets they are likely to need before the joints are chosen. */
type Arrangement = { readonly bins: readonly Bin[]; readonly sheets: number };

/** Of the ways that need fewest sheets so many are tried again, laying first what fitted worst, so often. */
const TRIED_AGAIN = 12;
const ROUNDS = 8;

/** Different arrangements on tiles with that much left free at the foot, those with fewest sheets first. */
function arrangements(task: Task, foot: number): readonly Arrangement[] {
  const items = [...task.items.values()];
  const found = new Map<string, Arrangement>();
  const note = (bins: readonly Bin[]): void => {
    const key = keyOf(bins);
    const sheets = bins.reduce((sum, b) => sum + sheetsFor(b, task.frame.overlap), 0);
    if (!found.has(key)) found.set(key, { bins, sheets });
  };
  const tried = waysOf(...tilesWith(task.frame, foot), task.frame.overlap).map((way) => {
    const bins = arranged(items, way);
    note(bins);
    return { way, sheets: found.get(keyOf(bins))!.sheets };
  });
  const few = Math.min(...tried.map((t) => t.sheets));
  if (few > leastSheets(task)) {
    const best = tried.filter((t) => t.sheets === few).slice(0, TRIED_AGAIN);
    for (const { way } of best) rearranged(items, way, ROUNDS).map(note);
  }
  return [...found.values()].sort((a, b) => a.sheets - b.sheets);
}

/** Fewer sheets than this can't be: by the largest piece alone, and by area. */
function leastSheets({ items, frame }: Task): number {
  const [tile] = tilesWith(frame, 0);
  const alone = [...items.values()].map((i) => {
    const sheets = (w: number, h: number): number =>
      tilesFor(w, tile.width, frame.overlap) * tilesFor(h, tile.height, frame.overlap);
    return Math.min(sheets(i.width, i.height), sheets(i.height, i.width));
  });
  const area = [...items.values()].reduce((sum, i) => sum + i.width * i.height, 0);
  return Math.max(...alone, Math.ceil(area / (tile.width * tile.height)));
}

/** The best of all ways: fewest sheets (or least of the roll), then what the joints cross. */
function bestSolution(task: Task): Solution {
  const withFoot = arrangements(task, FOOT_MM);
  const few = withFoot[0]!.sheets;
  // The foot is only worth looking past when it may have cost a sheet.
  const without = few > leastSheets(task) ? arrangements(task, 0).filter((a) => a.sheets < few) : [];
  const all = [...without, ...withFoot];
  const promising = all.filter((a) => a.sheets <= all[0]!.sheets + 1).slice(0, LOOKED_AT);
  const [first, ...rest] = promising.map(({ bins }) => solutionOf(bins, task.parts, task.items, task.frame));
  return rest.reduce((best, s) => (cheaper(s, best) ? s : best), first!);
}

/** Names plates and sheets in the order they are printed: the plate with most sheets first. */
function named({ plates }: Solution, { parts, frame }: Task): Pick<Layout, "plates" | "sheets"> {
  const sorted = plates
    .map((p, i) => ({ ...p, i }))
    .sort((a, b) => b.cells.length - a.cells.length || a.i - b.i);
  const named: Plate[] = [];
  const sheets: Sheet[] = [];
  for (const { settled: s, cells } of sorted) {
    const id = `plate-${named.length + 1}`;
    const firstRow = sheets.reduce((rows, sheet) => Math.max(rows, sheet.row + 1), 0);
    const { width, height, placed, jointsX, jointsY } = s;
    named.push({ id, width, height, placed, jointsX, jointsY });
    const square = frame.paper.roll && rollLacksSquare(s, cells, parts) ? SQUARE_ROOM_MM.height : 0;
    const foot = frame.paper.roll ? FOOT_MM + square : 0;
    sheets.push(...sheetsOf(id, cells, { landscape: s.tile.landscape, firstRow, foot }, frame));
  }
  return { plates: named, sheets };
}

/**
 * Lays pieces on sheets of paper, true to size.
 *
 * Pieces share plates so that the fewest sheets are printed; of the ways that need as few, the one whose
 * joints cross fewest holes, cutouts, folds and pieces that could be whole. No sheet is empty. A piece that
 * is cut as a pair is drawn once. Throws when the paper can't be used at all: `paperFault` says why.
 */
export function layOut(pieces: readonly Piece[], options: LayoutOptions): Layout {
  const { paper, margin = MARGIN_MM, overlap = OVERLAP_MM, factor = TRUE_FACTOR } = options;
  const frame: Frame = { paper, margin, overlap, factor };
  if (paperFault(paper, margin, overlap))
    throw new Error(`layOut: margin ${margin} or overlap ${overlap} can't be used`);
  if (pieces.length === 0) return { ...frame, plates: [], sheets: [] };
  const parts: Parts = new Map(
    pieces.map((p) => [p.id, partOf(p, options.endsOnly ? keptOf(p) : undefined)]),
  );
  const items = new Map<string, Item>();
  for (const [id, { room }] of parts) {
    items.set(id, { id, width: roundMm(room.maxX - room.minX), height: roundMm(room.maxY - room.minY) });
  }
  const task: Task = { parts, items, frame };
  return { ...frame, ...named(bestSolution(task), task) };
}
