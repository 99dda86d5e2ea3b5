// Two pieces on one board: as near as the spacing lets them, on the least board.
import { anticlockwise, signedArea } from "../geometry/area.ts";
import { boundsOf, unionBox } from "../geometry/bounds.ts";
import { containsPoint } from "../geometry/contains.ts";
import { distanceBetween } from "../geometry/distance.ts";
import { flatten } from "../geometry/flatten.ts";
import { offsetPath } from "../geometry/offset.ts";
import type { Box, Path, Point } from "../geometry/path.ts";
import { type Placement, placed } from "../geometry/transform.ts";
import { roundTo } from "../units/index.ts";
import { type Ring, ringOf, slideContact, type Way } from "./slide.ts";

/** The second piece: the same as the first, or the other side of a pair. */
export type Second = "same" | "mirrored";

export type Nest = {
  /** How the second lies; the first lies as it is. */
  readonly second: Placement;
  /** The box round both outlines, without the board's margin. */
  readonly box: Box;
  /** Area of the board with its margin, mm². */
  readonly area: number;
  /** From cutting edge to cutting edge, mm; measured on the outlines themselves. */
  readonly gap: number;
};

/** Chords for the search; the result is measured on the curves. */
const CHORD_MM = 0.01;
/** Offsets tried across the way of sliding, then finer about the best ones. */
const OFFSETS = 160;
const FINER = 12;
const ROUNDS = 3;
const KEPT = 3;
/** Areas are compared to this many decimals of a mm², so that rounding decides nothing. */
const AREA_DECIMALS = 3;
/** A place is given to 0.001 mm, and the spacing may come out this much too small by it, mm. */
const PLACE_DECIMALS = 3;
const KEPT_MM = 0.001;

const WAYS: readonly Way[] = [
  { axis: 0, sign: 1 },
  { axis: 0, sign: -1 },
  { axis: 1, sign: 1 },
  { axis: 1, sign: -1 },
];

type Search = {
  readonly first: Path;
  /** The first's outline grown by the spacing. */
  readonly grown: Ring;
  readonly path: Path;
  readonly ring: Ring;
  readonly margin: number;
  readonly angle: number;
  readonly mirrored: boolean;
};
type Found = {
  readonly search: Search;
  readonly way: Way;
  readonly across: number;
  readonly at: Point;
  readonly area: number;
};

const shifted = (box: Box, [x, y]: Point): Box => ({
  minX: box.minX + x,
  minY: box.minY + y,
  maxX: box.maxX + x,
  maxY: box.maxY + y,
});

/** Area of the board: the box with a margin on all sides. */
const boardArea = ({ minX, minY, maxX, maxY }: Box, margin: number): number =>
  (maxX - minX + 2 * margin) * (maxY - minY + 2 * margin);

const boxAt = (search: Search, at: Point): Box =>
  unionBox([boundsOf(search.first), shifted(boundsOf(search.path), at)]);

/** The second slid against the first, at an offset across the way; undefined where it slides past. */
function slid(search: Search, way: Way, across: number): Found | undefined {
  const along = slideContact(search.grown, search.ring, way, across);
  if (along === undefined) return undefined;
  const at: Point = way.axis === 0 ? [along, across] : [across, along];
  return {
    search,
    way,
    across,
    at,
    area: roundTo(boardArea(boxAt(search, at), search.margin), AREA_DECIMALS),
  };
}

const low = (box: Box, axis: 0 | 1): number => (axis === 0 ? box.minX : box.minY);
const high = (box: Box, axis: 0 | 1): number => (axis === 0 ? box.maxX : box.maxY);

/** Offsets across the way: an even row over all at which the two can meet, and those at which sides line up. */
function offsetsFor({ first, path }: Search, { axis }: Way, spacing: number): readonly number[] {
  const cross = axis === 0 ? 1 : 0;
  const [a, b] = [boundsOf(first), boundsOf(path)];
  const [a0, a1, b0, b1] = [low(a, cross), high(a, cross), low(b, cross), high(b, cross)];
  const [from, to] = [a0 - b1 - spacing, a1 - b0 + spacing];
  const row = Array.from({ length: OFFSETS + 1 }, (_, i) => from + ((to - from) * i) / OFFSETS);
  return [a0 - b0, a1 - b1, (a0 + a1 - b0 - b1) / 2, ...row];
}

