import { boundsOf } from "../../geometry/bounds.ts";
import type { Cutout, Hole, Piece, SeamLine, Zone } from "../../model/piece.ts";
import type { Units } from "../../model/say.ts";
import { printLength, printLengthShort, printNumber, printThickness } from "../../units/index.ts";

// The words on a piece.

/** Two sizes: `35 7/16 × 5/8 in (900 × 15.9 mm)`, `900 × 16 mm`. */
export function saySizes(a: number, b: number, units: Units): string {
  const bare = (mm: number, unit: Units): string => printLengthShort(mm, unit).replace(/ (in|mm|cm)$/, "");
  const pair = (unit: Units): string => `${bare(a, unit)} × ${bare(b, unit)} ${unit}`;
  return units === "in" ? `${pair("in")} (${pair("mm")})` : pair(units);
}

/** "cut 2: 1 as drawn, 1 turned over" */
export function sayCount({ count, hand }: Piece): string {
  if (hand === "same") return `cut ${count}`;
  const half = printNumber(count / 2, 1);
  return `cut ${count}: ${half} as drawn, ${half} turned over`;
}

/** The cut size over all: the length along the piece, the greatest width. */
export function sayCutSize(piece: Piece, units: Units): string {
  const box = boundsOf(piece.outline);
  const [x, y] = [box.maxX - box.minX, box.maxY - box.minY];
  return saySizes(Math.max(x, y), Math.min(x, y), units);
}

const named = (kind: string): string => (/leather/i.test(kind) ? kind : `${kind} leather`);

export const sayLeather = ({ leather }: Piece, units: Units): string =>
  `${named(leather.kind)}, ${printThickness(leather.thickness, units === "in" ? "oz" : "mm")}`;

export const GRAIN_UP = "grain side up";

/** `tongue slot 1 3/32 × 5/32 in (28 × 4 mm)` */
export const sayCutout = (c: Cutout, units: Units): string =>
  c.length !== undefined && c.width !== undefined ? `${c.use} ${saySizes(c.length, c.width, units)}` : c.use;

/** The zone's words, with the thicknesses where they don't say them yet. */
export function sayZone({ kind, label, from, to }: Zone): string {
  if (kind !== "skive" || from === undefined || /\d/.test(label)) return label;
  const end = to === undefined || to === 0 ? "nothing" : `${printNumber(to, 1)} mm`;
  return to === from ? `${label} to ${end}` : `${label} from ${printNumber(from, 1)} to ${end}`;
}

export const saySeam = (s: SeamLine): string =>
  `${s.stitches} ${s.stitches === 1 ? "stitch" : "stitches"} of ${printNumber(s.pitch, 2)} mm`;

/** An id as words: `near.3` → `near 3`. */
export const sayId = (id: string): string => id.replaceAll(/[.-]/g, " ");

export const sayHoleSize = (h: Hole, units: Units): string => `hole ${printLength(h.size, units)}`;
