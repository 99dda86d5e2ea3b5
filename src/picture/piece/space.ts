import type { Box, Point } from "../../geometry/path.ts";
import { clipped, touches } from "../../layout/clip.ts";

// What is taken on a drawing, so that words find a free place: lines in a grid, and boxes.

/** A straight bit of a drawn line. */
export type Chord = readonly [from: Point, to: Point];

/** Drawn lines and boxes; taking more gives a new space. */
export type Space = {
  readonly grid: ReadonlyMap<number, readonly Chord[]>;
  readonly chords: readonly Chord[];
  readonly boxes: readonly Box[];
};

/** Side of a grid field, mm: about the size of a short word. */
const FIELD_MM = 12;

const field = (v: number): number => Math.floor(v / FIELD_MM);
/** One number for a field; drawings are far smaller than 4000 fields either way. */
const keyOf = (i: number, k: number): number => (i + 4096) * 8192 + k + 4096;

export const boxAround = ([a, b]: Chord): Box => ({
  minX: Math.min(a[0], b[0]),
  minY: Math.min(a[1], b[1]),
  maxX: Math.max(a[0], b[0]),
  maxY: Math.max(a[1], b[1]),
});

export const grownBy = (box: Box, by: number): Box => ({
  minX: box.minX - by,
  minY: box.minY - by,
  maxX: box.maxX + by,
  maxY: box.maxY + by,
});

export const overlap = (a: Box, b: Box): boolean =>
  a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;

export const within = (outer: Box, inner: Box): boolean =>
  outer.minX <= inner.minX &&
  outer.minY <= inner.minY &&
  outer.maxX >= inner.maxX &&
  outer.maxY >= inner.maxY;

/** A chord is entered only in fields that it passes, or a long slanted one would fill the grid. */
function enter(grid: Map<number, Chord[]>, chord: Chord): void {
  const box = boxAround(chord);
  for (let i = field(box.minX); i <= field(box.maxX); i++) {
    for (let k = field(box.minY); k <= field(box.maxY); k++) {
      const square = {
        minX: i * FIELD_MM,
        minY: k * FIELD_MM,
        maxX: (i + 1) * FIELD_MM,
        maxY: (k + 1) * FIELD_MM,
      };
      if (!touches(grownBy(square, EDGE_MM), ...chord)) continue;
      const known = grid.get(keyOf(i, k));
      if (known) known.push(chord);
      else grid.set(keyOf(i, k), [chord]);
    }
  }
}
/** A chord that runs along a field's edge belongs to the fields on both sides. */
const EDGE_MM = 1e-6;

/** A space with these lines drawn in it. */
export function spaceOf(chords: readonly Chord[], boxes: readonly Box[] = []): Space {
  const grid = new Map<number, Chord[]>();
  for (const chord of chords) enter(grid, chord);
  return { grid, chords: [], boxes };
}

/** The space with more taken. */
export const taken = (
  space: Space,
  more: { readonly boxes?: readonly Box[]; readonly chords?: readonly Chord[] },
): Space => ({
  grid: space.grid,
  chords: more.chords ? [...space.chords, ...more.chords] : space.chords,
  boxes: more.boxes ? [...space.boxes, ...more.boxes] : space.boxes,
});

/** True when a line comes into the box. */
const comesInto = (box: Box, [a, b]: Chord): boolean => touches(box, a, b);

/** The drawn lines that come into the box, each once. */
export function chordsIn(space: Space, box: Box): readonly Chord[] {
  const found = new Set(space.chords.filter((c) => comesInto(box, c)));
  for (let i = field(box.minX); i <= field(box.maxX); i++) {
    for (let k = field(box.minY); k <= field(box.maxY); k++) {
      for (const c of space.grid.get(keyOf(i, k)) ?? []) if (comesInto(box, c)) found.add(c);
    }
  }
  return [...found];
}

/** Bits of line shorter than this are not drawn, mm. */
const SHORT_MM = 0.01;

/** What of a chord lies outside a box: up to two bits. */
export function outsideBox(chord: Chord, box: Box): readonly Chord[] {
  const inner = clipped(chord, box);
  if (!inner) return [chord];
  const long = ([a, b]: Chord): boolean => Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]) > SHORT_MM;
  return (
    [
      [chord[0], inner[0]],
      [inner[1], chord[1]],
    ] as const
  ).filter(long);
}

/** True when nothing drawn comes into the box. */
export function isFree(space: Space, box: Box): boolean {
  for (const b of space.boxes) if (overlap(b, box)) return false;
  for (const c of space.chords) if (comesInto(box, c)) return false;
  for (let i = field(box.minX); i <= field(box.maxX); i++) {
    for (let k = field(box.minY); k <= field(box.maxY); k++) {
      const chords = space.grid.get(keyOf(i, k));
      if (!chords) continue;
      for (const c of chords) if (comesInto(box, c)) return false;
    }
  }
  return true;
}

/** True when a line would cross no words. */
export const crossesNoBox = (space: Space, chord: Chord): boolean =>
  !space.boxes.some((b) => touches(b, ...chord));

/** True when a point lies inside closed edges: a ray to the right crosses them an odd number of times. */
export function insideEdges(edges: readonly Chord[], [x, y]: Point): boolean {
  let inside = false;
  for (const [a, b] of edges) {
    if (a[1] > y === b[1] > y) continue;
    if (a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]) > x) inside = !inside;
  }
  return inside;
}

/** Side of the fields in which "inside" is remembered, mm. */
const INSIDE_MM = 2;

/**
 * Asks whether the middle of a free box lies inside closed edges. No edge comes within half a line of words
 * (1.4 mm) and the gap round it of such a middle, so the middle of its field lies on the same side and the
 * answer holds for all of the field.
 */
export function insideOf(edges: readonly Chord[]): (box: Box) => boolean {
  const known = new Map<number, boolean>();
  return (box) => {
    const i = Math.floor((box.minX + box.maxX) / 2 / INSIDE_MM);
    const k = Math.floor((box.minY + box.maxY) / 2 / INSIDE_MM);
    const key = keyOf(i, k);
    const before = known.get(key);
    if (before !== undefined) return before;
    const now = insideEdges(edges, [(i + 0.5) * INSIDE_MM, (k + 0.5) * INSIDE_MM]);
    known.set(key, now);
    return now;
  };
}
