import type { Point } from "../../geometry/path.ts";
import type { Hole, Piece, Zone } from "../../model/piece.ts";
import { sectionOf } from "../measure/dimensions.ts";
import { depthInside } from "../measure/shapes.ts";
import { measurable } from "../measure/sound.ts";
import { type Remark, rule } from "../rule.ts";

/** A hole on the very line where the feathered end begins is still in whole leather; mm. */
const ON_LINE_MM = 0.1;

/** Where a hole goes through: its own place, and the back leg's where it joins a turn-back's legs. */
function goesThrough(piece: Piece, hole: Hole): readonly Point[] {
  const seam = piece.seams.find((s) => s.turnBack !== undefined && s.holes.includes(hole.id));
  const turnBack = piece.turnBacks.find((t) => t.id === seam?.turnBack);
  // A leg folds over the other like a page: mirrored at the fold.
  return turnBack ? [hole.at, [2 * turnBack.centre - hole.at[0], hole.at[1]]] : [hole.at];
}

function inZone(piece: Piece, zone: Zone, hole: Hole): readonly Remark[] {
  const half = hole.kind === "awl" ? 0 : hole.size / 2;
  const at = goesThrough(piece, hole).find((p) => depthInside(zone.outline, p) > ON_LINE_MM - half);
  if (!at) return [];
  return [
    {
      severity: "error",
      piece: piece.id,
      place: `hole ${hole.id}`,
      at,
      message: `The hole ${hole.id} of ${piece.name} goes through the end that is thinned to nothing (${zone.id}) and holds nothing there.`,
      value: "in the feathered end",
      limit: "in whole leather",
      mend: `Make the turn-back longer or its feathered end shorter, under ${sectionOf(piece)}.`,
    },
  ];
}

/** An end that is thinned to nothing carries no hole, nor a stitch through both legs. */
export const featheredEnd = rule("feathered-end", "an end thinned to nothing carries no hole", (job) =>
  measurable(job).flatMap((piece) =>
    piece.zones
      .filter((z) => z.kind === "skive" && z.to === 0)
      .flatMap((zone) => piece.holes.flatMap((hole) => inZone(piece, zone, hole))),
  ),
);
