// A notch in the edge as a short piece of rule that stands on the outline's.

import { containsPoint } from "../geometry/contains.ts";
import { curvesOf } from "../geometry/curve.ts";
import { distanceToPath } from "../geometry/distance.ts";
import type { Path } from "../geometry/path.ts";
import { apart, between, minus } from "../geometry/vector.ts";
import type { Mark } from "../model/piece.ts";
import * as trig from "../units/trigonometry.ts";
import type { DieFeature } from "./feature.ts";
import { ofLine } from "./longSide.ts";

/** A notch begins at the edge when it does so within this, mm: less than a rule's thickness. */
const AT_EDGE_MM = 0.25;

/**
 * The notch as a feature in the die, or undefined where it can be none: a piece of rule is straight, begins at
 * the outline's and goes into the leather.
 */
export function notchInDie({ id, kind, path }: Mark, outline: Path): DieFeature | undefined {
  const [line, ...more] = curvesOf(path);
  if (kind !== "notch" || line?.kind !== "line" || more.length > 0) return undefined;
  const { p0, p1 } = line;
  const at = between(p0, p1, 0.5);
  const begins = Math.min(...[p0, p1].map((end) => distanceToPath(end, outline))) <= AT_EDGE_MM;
  if (!begins || !containsPoint(outline, at)) return undefined;
  const [x, y] = minus(p1, p0);
  return {
    id,
    kind,
    made: "in the die",
    why: "a short piece of rule that stands on the outline's",
    at,
    size: { length: apart(p0, p1), width: 0 },
    angle: ofLine(trig.atan2(y, x)),
    paths: [path],
    holes: [],
  };
}
