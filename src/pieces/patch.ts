import { anticlockwise } from "../geometry/area.ts";
import { arc, closedPath, line, type Path, type Point } from "../geometry/path.ts";
import { mirroredInX, moved, turned } from "../geometry/transform.ts";
import type { Values } from "../model/dimension.ts";
import type { Piece } from "../model/piece.ts";
import { named, type Quantity, sum, times } from "../model/quantity.ts";
import { GLUE_CAUTION } from "../trade/finish.ts";
import { NO_PARTS, type Parts } from "../trade/parts.ts";
import type { dimensions } from "./patchTable.ts";

export { dimensions } from "./patchTable.ts";

// A reinforcement patch: a rounded rectangle about the origin, glued flesh to flesh behind what pulls on the
// leather. Drawn grain side up, so that the holes of what it backs stand on it mirrored left to right.

export type PatchValues = Values<typeof dimensions>;

/** What a patch backs. */
export type Backed = {
  readonly id: string;
  /** The patch's name, e.g. "Patch behind the press stud". */
  readonly name: string;
  /** What it backs takes this much of the leather: see `patchSize` of a closure, or holes over all. */
  readonly width: Quantity;
  readonly height: Quantity;
  /** The middle of that on the piece it backs, and how `width` lies there, from x. */
  readonly at: Point;
  readonly angle?: number;
  /** Its holes, cutouts and seams on the piece; marks stay behind. */
  readonly parts: Partial<Parts>;
};

/** Draws a patch. */
export function shape(
  d: PatchValues,
  order: { readonly leather: string; readonly count: number },
  where: Backed,
): Piece {
  const width = named(`${where.id} width`, sum(where.width, times(2, d.border)), { kind: "length" });
  const height = named(`${where.id} height`, sum(where.height, times(2, d.border)), { kind: "length" });
  const outline = roundedRectangle(width.value, height.value, d.cornerRadius.value);
  return {
    id: where.id,
    name: where.name,
    count: order.count,
    hand: "same",
    leather: { kind: order.leather, thickness: d.thickness.value, thickest: d.thickest.value },
    outline,
    corners:
      d.cornerRadius.value === 0
        ? outline.segments.map((s, i) => ({ name: `corner ${i + 1}`, at: s.to }))
        : [],
    ...NO_PARTS,
    ...fromBehind(where),
    grain: Math.PI / 2,
    straight: false,
    controls: [],
    sizes: [width, height, d.cornerRadius],
    notes: ["glue it on from behind, flesh to flesh, its holes on the holes it backs", GLUE_CAUTION],
  };
}

/** About the origin, anticlockwise from the lower left. */
function roundedRectangle(width: number, height: number, radius: number): Path {
  const [w, h, r] = [width / 2, height / 2, radius];
  const corner = (to: Point, centre: Point) => (r === 0 ? [] : [arc(to, centre, true)]);
  return closedPath(
    [r - w, -h],
    [
      line([w - r, -h]),
      ...corner([w, r - h], [w - r, r - h]),
      line([w, h - r]),
      ...corner([w - r, h], [w - r, h - r]),
      line([r - w, h]),
      ...corner([-w, h - r], [r - w, h - r]),
      line([-w, r - h]),
      ...corner([r - w, -h], [r - w, r - h]),
    ],
  );
}

/** Holes, cutouts and seams of what it backs, about its middle, seen from behind. */
function fromBehind({ at, angle = 0, parts }: Backed): Pick<Parts, "holes" | "cutouts" | "seams"> {
  const path = (p: Path): Path => mirroredInX(turned(moved(p, [-at[0], -at[1]]), -angle));
  const point = (p: Point): Point => path({ start: p, segments: [], closed: false }).start;
  const slant = (a: number, kind: string): number => (kind === "awl" ? Math.PI - (a - angle) : a);
  return {
    holes: (parts.holes ?? []).map((h) => ({ ...h, at: point(h.at), angle: slant(h.angle, h.kind) })),
    cutouts: (parts.cutouts ?? []).map((c) => ({ ...c, outline: anticlockwise(path(c.outline)) })),
    seams: (parts.seams ?? []).map((s) => ({ ...s, path: path(s.path) })),
  };
}
