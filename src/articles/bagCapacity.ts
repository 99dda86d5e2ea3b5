import { boundsOf } from "../geometry/bounds.ts";
import { crossings } from "../geometry/crossing.ts";
import { nearestOnPath } from "../geometry/distance.ts";
import { subPath } from "../geometry/length.ts";
import { endPoint, line, openPath, type Path, type Point } from "../geometry/path.ts";
import type { Capacity } from "../model/article.ts";
import { minus, named, type Quantity, square, times } from "../model/quantity.ts";
import * as body from "../pieces/purseBody.ts";
import { capacityOf } from "../trade/capacity.ts";
import { panelOffset } from "../trade/panel.ts";
import { topEdge } from "../trade/topEdge.ts";
import { bagSizes, bodySection, gussetSection, isWrapped } from "./bagBodySections.ts";
import { measures } from "./bagSections.ts";
import type { Resolved } from "./definition.ts";

// How much goes into a bag: the room between its front and back, inside the gusset.

/** The inside seen from the front, from the top left round the base to the top right, and its dipped top edge. */
function insideOutline(done: Resolved): { readonly outline: Path; readonly top?: Path } {
  const d = done.of(bodySection);
  const { panelWidth, insideWidth, insideHeight } = bagSizes(done);
  const wrapped = isWrapped(done);
  // Heights of a wrapped body count from its base's inner face, of a panel from its own edge.
  const high = wrapped ? insideHeight.value : d.height.value;
  const dip = d.top === "dipped" ? d.dip.value : 0;
  const half = insideWidth.value / 2 + (d.topWidth.value - d.width.value) / 2;
  const edge = topEdge([d.topWidth.value / 2, high], [-d.topWidth.value / 2, high], dip);
  const whole = openPath([d.topWidth.value / 2, high], edge);
  const ends = [half, -half].map(
    (x) => crossings(whole, openPath([x, high - dip - 1], [line([x, high + 1])]))[0] ?? ([x, high] as const),
  );
  const [right, left] = ends as [Point, Point];
  const wall = (panelWidth.value - insideWidth.value) / 2;
  const outline = wrapped
    ? openPath([-half, left[1]], [line([-half, 0]), line([half, 0]), line([half, right[1]])])
    : panelOffset(body.panelShape(d), wall, left[1]);
  if (dip === 0) return { outline };
  const [a, b] = [right, left].map((p) => nearestOnPath(p, whole).at) as [number, number];
  return { outline, top: openPath(endPoint(outline), subPath(whole, a, b).segments) };
}

/** The folds beside a wrapped body's base are round: they take two corners off, (1 − π/4) ρ² each. */
function roundFolds(done: Resolved): Quantity {
  const { baseFold } = done.of(bodySection);
  const { insideWidth } = bagSizes(done);
  return named(
    "taken by the round folds beside the base, in mm³",
    { ...times(2 * (1 - Math.PI / 4), square(baseFold), insideWidth), kind: "number" },
    { kind: "number" },
  );
}

export function bagCapacity(done: Resolved): Capacity {
  const [m, d, g] = [done.of(measures), done.of(bodySection), done.of(gussetSection)];
  const { insideWidth, insideHeight, insideDepth, depth } = bagSizes(done);
  const lining = minus(depth, insideDepth);
  const { outline, top } = insideOutline(done);
  const shape = isWrapped(done) ? [] : [d.topWidth, d.cornerRadius, d.clipRound, d.baseSag];
  const inside = boundsOf(outline);
  const straight: Quantity = { ...minus(d.height, g.sideRun, g.seamStart), kind: "length" };
  const from = named("height over the inside at which the gusset tapers", {
    ...straight,
    value: Math.max(0, straight.value - inside.minY),
  });
  return capacityOf({
    outline,
    ...(top ? { top } : {}),
    width: insideWidth,
    height: insideHeight,
    depth: insideDepth,
    depthTop: named("depth inside at the top", minus(g.topWidth, lining), { kind: "length" }),
    taperFrom: from,
    ...(isWrapped(done) ? { taken: roundFolds(done) } : {}),
    shapedBy: [insideWidth, insideHeight, ...shape, ...(top ? [d.dip] : [])],
    ...(m.holds === "anything" ? {} : { wanted: m.holds }),
  });
}
