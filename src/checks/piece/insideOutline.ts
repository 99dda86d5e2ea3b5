import { boundsOf, boxesMeet } from "../../geometry/bounds.ts";
import { containsPath, containsPoint } from "../../geometry/contains.ts";
import { distanceBetween, distanceToPath } from "../../geometry/distance.ts";
import type { Box, Path, Point } from "../../geometry/path.ts";
import type { Hole, Piece } from "../../model/piece.ts";
import { sectionOf } from "../measure/dimensions.ts";
import { holeShape } from "../measure/shapes.ts";
import { measurable } from "../measure/sound.ts";
import { sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** Something taken out of the leather. */
type Opening = {
  readonly place: string;
  readonly at: Point;
  readonly shape: Path;
  readonly box: Box;
  readonly hole?: Hole;
};

const opening = (o: Omit<Opening, "box">): Opening => ({ ...o, box: boundsOf(o.shape) });

function openingsOf(piece: Piece): readonly Opening[] {
  return [
    ...piece.cutouts.map((c) =>
      opening({ place: `${c.use} ${c.id}`, at: c.outline.start, shape: c.outline }),
    ),
    ...piece.holes.map((hole) =>
      opening({ place: `hole ${hole.id}`, at: hole.at, shape: holeShape(hole), hole }),
    ),
  ];
}

const isSlit = (o: Opening): boolean => o.hole?.kind === "awl";

/** True when two openings run into each other. */
function meet(a: Opening, b: Opening): boolean {
  if (a.hole && b.hole && a.hole.kind !== "awl" && b.hole.kind !== "awl") {
    const [[ax, ay], [bx, by]] = [a.at, b.at];
    return Math.hypot(ax - bx, ay - by) <= (a.hole.size + b.hole.size) / 2;
  }
  if (distanceBetween(a.shape, b.shape) === 0) return true;
  return (a.shape.closed && containsPoint(a.shape, b.at)) || (b.shape.closed && containsPoint(b.shape, a.at));
}

function outside(piece: Piece, o: Opening, context: Context): readonly Remark[] {
  if (containsPath(piece.outline, o.shape)) return [];
  const off = distanceToPath(o.at, piece.outline);
  return [
    {
      severity: "error",
      piece: piece.id,
      place: o.place,
      at: o.at,
      message: `The ${o.place} of ${piece.name} runs over the edge.`,
      value: `its middle ${sayLength(off, context)} from the edge`,
      limit: "wholly inside the outline",
      mend: `Make the piece wider or longer, or what is cut out of it smaller, under ${sectionOf(piece)}.`,
    },
  ];
}

function together(piece: Piece, openings: readonly Opening[]): readonly Remark[] {
  return openings.flatMap((a, i) =>
    openings
      .slice(i + 1)
      // Awl slits may lie as they like among themselves.
      .filter((b) => !(isSlit(a) && isSlit(b)) && boxesMeet(a.box, b.box) && meet(a, b))
      .map(
        (b): Remark => ({
          severity: "error",
          piece: piece.id,
          place: a.place,
          at: b.at,
          message: `The ${a.place} and the ${b.place} of ${piece.name} run into each other.`,
          value: "overlapping",
          limit: "apart",
          mend: `Move them apart: change the measure that places one of them, under ${sectionOf(piece)}.`,
        }),
      ),
  );
}

/** What is cut out lies inside the outline, and no two openings run into each other. */
export const insideOutline = rule(
  "inside-outline",
  "holes and cutouts lie inside the edge and apart from one another",
  (job, context) =>
    measurable(job).flatMap((piece) => {
      const openings = openingsOf(piece);
      return [...openings.flatMap((o) => outside(piece, o, context)), ...together(piece, openings)];
    }),
);
