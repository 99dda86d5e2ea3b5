import type { Point } from "../geometry/path.ts";
import type { Placement } from "../geometry/transform.ts";
import type { Placed } from "../model/sheet.ts";
import type { Bin, Item, Laid } from "./arrange.ts";
import { boxOnPlate } from "./draw.ts";
import { type Feature, WHOLE_PIECE } from "./features.ts";
import { chooseJoints, crossingCost, type JointTask, type Obstacle } from "./joints.ts";
import { freeRects, placeFor, type Rect } from "./pack.ts";
import type { Part, Parts } from "./part.ts";
import type { Tile } from "./tile.ts";

// A plate that has been filled is settled: small pieces move off the joints, the joints are chosen, and
// the plate is cut back to what lies on it.

/** A plate before it is named. */
export type Settled = {
  readonly tile: Tile;
  readonly width: number;
  readonly height: number;
  readonly placed: readonly Placed[];
  readonly jointsX: readonly number[];
  readonly jointsY: readonly number[];
  /** What the joints cross; 0 when nothing. */
  readonly crossed: number;
};

const QUARTER = Math.PI / 2;

/** How a part lies so that its room fills the rectangle, on a plate of that height. */
function placementFor({ room }: Part, laid: Laid, height: number): Placement {
  const low: Point = [laid.x, height - laid.y - laid.height];
  return laid.turned
    ? { at: [low[0] + room.maxY, low[1] - room.minX], angle: QUARTER }
    : { at: [low[0] - room.minX, low[1] - room.minY], angle: 0 };
}

function placedOf(bin: Bin, parts: Parts, height: number): readonly Placed[] {
  return bin.laid.map((laid) => {
    const part = parts.get(laid.id)!;
    const placement = placementFor(part, laid, height);
    return { piece: laid.id, placement, ...(part.kept ? { kept: part.kept } : {}) };
  });
}

const extentOf = (laid: readonly Laid[]): { readonly width: number; readonly height: number } => ({
  width: Math.max(...laid.map((l) => l.x + l.width)),
  height: Math.max(...laid.map((l) => l.y + l.height)),
});

/** A feature as a stretch of the plate's x or y. */
function along(axis: "x" | "y", { box, weight }: Feature, placed: Placed): Obstacle {
  const on = boxOnPlate(placed, box);
  return axis === "x" ? { from: on.minX, to: on.maxX, weight } : { from: on.minY, to: on.maxY, weight };
}

/** What joints across an axis should miss: features, and pieces that fit on one sheet that way. */
function obstaclesOf(
  axis: "x" | "y",
  placed: readonly Placed[],
  parts: Parts,
  tile: number,
): readonly Obstacle[] {
  return placed.flatMap((p) => {
    const { bounds, features: own } = parts.get(p.piece)!;
    const whole = along(axis, { box: bounds, weight: WHOLE_PIECE }, p);
    const features = own.map((f) => along(axis, f, p));
    return whole.to - whole.from <= tile ? [...features, whole] : features;
  });
}

/** Chooses the joints of a filled plate and cuts it back to what lies on it. */
function jointed(bin: Bin, parts: Parts, overlap: number, even = false): Settled {
  const { tile } = bin;
  const { width, height } = extentOf(bin.laid);
  const placed = placedOf(bin, parts, height);
  // A sheet's left and upper edges lie on its neighbours.
  const across: JointTask = {
    length: width,
    tile: tile.width,
    overlap,
    edge: "low",
    obstacles: obstaclesOf("x", placed, parts, tile.width),
  };
  const up: JointTask = {
    length: height,
    tile: tile.height,
    overlap,
    edge: "high",
    obstacles: obstaclesOf("y", placed, parts, tile.height),
  };
  const choose = (task: JointTask): readonly number[] =>
    chooseJoints(even ? { ...task, obstacles: [] } : task);
  const [jointsX, jointsY] = [choose(across), choose(up)];
  const cost = (joints: readonly number[], task: JointTask): number =>
    joints.reduce((sum, at) => sum + crossingCost(at, task), 0);
  return {
    tile,
    width,
    height,
    placed,
    jointsX,
    jointsY,
    crossed: cost(jointsX, across) + cost(jointsY, up),
  };
}

/** Stretches between the joints' overlaps, from 0 to the end of the last sheet. */
function clearStretches(
  joints: readonly number[],
  tile: number,
  overlap: number,
): readonly (readonly [number, number])[] {
  const starts = [0, ...joints.map((j) => j + overlap / 2)];
  return starts.map((from, i) => {
    const next = joints[i];
    const window = i === 0 ? 0 : joints[i - 1]! - overlap / 2;
    return [from, next === undefined ? window + tile : next - overlap / 2];
  });
}

/** Moves every piece that fits on one sheet off the joints; undefined when they don't all find room. */
function withWholePieces(
  bin: Bin,
  parts: Parts,
  items: ReadonlyMap<string, Item>,
  overlap: number,
): Bin | undefined {
  const { tile } = bin;
  const fits = (l: Laid): boolean => l.width <= tile.width && l.height <= tile.height;
  const long = bin.laid.filter((l) => !fits(l));
  const small = bin.laid
    .filter(fits)
    .sort((a, b) => b.width * b.height - a.width * a.height || (a.id < b.id ? -1 : 1));
  if (long.length === 0 || small.length === 0) return undefined;
  const first = jointed({ ...bin, laid: long }, parts, overlap);
  // The plate's y runs up, the packer's down; a shorter plate keeps its upper edge.
  const down = first.jointsY.map((j) => first.height - j).reverse();
  const columns = clearStretches(first.jointsX, tile.width, overlap);
  const rows = clearStretches(down, tile.height, overlap);
  const cells = rows.flatMap(([top, foot]) =>
    columns.map(([left, right]): Rect => ({ x: left, y: top, width: right - left, height: foot - top })),
  );
  let laid: readonly Laid[] = long;
  for (const s of small) {
    const item = items.get(s.id)!;
    const spot = placeFor(item, freeRects(cells, laid), "up");
    if (!spot) return undefined;
    laid = [
      ...laid,
      { id: s.id, x: spot.x, y: spot.y, width: spot.width, height: spot.height, turned: spot.turned },
    ];
  }
  return { ...bin, laid, free: [] };
}

/**
 * A filled plate settled in several ways: as it is, with small pieces moved off the joints where there is
 * room, and with even joints, which may leave a place empty that others don't.
 */
export function settledWays(
  bin: Bin,
  parts: Parts,
  items: ReadonlyMap<string, Item>,
  overlap: number,
): readonly Settled[] {
  const moved = withWholePieces(bin, parts, items, overlap);
  const plain = jointed(bin, parts, overlap);
  if (plain.jointsX.length === 0 || plain.jointsY.length === 0) {
    return [...(moved ? [jointed(moved, parts, overlap)] : []), plain];
  }
  return [...(moved ? [jointed(moved, parts, overlap)] : []), plain, jointed(bin, parts, overlap, true)];
}
