import { signedArea } from "../../geometry/area.ts";
import { boundsOf, boxesMeet } from "../../geometry/bounds.ts";
import { containsPoint } from "../../geometry/contains.ts";
import { distanceToPath } from "../../geometry/distance.ts";
import { pathLength, pointAt, tangentAt } from "../../geometry/length.ts";
import { circlePath, line, openPath, type Path, type Point } from "../../geometry/path.ts";
import type { Cutout, Hole } from "../../model/piece.ts";
import * as trig from "../../units/trigonometry.ts";

/** What a hole takes out of the leather: a circle, or an awl's slit. */
export function holeShape(hole: Hole): Path {
  if (hole.kind !== "awl") return circlePath(hole.at, hole.size / 2);
  const [dx, dy] = [(hole.size / 2) * trig.cos(hole.angle), (hole.size / 2) * trig.sin(hole.angle)];
  return openPath([hole.at[0] - dx, hole.at[1] - dy], [line([hole.at[0] + dx, hole.at[1] + dy])]);
}

type SlotEnd = { readonly at: Point; readonly size: number };

/** The middles of a slot's two round ends, and the diameter there: half circles drawn on its outline. */
export function slotEnds(cutout: Cutout): readonly SlotEnd[] {
  const ends: SlotEnd[] = [];
  let from = cutout.outline.start;
  for (const segment of cutout.outline.segments) {
    if (segment.kind === "arc") {
      const [cx, cy] = segment.centre;
      ends.push({ at: segment.centre, size: 2 * Math.hypot(from[0] - cx, from[1] - cy) });
    }
    from = segment.to;
  }
  return ends;
}

/** Boundaries are compared at points this far apart. */
const EVERY_MM = 1;
/** Shapes that share less than this along an edge only touch. */
const TOUCH_MM = 0.1;

/** Points just inside a closed path, all along it. */
function justInside(path: Path): readonly Point[] {
  const total = pathLength(path);
  const count = Math.max(8, Math.ceil(total / EVERY_MM));
  const left = signedArea(path) > 0 ? 1 : -1;
  return Array.from({ length: count }, (_, i): Point => {
    const s = ((i + 0.5) * total) / count;
    const [x, y] = pointAt(path, s);
    const way = tangentAt(path, s) + (left * Math.PI) / 2;
    return [x + TOUCH_MM * trig.cos(way), y + TOUCH_MM * trig.sin(way)];
  });
}

/** True when two closed shapes share more than a touching edge; judged at every millimetre along both. */
export const shapesOverlap = (a: Path, b: Path): boolean =>
  boxesMeet(boundsOf(a), boundsOf(b)) &&
  (justInside(a).some((p) => containsPoint(b, p)) || justInside(b).some((p) => containsPoint(a, p)));

/** How far inside a closed shape a point lies; negative outside. */
export const depthInside = (shape: Path, point: Point): number =>
  distanceToPath(point, shape) * (containsPoint(shape, point) ? 1 : -1);
