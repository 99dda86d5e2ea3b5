// Where the holes are: running dimensions from the datum, above the view along x and to its right along y.
// Each ends in the holes' letters, so that no letter stands on the piece.
import { circlePath, type Point, polyline } from "../../geometry/path.ts";
import type { Item, Stroke, Words } from "../picture.ts";
import { type Block, blockSize, blockWords, paragraph } from "../piece/block.ts";
import { arrow } from "../piece/dimension.ts";
import { stroke } from "../piece/strokes.ts";
import { SMALL_MM } from "../piece/title.ts";
import { spread } from "./spread.ts";

/** One place along an axis: what stands there, and the points on the piece that it leads to. */
export type Ordinate = {
  /** mm from the datum on paper. */
  readonly at: number;
  readonly text: string;
  /** How far from the axis its extension line begins: the hole's own place across, on paper. */
  readonly from: number;
};

/** "x": above the view, labels turned; "y": to its right. */
export type Along = "x" | "y";

export type Row = {
  readonly along: Along;
  /** Where the line of running dimensions lies, across the axis, on paper. */
  readonly line: number;
  readonly ordinates: readonly Ordinate[];
  /** Where labels begin at the earliest. */
  readonly labelsFrom: number;
  /** Only letters, read along the row, and extension lines without arrows. */
  readonly bare?: boolean;
  /** Labels of a bare row are turned all the same: there are too many to be read along it. */
  readonly turned?: boolean;
  /** The datum's ring on a bare row; other rows have it anyway. */
  readonly ring?: boolean;
};

/** Labels are folded to this width, mm. */
const LABEL_MM = 52;
/** From the line of dimensions to the labels: what an extension line needs to bend, mm. */
export const BEND_MM = 4;
const BEYOND_MM = 0.8;
/** Between two labels, mm: one above the other, and side by side as they are read. */
const GAP_MM = 0.5;
const ASIDE_MM = 1.5;
/** From an extension line's end to its label, mm. */
const BEFORE_LABEL_MM = 0.8;
/** An arrow needs this much line, mm; where there is less stands a dot. */
const ARROW_ROOM_MM = 4;
const DOT_MM = 0.5;
const DATUM_MM = 0.9;

/** A point given along and across the axis. */
const pointOn = (along: Along, a: number, b: number): Point => (along === "x" ? [a, b] : [b, a]);

const blockOf = (text: string): Block => (text === "" ? [] : paragraph(text, SMALL_MM, LABEL_MM));

/** The datum's ring. */
const ringOf = ({ along, line }: Row): Stroke => ({
  ...stroke("mark", "01.1", circlePath(pointOn(along, 0, line), DATUM_MM)),
  fill: "white",
});

/** An arrow on the line of dimensions, away from the datum; a dot where there is no room for one. */
function markAt({ along, line, ordinates }: Row, at: number): Stroke {
  const sign = Math.sign(at);
  const gaps = ordinates.map((o) => (at - o.at) * sign).filter((gap) => gap > 0);
  const tip = pointOn(along, at, line);
  return Math.min(Math.abs(at), ...gaps) < ARROW_ROOM_MM
    ? { ...stroke("mark", "01.1", circlePath(tip, DOT_MM)), fill: "black" }
    : arrow("mark", tip, pointOn(along, sign, 0));
}

/** The line of running dimensions. */
function marksOn(row: Row): readonly Stroke[] {
  if (row.bare) return row.ring ? [ringOf(row)] : [];
  const places = row.ordinates.map(({ at }) => at);
  const [low, high] = [Math.min(0, ...places), Math.max(0, ...places)];
  const ends = [low, high].map((at) => pointOn(row.along, at, row.line));
  const base = high > low ? [stroke("mark", "01.1", polyline(ends))] : [];
  return [...base, ...places.filter((at) => at !== 0).map((at) => markAt(row, at)), ringOf(row)];
}

/** The extension line of one place, from the hole past the line of dimensions to its label. */
function extension({ along, line, labelsFrom }: Row, { at, from }: Ordinate, label: number): Stroke {
  const way = [
    pointOn(along, at, from),
    pointOn(along, at, line + BEYOND_MM),
    pointOn(along, label, labelsFrom - BEFORE_LABEL_MM),
  ];
  return stroke("mark", "01.1", polyline(way));
}

/** Labels of places along x are turned, so that many stand side by side; bare letters need not be. */
const isTurned = ({ along, bare, turned }: Row): boolean =>
  along === "x" && (bare !== true || turned === true);

/** What a label takes along the axis and across it. */
function roomOf(row: Row, block: Block): { readonly along: number; readonly across: number } {
  const { width, height } = blockSize(block);
  const level = row.along === "x" && !isTurned(row);
  return level ? { along: width, across: height } : { along: height, across: width };
}

function labelWords(row: Row, block: Block, middle: number): readonly Words[] {
  const { along, across } = roomOf(row, block);
  const [a, b] = [middle - along / 2, middle + along / 2];
  const [c, d] = [row.labelsFrom, row.labelsFrom + across];
  const box =
    row.along === "x" ? { minX: a, maxX: b, minY: c, maxY: d } : { minX: c, maxX: d, minY: a, maxY: b };
  return blockWords(block, box, isTurned(row) ? 90 : 0);
}

const inOrder = (row: Row): readonly Ordinate[] => [...row.ordinates].sort((a, b) => a.at - b.at);

/** Where the labels' middles come to stand along the axis, in the order of their places. */
function middlesOf(row: Row): readonly number[] {
  return spread(
    inOrder(row).map(({ at, text }) => ({
      at,
      size: roomOf(row, blockOf(text)).along + (row.along === "x" && !isTurned(row) ? ASIDE_MM : GAP_MM),
    })),
  );
}

/** How far the labels reach along the axis. */
export function reachOf(row: Row): { readonly low: number; readonly high: number } {
  const middles = middlesOf(row);
  const halves = inOrder(row).map(({ text }) => roomOf(row, blockOf(text)).along / 2);
  return {
    low: Math.min(0, ...middles.map((m, i) => m - halves[i]!)),
    high: Math.max(0, ...middles.map((m, i) => m + halves[i]!)),
  };
}

/** The row drawn: extension lines, running dimensions, labels. */
export function ordinateItems(row: Row): readonly Item[] {
  const middles = middlesOf(row);
  const each = inOrder(row).flatMap((ordinate, i): readonly Item[] => [
    extension(row, ordinate, middles[i]!),
    ...labelWords(row, blockOf(ordinate.text), middles[i]!),
  ]);
  return [...each, ...marksOn(row)];
}
