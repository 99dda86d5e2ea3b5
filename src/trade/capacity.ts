import { signedArea } from "../geometry/area.ts";
import { boundsOf, cubicTurns } from "../geometry/bounds.ts";
import { crossings } from "../geometry/crossing.ts";
import { arcParameter, type Curve, curveAt, curvesOf, velocityAt } from "../geometry/curve.ts";
import { nearestOnPath } from "../geometry/distance.ts";
import { subPath } from "../geometry/length.ts";
import { closedPath, endPoint, line, openPath, type Path, type Point } from "../geometry/path.ts";
import type { Capacity } from "../model/article.ts";
import { minus, named, type Quantity, sum, times } from "../model/quantity.ts";
import * as trig from "../units/trigonometry.ts";
import { THINGS } from "./facts/things.ts";

// What goes into a bag: its room is an upright outline, seen from the front, with flat front and back that
// may stand nearer to each other at the top than at the base, or the other way.

const SOURCE = "integral over the inside section: geometry";

export type Inside = {
  /** The inside seen from the front, mm: from the top left round the base to the top right; y up, its halves alike. */
  readonly outline: Path;
  /** The top edge from the outline's end back to its start; straight when left out. */
  readonly top?: Path;
  /** Between front and back, up to the height `taperFrom` and at the top ends; in between it changes evenly. */
  readonly depth: number;
  readonly depthTop: number;
  /** The outline's lowest place unless said. */
  readonly taperFrom?: number;
};

/** A thing slides past leather that touches it: it is looked at this much narrower, mm. */
const TOUCH_MM = 1e-6;

const topOf = (inside: Inside): Path =>
  inside.top ?? openPath(endPoint(inside.outline), [line(inside.outline.start)]);

/** Places where a curve turns from rising to falling, or back. */
function turnsOf(curve: Curve): readonly Point[] {
  if (curve.kind === "line") return [];
  const at =
    curve.kind === "cubic"
      ? cubicTurns(curve, 1)
      : [Math.PI / 2, -Math.PI / 2].map((a) => arcParameter(curve, a)).filter((t) => t > 0 && t < 1);
  return at.map((t) => curveAt(curve, t));
}

/** Every height that may be a path's highest or lowest between two places; nothing where it doesn't reach both. */
function heightsBetween(path: Path, x0: number, x1: number): readonly number[] {
  const box = boundsOf(path);
  if (x0 < box.minX || x1 > box.maxX) return [];
  const upright = (x: number): Path => openPath([x, box.minY - 1], [line([x, box.maxY + 1])]);
  const curves = curvesOf(path);
  const within = [...curves.flatMap((c) => [c.p0, c.p1]), ...curves.flatMap(turnsOf)].filter(
    ([x]) => x >= x0 && x <= x1,
  );
  return [...within, ...crossings(path, upright(x0)), ...crossings(path, upright(x1))].map(([, y]) => y);
}

/** The lowest height at which front and back stand `thick` apart, from there on up to the top. */
function deepEnoughFrom(inside: Inside, thick: number): number {
  const { minY, maxY } = boundsOf(inside.outline);
  const { depth, depthTop, taperFrom = minY } = inside;
  const least = thick - TOUCH_MM;
  if (depthTop < least) return Infinity;
  return depth >= least ? minY : taperFrom + ((least - depth) / (depthTop - depth)) * (maxY - taperFrom);
}

/**
 * Height of the room that is left for a thing `wide` and `thick`, mm: let down upright through the open top
 * in the middle until it touches the round corners, the base or the narrowing sides, to the lowest place of
 * the top edge over it. Under 0 where it doesn't go past the top. The leather is taken as stiff.
 */
export function roomOver(inside: Inside, wide: number, thick: number): number {
  const { minX, maxX } = boundsOf(inside.outline);
  const [middle, half] = [(minX + maxX) / 2, wide / 2 - TOUCH_MM];
  const [x0, x1] = [middle - half, middle + half];
  const rests = heightsBetween(inside.outline, x0, x1);
  const tops = heightsBetween(topOf(inside), x0, x1);
  if (rests.length === 0 || tops.length === 0) return -Infinity;
  return Math.min(...tops) - Math.max(...rests, deepEnoughFrom(inside, thick));
}

const ORDERS = [
  [0, 1, 2],
  [0, 2, 1],
  [1, 0, 2],
  [1, 2, 0],
  [2, 0, 1],
  [2, 1, 0],
] as const;

/** True when a box of these sizes goes in whole, some way up, square to the bag, and stays under the top edge. */
/** How much higher the bag would have to be for a box of these sizes, some way up, mm; Infinity where that doesn't help. */
export const lacksHeight = (sizes: readonly [number, number, number], inside: Inside): number =>
  Math.min(...ORDERS.map(([w, h, d]) => Math.max(0, sizes[h] - roomOver(inside, sizes[w], sizes[d]))));

export const goesIn = (sizes: readonly [number, number, number], inside: Inside): boolean =>
  ORDERS.some(([w, h, d]) => roomOver(inside, sizes[w], sizes[d]) >= sizes[h] - TOUCH_MM);

/** Gauss's five places and weights between 0 and 1: exact to the ninth power, and y² dx of a cubic has the eighth. */
const [NEAR, FAR] = [-1, 1].map((s) => Math.sqrt(5 + s * 2 * Math.sqrt(10 / 7)) / 6) as [number, number];
const GAUSS = [
  { t: 0.5, weight: 64 / 225 },
  ...[0.5 - NEAR, 0.5 + NEAR].map((t) => ({ t, weight: (322 + 13 * Math.sqrt(70)) / 1800 })),
  ...[0.5 - FAR, 0.5 + FAR].map((t) => ({ t, weight: (322 - 13 * Math.sqrt(70)) / 1800 })),
];

