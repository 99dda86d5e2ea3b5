import { boundsOf } from "../../geometry/bounds.ts";
import type { Cutout, Fold, Hole, Piece, SeamLine, Zone } from "../../model/piece.ts";
import type { Units } from "../../model/say.ts";
import {
  MM_PER_INCH,
  printHoleInches,
  printLengthShort,
  printNumber,
  printThickness,
} from "../../units/index.ts";

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

/** `tongue slot 28 × 4 mm`: in millimetres whatever the units, for a 32nd of an inch is too coarse. */
export const sayCutout = (c: Cutout): string =>
  c.length !== undefined && c.width !== undefined ? `${c.use} ${saySizes(c.length, c.width, "mm")}` : c.use;

/** The zone's words, with the thicknesses where they don't say them yet. */
export function sayZone({ kind, label, from, to }: Zone): string {
  if (kind !== "skive" || from === undefined || /\d/.test(label)) return label;
  const thick = (mm: number): string => printNumber(mm, 1);
  if (to === undefined || to === 0) return `${label} (flesh side) from ${thick(from)} mm to nothing`;
  // The whole field is thinned alike; only a feathered end is a taper.
  return `${label} (flesh side) all to ${thick(to)} mm`;
}

/** The same in the fewest words, for where there is little room: `skive to 2 mm`. */
export const sayZoneShort = ({ label, to }: Zone): string =>
  `${label} to ${to === undefined || to === 0 ? "nothing" : `${printNumber(to, 1)} mm`}`;

/** A pitch this near to a whole number of stitches to the inch is called by it. */
const SAME_PITCH = 0.01;

/** `6 stitches of 3.18 mm (8 to the inch)` */
export function saySeam(s: SeamLine): string {
  const toInch = MM_PER_INCH / s.pitch;
  const whole = Math.round(toInch);
  const named = whole > 0 && Math.abs(toInch / whole - 1) <= SAME_PITCH ? ` (${whole} to the inch)` : "";
  return `${s.stitches} ${s.stitches === 1 ? "stitch" : "stitches"} of ${printNumber(s.pitch, 2)} mm${named}`;
}

const plain = (name: string): string => name.toLowerCase().replaceAll("-", " ").trim();

/**
 * With what a piece is sewn, from the seam's name: `front to gusset` is `to gusset` on the front and
 * `to front` on the gusset.
 */
export function sayMate(seam: string, { id, name }: Pick<Piece, "id" | "name">): string {
  const parts = seam.split(" to ").map((part) => part.trim());
  const own = [plain(id), plain(name)];
  const exact = parts.filter((part) => !own.includes(plain(part)));
  const others =
    exact.length < parts.length ? exact : parts.filter((part) => !own.some((o) => plain(part).includes(o)));
  // A seam that names the piece nowhere, or nothing else, is called by its own name.
  return others.length === 0 || others.length === parts.length
    ? `seam ${seam}`
    : `to ${others.join(" and ")}`;
}

/** A fold's words, with its inner radius where it is bent to one: `fold, inner radius 3 mm`. */
export function sayFold({ label, bend }: Fold): string {
  if (!bend) return label;
  const round = /radius/i.test(label) ? label : `${label}, inner radius ${printNumber(bend.inner, 1)} mm`;
  return bend.inside === "grain" && !/grain/i.test(label) ? `${round}, grain side inside` : round;
}

/** An id as words: `near.3` → `near 3`. */
export const sayId = (id: string): string => id.replaceAll(/[.-]/g, " ");

/** `hole 5.2 mm (about 13/64 in)`: millimetres first, and alone where no fraction of an inch is near enough. */
export function sayHoleSize({ size }: Hole, units: Units): string {
  const inches = units === "in" ? printHoleInches(size) : undefined;
  return `hole ${printLengthShort(size, "mm")}${inches === undefined ? "" : ` (about ${inches})`}`;
}
