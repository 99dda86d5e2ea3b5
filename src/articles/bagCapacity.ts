import { endPoint, line, openPath, type Path } from "../geometry/path.ts";
import type { Capacity } from "../model/article.ts";
import * as body from "../pieces/purseBody.ts";
import { capacityOf } from "../trade/capacity.ts";
import { panelOffset } from "../trade/panel.ts";
import { topEdge } from "../trade/topEdge.ts";
import { bagSizes, bodySection, gussetSection, isWrapped } from "./bagBodySections.ts";
import { measures } from "./bagSections.ts";
import type { Resolved } from "./definition.ts";

// How much goes into a bag: the room between its front and back, inside the gusset.

/** The inside seen from the front, from the top left round the base to the top right. */
function insideOutline(done: Resolved): Path {
  const d = done.of(bodySection);
  const { panelWidth, insideWidth, insideHeight } = bagSizes(done);
  const wall = (panelWidth.value - insideWidth.value) / 2;
  if (!isWrapped(done)) return panelOffset(body.panelShape(d), wall, d.height.value);
  const [half, top] = [insideWidth.value / 2, insideHeight.value];
  return openPath([-half, top], [line([-half, 0]), line([half, 0]), line([half, top])]);
}

export function bagCapacity(done: Resolved): Capacity {
  const [m, d, g] = [done.of(measures), done.of(bodySection), done.of(gussetSection)];
  const { insideWidth, insideHeight, depth } = bagSizes(done);
  const outline = insideOutline(done);
  const [from, to] = [endPoint(outline), outline.start];
  const dipped = d.top === "dipped" && d.dip.value > 0;
  const shape = isWrapped(done) ? [] : [d.topWidth, d.cornerRadius, d.clipRound, d.baseSag];
  return capacityOf({
    outline,
    ...(dipped ? { top: openPath(from, topEdge(from, to, d.dip.value)) } : {}),
    width: insideWidth,
    height: insideHeight,
    depth,
    depthTop: g.topWidth,
    shapedBy: [insideWidth, insideHeight, ...shape, ...(dipped ? [d.dip] : [])],
    ...(m.holds === "anything" ? {} : { wanted: m.holds }),
  });
}
