import { pathLength } from "../geometry/length.ts";
import { arc, closedPath, line, openPath } from "../geometry/path.ts";
import type { Values } from "../model/dimension.ts";
import type { Piece, SeamEdge } from "../model/piece.ts";
import { named } from "../model/quantity.ts";
import { acrossSeam } from "../trade/clips.ts";
import type { dimensions } from "../trade/gussetTable.ts";
import { type Parts, together } from "../trade/parts.ts";

// A flat firm end, grain side up: x across, centred; the foot at y = 0, top upward. A wrap-round body is bent
// round its edge and stitched through it.

export type EndPanelValues = Values<typeof dimensions>;

/** Bends of the seam by run name, for the sides body and end panel, in that order. */
export type EndBends = Readonly<
  Record<string, { readonly angle: number; readonly radii: readonly [body: number, panel: number] }>
>;

/** Draws an end panel, its lower corners rounded to the inside of the body's folds. */
export function shape(
  d: EndPanelValues,
  order: { readonly leather: string; readonly count: number },
  extra: Partial<Parts> = {},
): { readonly piece: Piece; readonly edge: SeamEdge; readonly bends: EndBends } {
  const [half, top, r, s] = [d.depth.value / 2, d.height.value, d.baseFold.value, d.inset.value];
  const outline = closedPath(
    [-half + r, 0],
    [
      line([half - r, 0]),
      arc([half, r], [half - r, r], true),
      line([half, top]),
      line([-half, top]),
      line([-half, r]),
      arc([-half + r, 0], [-half + r, r], true),
    ],
  );
  const edge = seamOf(d, half, top, r, s);
  return {
    piece: {
      id: "end-panel",
      name: "End panel",
      count: order.count,
      hand: "same",
      leather: { kind: order.leather, thickness: d.thickness.value, thickest: d.thickest.value },
      outline,
      corners: [
        { name: "top front", at: [half, top] },
        { name: "top back", at: [-half, top] },
      ],
      ...together(
        {
          marks: [
            {
              id: "end.notch",
              kind: "notch",
              path: acrossSeam(edge.path, pathLength(edge.path) / 2, -s, -s / 2),
              label: "centre",
            },
          ],
        },
        extra,
      ),
      grain: Math.PI / 2,
      straight: false,
      controls: [{ from: [0, 0], to: [0, top], words: "foot to top" }],
      sizes: [
        named("end panel width", d.depth),
        named("end panel height", d.height),
        named("end panel corner", d.baseFold),
      ],
      notes: [
        "firm leather; the body is bent round its edge, the edges flush",
        "slant the awl: in through the body on its line, out through the panel's face on its line",
      ],
    },
    edge,
    bends: bendsOf(d),
  };
}

/** Down the front's side, along the foot, up the back's; bent where the body is. */
function seamOf(d: EndPanelValues, half: number, top: number, r: number, s: number): SeamEdge {
  const [x, y] = [half - s, top - d.seamStart.value];
  const path = openPath(
    [x, y],
    [
      line([x, r]),
      arc([half - r, s], [half - r, r], false),
      line([-half + r, s]),
      arc([-x, r], [-half + r, r], false),
      line([-x, y]),
    ],
  );
  const [side, bend, foot] = [y - r, (Math.PI / 2) * (r - s), 2 * (half - r)];
  return {
    piece: "end-panel",
    id: "seam",
    path,
    inset: s,
    breaks: [
      { at: side, name: "front bend start" },
      { at: side + bend, name: "front bend end" },
      { at: side + bend + foot, name: "back bend start" },
      { at: side + 2 * bend + foot, name: "back bend end" },
    ],
  };
}

/** The body's neutral fibre lies k t outside its fold's inner face, the panel's seam the inset inside it. */
function bendsOf(d: EndPanelValues): EndBends {
  const body = d.baseFold.value + d.bodyNeutral.value * d.bodyThickness.value;
  const bend = { angle: Math.PI / 2, radii: [body, d.baseFold.value - d.inset.value] as const };
  return { "front bend start to front bend end": bend, "back bend start to back bend end": bend };
}