/** ∫ y² dx along a curve, y from `base`. */
function squaredRise(curve: Curve, base: number): number {
  if (curve.kind !== "arc")
    return GAUSS.reduce(
      (all, { t, weight }) => all + weight * (curveAt(curve, t)[1] - base) ** 2 * velocityAt(curve, t)[0],
      0,
    );
  const [r, c] = [curve.radius, curve.centre[1] - base];
  const whole = (a: number): number =>
    -c * c * trig.cos(a) + c * r * (a - trig.sin(2 * a) / 2) + r * r * (trig.cos(a) ** 3 / 3 - trig.cos(a));
  return -r * (whole(curve.angle0 + curve.sweep) - whole(curve.angle0));
}

/** Area inside, mm², and the height of its middle as a share of the whole height. Exact for lines, arcs and cubics. */
export function sectionOf(inside: Pick<Inside, "outline" | "top">): {
  readonly area: number;
  readonly middle: number;
} {
  const whole = closedPath(inside.outline.start, [
    ...inside.outline.segments,
    ...(inside.top?.segments ?? []),
  ]);
  const { minY, maxY } = boundsOf(inside.outline);
  const area = signedArea(whole);
  const moment = curvesOf(whole).reduce((all, curve) => all - squaredRise(curve, minY) / 2, 0);
  return { area: Math.abs(area), middle: moment / area / (maxY - minY) };
}

export type Room = Pick<Inside, "outline" | "top"> & {
  /** Height at which the gusset begins to taper, over the outline's lowest place; 0 unless said. */
  readonly taperFrom?: Quantity;
  /** What round folds beside the base take of the volume, mm³. */
  readonly taken?: Quantity;
  readonly width: Quantity;
  readonly height: Quantity;
  /** Inside depth at the base and at the top. */
  readonly depth: Quantity;
  readonly depthTop: Quantity;
  /** Every value that the outline is drawn from: width, height, corners, sag, top edge … */
  readonly shapedBy: readonly Quantity[];
  /** Name of the thing that must go in. */
  readonly wanted?: string;
};

const drawn = (name: string, value: number, kind: "area" | "ratio", from: readonly Quantity[]): Quantity => ({
  value,
  kind,
  name,
  source: SOURCE,
  parts: [
    "measured in the inside outline, drawn from ",
    ...from.flatMap((q, i) => (i === 0 ? [q] : [", ", q])),
  ],
  inputs: from,
});

/** The part of the outline that lies under a height where its sides are straight, closed level. */
function under(outline: Path, y: number): Path | undefined {
  const { minX, maxX } = boundsOf(outline);
  const level = openPath([minX - 1, y], [line([maxX + 1, y])]);
  const at = crossings(outline, level)
    .map((p) => nearestOnPath(p, outline).at)
    .sort((a, b) => a - b);
  if (at.length < 2) return undefined;
  const part = subPath(outline, at[0]!, at.at(-1)!);
  return closedPath(part.start, part.segments);
}

/** ∫ width (y − from) dy over what lies above `from`, ÷ (height over it × area): exact for lines, arcs and cubics. */
function taperShare(room: Room): number {
  const { outline, taperFrom } = room;
  const { minY, maxY } = boundsOf(outline);
  const { area, middle } = sectionOf(room);
  const height = maxY - minY;
  const from = Math.max(0, taperFrom?.value ?? 0);
  if (from >= height - TOUCH_MM) return 0;
  const low = from > TOUCH_MM ? under(outline, minY + from) : undefined;
  const lower = low ? sectionOf({ outline: low }) : undefined;
  // What lies below counts the other way round in the whole's moment: it is added back.
  const below = lower ? lower.area * (from - lower.middle * from) : 0;
  return (area * (middle * height - from) + below) / ((height - from) * area);
}

/** Volume of the bag with flat front and back, mm³: area of the section × depth, less what a taper takes. */
export function volumeOf(room: Room): Quantity {
  const { area } = sectionOf(room);
  const section = drawn("area of the inside section", area, "area", room.shapedBy);
  const name = "volume of the bag in mm³";
  const about = { source: SOURCE, kind: "number" } as const;
  const taken = room.taken ? [room.taken] : [];
  const even = room.depthTop.value === room.depth.value;
  const shapes = [...room.shapedBy, ...(room.taperFrom ? [room.taperFrom] : [])];
  const share = drawn("share of the section that the taper takes", taperShare(room), "ratio", shapes);
  const taper = times(minus(room.depthTop, room.depth), share);
  // As deep at the top as at the base, it doesn't matter where the taper begins.
  const felt = even ? { ...taper, inputs: taper.inputs.filter((q) => q !== share) } : taper;
  const depth = named("mean depth inside", sum(room.depth, felt), { source: SOURCE, kind: "length" });
  return named(name, minus(times(section, depth), ...taken), about);
}

/** How much goes in, and which of the common things. */
export function capacityOf(room: Room): Capacity {
  const { depth, depthTop, outline, top, wanted } = room;
  const inside: Inside = {
    outline,
    ...(top ? { top } : {}),
    depth: depth.value,
    depthTop: depthTop.value,
    ...(room.taperFrom ? { taperFrom: boundsOf(outline).minY + room.taperFrom.value } : {}),
  };
  return {
    volume: volumeOf(room),
    inside: [room.width.value, room.height.value, depth.value],
    things: THINGS.map((t) => {
      const lacks = lacksHeight(t.sizes, inside);
      return {
        ...t,
        goes: goesIn(t.sizes, inside),
        ...(Number.isFinite(lacks) ? { lacksHeight: lacks } : {}),
      };
    }),
    ...(wanted === undefined ? {} : { wanted }),
  };
}