/** The smallest first; of equals the one tried first. */
const bySize = (found: readonly Found[]): readonly Found[] => [...found].sort((a, b) => a.area - b.area);

function best(search: Search, spacing: number): readonly Found[] {
  return WAYS.flatMap((way) => {
    const offsets = offsetsFor(search, way, spacing);
    let step = Math.abs(offsets.at(-1)! - offsets.at(-2)!);
    let found = bySize(offsets.flatMap((across) => slid(search, way, across) ?? [])).slice(0, KEPT);
    for (let round = 0; round < ROUNDS; round++) {
      const near = found.flatMap(({ across }) =>
        Array.from({ length: 2 * FINER + 1 }, (_, i) => across + (step * (i - FINER)) / FINER),
      );
      found = bySize([...found, ...near.flatMap((across) => slid(search, way, across) ?? [])]).slice(0, KEPT);
      step /= FINER;
    }
    return found.slice(0, 1);
  });
}

const apartFrom = (first: Path, second: Path): number =>
  containsPoint(first, second.start) || containsPoint(second, first.start)
    ? 0
    : distanceBetween(first, second);

const rounded = (n: number): number => roundTo(n, PLACE_DECIMALS);

/** Moved further along its way until the outlines themselves keep the spacing. */
function settled({ search, way, at }: Found, spacing: number): Nest {
  const { first, angle, mirrored, margin } = search;
  const to = [...at];
  for (let i = 0; i < 100; i++) {
    const place: Point = [rounded(to[0]!), rounded(to[1]!)];
    const second: Placement = { at: place, angle, ...(mirrored ? { mirrored: true } : {}) };
    const other = placed(first, second);
    const gap = apartFrom(first, other);
    if (gap >= spacing - KEPT_MM) {
      const box = unionBox([boundsOf(first), boundsOf(other)]);
      return { second, box, area: boardArea(box, margin), gap };
    }
    to[way.axis]! += way.sign * (spacing - gap);
  }
  throw new Error("nestPair: the pieces could not be moved apart");
}

/** The outline with the spacing round it; hollows that the spacing closes are filled. */
function grownBy(outline: Path, spacing: number): Path {
  const rings = offsetPath(anticlockwise(outline), -spacing);
  return rings.reduce((a, b) => (Math.abs(signedArea(b)) > Math.abs(signedArea(a)) ? b : a));
}

export type Nesting = {
  /** Least distance from edge to edge, mm: the clear spacing and the steel that stands in the waste. */
  readonly spacing: number;
  /** Board beyond the outermost edges, mm. */
  readonly margin: number;
  readonly second: Second;
};

/**
 * Two copies of an outline on one board, `spacing` mm or more from edge to edge: the second as it is or turned
 * half a turn, turned over first for the other side of a pair; slid against the first from all four sides at
 * many offsets. The board of least area found, to about 0.02 mm of its sides. The outline lies as it was drawn:
 * the board's sides are those of its frame. Throws a RangeError for an open outline or a length below 0.
 */
export function nestPair(outline: Path, { spacing, margin, second }: Nesting): Nest {
  if (!outline.closed || !(spacing >= 0) || !(margin >= 0))
    throw new RangeError("nestPair: needs a closed outline, a spacing and a margin");
  const mirrored = second === "mirrored";
  const grown = ringOf(flatten(grownBy(outline, spacing), CHORD_MM));
  const searches = [0, Math.PI].map((angle): Search => {
    const path = placed(outline, { at: [0, 0], angle, mirrored });
    return { first: outline, grown, path, ring: ringOf(flatten(path, CHORD_MM)), margin, angle, mirrored };
  });
  const found = bySize(searches.flatMap((search) => best(search, spacing)));
  return settled(found[0]!, spacing);
}
