import { arc, closedPath, line, type Path, type Point, type Segment } from "../geometry/path.ts";
import type { Piece } from "../model/piece.ts";
import { type FlapShape, flapEdge } from "./flapEdge.ts";
import { type PanelShape, panelCorners, panelOffset } from "./panel.ts";
import { topEdge } from "./topEdge.ts";

// Outlines of a bag's front, back and wrap-round body: what is cut.

export type Drawn = { readonly outline: Path; readonly corners: Piece["corners"] };

export type Panel = {
  readonly shape: PanelShape;
  /** How far outside the finished edge it is cut along sides and base, mm; 0 for an edge that shows. */
  readonly grown: number;
};
export type Flap = Omit<FlapShape, "from">;

/** An allowance rounds the base's corners; a finished edge has them. */
const baseCorners = ({ shape, grown }: Panel): Piece["corners"] => (grown === 0 ? panelCorners(shape) : []);

/** A panel below a straight or dipped top; the dip in mm. */
export function panelOutline(panel: Panel, dip: number): Drawn {
  const cut = panelOffset(panel.shape, -panel.grown, panel.shape.height);
  const right: Point = [0 - cut.start[0], cut.start[1]];
  return {
    outline: closedPath(cut.start, [...cut.segments, ...topEdge(right, cut.start, dip)]),
    corners: [{ name: "top left", at: cut.start }, ...baseCorners(panel), { name: "top right", at: right }],
  };
}

/** Where an allowance ends beside the flap, leather would tear from a sharp corner; mm, common practice, no source. */
const ALLOWANCE_FILLET_MM = 3;

/** A panel with a flap above its top. An allowance ends where the flap begins. */
export function flapOutline(panel: Panel, flap: Flap): Drawn {
  const top = panel.shape.height;
  const cut = panelOffset(panel.shape, -panel.grown, top);
  const end: Point = [0 - cut.start[0], top];
  if (panel.grown === 0) {
    const edge = flapEdge({ ...flap, from: top });
    return {
      outline: closedPath(cut.start, [...cut.segments, ...edge.segments]),
      corners: [{ name: "flap left", at: cut.start }, ...baseCorners(panel), { name: "flap right", at: end }],
    };
  }
  const half = flap.halfWidth;
  const r = Math.min(ALLOWANCE_FILLET_MM, (end[0] - half) / 2);
  const edge = flapEdge({ ...flap, from: top + r });
  const right: readonly Segment[] = [line([half + r, top]), arc([half, top + r], [half + r, top + r], false)];
  const left: readonly Segment[] = [arc([-half - r, top], [-half - r, top + r], false), line(cut.start)];
  return {
    outline: closedPath(cut.start, [...cut.segments, ...right, ...edge.segments, ...left]),
    corners: [
      { name: "end of the allowance, left", at: cut.start },
      { name: "end of the allowance, right", at: end },
    ],
  };
}

/** A body that wraps round, its front's top edge lowest; the base's middle at y = 0, both tops `top` from it. */
export function wrapOutline(half: number, top: number, dip: number, flap: Flap | undefined): Drawn {
  const [fl, fr, br, bl]: readonly [Point, Point, Point, Point] = [
    [-half, -top],
    [half, -top],
    [half, top],
    [-half, top],
  ];
  const front = topEdge(fl, fr, dip);
  const tops = [
    { name: "front's top left", at: fl },
    { name: "front's top right", at: fr },
  ];
  if (flap) {
    const edge = flapEdge({ ...flap, from: top });
    return { outline: closedPath(fl, [...front, line(br), ...edge.segments, line(fl)]), corners: tops };
  }
  return {
    outline: closedPath(fl, [...front, line(br), ...topEdge(br, bl, dip), line(fl)]),
    corners: [...tops, { name: "back's top right", at: br }, { name: "back's top left", at: bl }],
  };
}
