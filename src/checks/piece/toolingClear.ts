import { containsPath, containsPoint } from "../../geometry/contains.ts";
import { distanceBetween } from "../../geometry/distance.ts";
import { line, openPath, type Path } from "../../geometry/path.ts";
import type { Piece, Zone } from "../../model/piece.ts";
import { sectionOf } from "../measure/dimensions.ts";
import { depthInside, holeShape, shapesOverlap } from "../measure/shapes.ts";
import { measurable } from "../measure/sound.ts";
import { type Remark, rule } from "../rule.ts";

/** Zones that share no more than this only touch; mm. */
const TOUCH_MM = 0.1;

/** What lies on a tooling zone that shouldn't, in words. */
function lyingOn(piece: Piece, zone: Zone): readonly string[] {
  const meets = (shape: Path): boolean =>
    shape.closed
      ? shapesOverlap(shape, zone.outline)
      : distanceBetween(shape, zone.outline) === 0 || containsPoint(zone.outline, shape.start);
  const holes = piece.holes.filter(
    (h) =>
      depthInside(zone.outline, h.at) > -(h.kind === "awl" ? 0 : h.size / 2) + TOUCH_MM ||
      (h.kind === "awl" && meets(holeShape(h))),
  );
  return [
    ...holes.map((h) => `hole ${h.id}`),
    ...piece.cutouts.filter((c) => meets(c.outline)).map((c) => `${c.use} ${c.id}`),
    ...piece.folds.filter((f) => meets(openPath(f.from, [line(f.to)]))).map((f) => `fold ${f.id}`),
    ...piece.zones.filter((z) => z.kind === "skive" && meets(z.outline)).map((z) => `skive ${z.id}`),
  ];
}

function faults(piece: Piece, zone: Zone): readonly Remark[] {
  const about = {
    piece: piece.id,
    place: `zone ${zone.id}`,
    at: zone.outline.start,
    mend: `Make the tooled part smaller or move it, under ${sectionOf(piece)}.`,
  };
  const outside = !containsPath(piece.outline, zone.outline);
  const on = lyingOn(piece, zone);
  return [
    ...(outside
      ? [
          {
            ...about,
            severity: "error" as const,
            message: `The tooling zone ${zone.id} of ${piece.name} runs over the edge.`,
            value: "over the edge",
            limit: "inside the outline",
          },
        ]
      : []),
    ...on.map((what) => ({
      ...about,
      severity: "caution" as const,
      message: `The tooling zone ${zone.id} of ${piece.name} runs over the ${what}; tooling is lost or the leather weakened there.`,
      value: `over the ${what}`,
      limit: "clear of holes, cutouts, folds and skives",
    })),
  ];
}

/** A tooling zone lies inside the outline, clear of holes, cutouts, folds and skives. */
export const toolingClear = rule(
  "tooling-clear",
  "tooling lies clear of edges, holes, folds and skives",
  (job) =>
    measurable(job).flatMap((piece) =>
      piece.zones.filter((z) => z.kind === "tooling").flatMap((zone) => faults(piece, zone)),
    ),
);
