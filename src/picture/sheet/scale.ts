import { arc, cubic, line, type Path, type Point, type Segment, withStarts } from "../../geometry/path.ts";
import { placed, placedPoint } from "../../geometry/transform.ts";
import { leftOf, minus, plus, scaled } from "../../geometry/vector.ts";
import { arcPieces, turnCosine } from "../arcs.ts";
import type { Item, Stroke, Words } from "../picture.ts";

// A printer that strays is met by drawing larger or smaller, each axis by itself. A circle stretched along
// one axis is no circle any more, so arcs become cubics first.

export type Scale = { readonly x: number; readonly y: number };

/** A cubic stands for a sixteenth of a turn at most: it strays from its arc by less than r × 10⁻⁷. */
const SIXTEENTH_TURN_COSINE = 0.92;

/** Cubics for an arc; handles of 4/3 tan(θ/4), the tangent by half-angle formulas. */
function cubicsOf(from: Point, segment: Extract<Segment, { kind: "arc" }>): readonly Segment[] {
  return arcPieces(from, segment, (piece) => turnCosine(piece) >= SIXTEENTH_TURN_COSINE).map((piece) => {
    const half = Math.sqrt((1 + turnCosine(piece)) / 2);
    const reach = ((segment.ccw ? 4 : -4) / 3) * Math.sqrt((1 - half) / (1 + half));
    const c1 = plus(piece.from, scaled(leftOf(piece.out), reach * piece.radii[0]));
    const c2 = minus(piece.to, scaled(leftOf(piece.back), reach * piece.radii[1]));
    return cubic(c1, c2, piece.to);
  });
}

const scaledPoint = ([x, y]: Point, by: Scale): Point => [x * by.x, y * by.y];

function scaledSegment(from: Point, segment: Segment, by: Scale): readonly Segment[] {
  if (segment.kind === "line") return [line(scaledPoint(segment.to, by))];
  if (segment.kind === "cubic") {
    return [cubic(scaledPoint(segment.c1, by), scaledPoint(segment.c2, by), scaledPoint(segment.to, by))];
  }
  if (by.x === by.y) return [arc(scaledPoint(segment.to, by), scaledPoint(segment.centre, by), segment.ccw)];
  return cubicsOf(from, segment).flatMap((c) => scaledSegment(from, c, by));
}

/** The path with x and y stretched. */
export function scaledPath(path: Path, by: Scale): Path {
  const segments = withStarts(path).flatMap(({ from, segment }) => scaledSegment(from, segment, by));
  return { start: scaledPoint(path.start, by), segments, closed: path.closed };
}

function scaledItem(item: Stroke | Words, by: Scale): Stroke | Words {
  if (item.kind === "stroke") return { ...item, path: scaledPath(item.path, by) };
  // Words keep their size, or shrink a little with their place, so that they still fit where they stood.
  return { ...item, at: scaledPoint(item.at, by), size: item.size * Math.min(1, by.x, by.y) };
}

/** Items laid by their groups' placements and then stretched; clips of turned groups stay upright boxes. */
export function scaledItems(items: readonly Item[], by: Scale): readonly Item[] {
  if (by.x === 1 && by.y === 1) return items;
  return items.map((item): Item => {
    if (item.kind !== "group") return scaledItem(item, by);
    const { placement, clip } = item;
    const laid = item.items.map((i) =>
      laidItem(
        i,
        (p) => placedPoint(p, placement),
        (p) => placed(p, placement),
        placement.angle,
      ),
    );
    const corner = clip && [
      placedPoint([clip.minX, clip.minY], placement),
      placedPoint([clip.maxX, clip.maxY], placement),
    ];
    const box = corner && {
      minX: Math.min(corner[0]![0], corner[1]![0]) * by.x,
      maxX: Math.max(corner[0]![0], corner[1]![0]) * by.x,
      minY: Math.min(corner[0]![1], corner[1]![1]) * by.y,
      maxY: Math.max(corner[0]![1], corner[1]![1]) * by.y,
    };
    return {
      kind: "group",
      placement: { at: [0, 0], angle: 0 },
      items: scaledItems(laid, by),
      ...(item.id === undefined ? {} : { id: item.id }),
      ...(box ? { clip: box } : {}),
    };
  });
}

/** An item moved out of its group. */
function laidItem(item: Item, point: (p: Point) => Point, path: (p: Path) => Path, angle: number): Item {
  if (item.kind === "stroke") return { ...item, path: path(item.path) };
  if (item.kind === "words") return { ...item, at: point(item.at), angle: item.angle + angle };
  return {
    ...item,
    placement: { ...item.placement, at: point(item.placement.at), angle: item.placement.angle + angle },
  };
}
