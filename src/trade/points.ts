import { arc, line, type Point, type Segment } from "../geometry/path.ts";
import { named, over, type Quantity, square, sum, times } from "../model/quantity.ts";
import * as trig from "../units/trigonometry.ts";

export const POINTS = ["english", "round", "spear", "clipped"] as const;
export type PointKind = (typeof POINTS)[number];

/** Radius of the two arcs of an English point, mm: R = (ℓ² + w²/4) / w, tangent to the strap's edges. */
export const englishRadius = (label: string, width: Quantity, length: Quantity): Quantity =>
  named(
    `${label} point radius`,
    over({ ...sum(square(length), over(square(width), 4)), kind: "length" }, width),
    { source: "two arcs tangent to the edges: geometry", kind: "length" },
  );

/** Length that a kind of point takes from the strap's end, mm. Default of English and spear: 1.1 widths. */
export function pointLength(kind: PointKind, width: Quantity): Quantity {
  const share = { english: 1.1, spear: 1.1, round: 0.5, clipped: 0.25 }[kind];
  return times(share, width);
}

/** A drawn point: what leads from the lower edge round the tip to the upper edge, and its named corners. */
export type DrawnPoint = {
  readonly segments: readonly Segment[];
  readonly corners: readonly { readonly name: string; readonly at: Point }[];
};

/** Spear points have their tip rounded to this share of the width. */
const SPEAR_TIP_SHARE = 0.15;

/**
 * The end of a strap that points to +x with its tip at (tip, 0): from (tip − length, −w/2) to
 * (tip − length, +w/2), anticlockwise.
 */
export function drawPoint(kind: PointKind, tip: number, width: number, length: number): DrawnPoint {
  const h = width / 2;
  const x = tip - length;
  if (kind === "round") return { segments: [arc([x, h], [x, 0], true)], corners: [] };
  if (kind === "clipped") return drawClipped(tip, h, length);
  if (kind === "spear") return drawSpear(tip, x, h, SPEAR_TIP_SHARE * width);
  const r = (length ** 2 + h ** 2) / width;
  return {
    segments: [arc([tip, 0], [x, -h + r], true), arc([x, h], [x, h - r], true)],
    corners: [{ name: "tip", at: [tip, 0] }],
  };
}

function drawClipped(tip: number, h: number, cut: number): DrawnPoint {
  const corners: readonly Point[] = [
    [tip - cut, -h],
    [tip, -h + cut],
    [tip, h - cut],
    [tip - cut, h],
  ];
  return {
    segments: corners.slice(1).map(line),
    corners: corners.map((at, i) => ({ name: `clip ${i + 1}`, at })),
  };
}

/** Straight sides tangent to a small round tip: the side from (x, −h) touches the tip's circle. */
function drawSpear(tip: number, x: number, h: number, r: number): DrawnPoint {
  const centre: Point = [tip - r, 0];
  const dx = centre[0] - x;
  const reach = Math.hypot(dx, h);
  const side = trig.atan2(h, dx) - trig.asin(r / reach);
  const touch: Point = [centre[0] + r * trig.sin(side), -r * trig.cos(side)];
  return {
    segments: [line(touch), arc([touch[0], -touch[1]], centre, true), line([x, h])],
    corners: [
      { name: "spear shoulder 1", at: [x, -h] },
      { name: "spear shoulder 2", at: [x, h] },
    ],
  };
}
