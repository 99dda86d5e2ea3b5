import { nearestOnPath } from "../../geometry/distance.ts";
import {
  circlePath,
  endPoint,
  line,
  openPath,
  type Path,
  type Point,
  polyline,
} from "../../geometry/path.ts";
import { leftOf, minus, plus, scaled, unit } from "../../geometry/vector.ts";
import type { Hole, Mark, Piece, ZoneKind } from "../../model/piece.ts";
import * as trig from "../../units/trigonometry.ts";
import type { Layer, LineType, Stroke } from "../picture.ts";
import { tenthsOf } from "./tenths.ts";

// The lines of one piece, in its own coordinates. Which line type means what stands in the legend of the
// first sheet (sheet/legend.ts); both follow ISO 128-2.

/** The cross at a hole's middle reaches this far past its edge, to set a punch by. */
export const CROSS_BEYOND_MM = 1.2;
/** Every tenth stitch hole has a tick this long, so that two rows can be counted against each other. */
const TENTH_MM = 2.5;
/** The triangle that shows a notch from outside, mm: its height, and half of its base. */
const FLAG_MM = 2.4;
const FLAG_HALF_MM = 1.1;
/** It stands this far off the edge, so that the cut is seen to its end, mm. */
const FLAG_GAP_MM = 0.5;

export const stroke = (layer: Layer, line: LineType, path: Path, id?: string): Stroke => ({
  kind: "stroke",
  layer,
  line,
  path,
  ...(id === undefined ? {} : { id }),
});

const across = (at: Point, half: number, angle: number): Path => {
  const [dx, dy] = [half * trig.cos(angle), half * trig.sin(angle)];
  return polyline([
    [at[0] - dx, at[1] - dy],
    [at[0] + dx, at[1] + dy],
  ]);
};

function holeStrokes({ id, kind, at, size, angle, use }: Hole): readonly Stroke[] {
  if (kind === "awl") return [stroke("stitch", "01.1", across(at, size / 2, angle), `hole.${id}`)];
  // Crosses of a row of stitch holes would run into each other.
  if (use === "stitch") return [stroke("stitch", "01.1", circlePath(at, size / 2), `hole.${id}`)];
  const arm = size / 2 + CROSS_BEYOND_MM;
  return [
    stroke("hole", "01.1", circlePath(at, size / 2), `hole.${id}`),
    stroke(
      "hole",
      "01.1",
      polyline([
        [at[0] - arm, at[1]],
        [at[0] + arm, at[1]],
      ]),
    ),
    stroke(
      "hole",
      "01.1",
      polyline([
        [at[0], at[1] - arm],
        [at[0], at[1] + arm],
      ]),
    ),
  ];
}

/** Holes that only a groove shows: they are not drawn. */
export function grooveHoles({ seams }: Piece): ReadonlySet<string> {
  const pricked = new Set(seams.filter((s) => !s.groove).flatMap((s) => s.holes));
  return new Set(seams.flatMap((s) => (s.groove ? s.holes.filter((h) => !pricked.has(h)) : [])));
}

/** A notch's triangle, outside the edge that it is nearest to, pointing at it. */
function notchFlag({ path }: Mark, outline: Path): Path {
  const [a, b] = [path.start, endPoint(path)];
  const [ofA, ofB] = [nearestOnPath(a, outline), nearestOnPath(b, outline)];
  const [edge, inner] = ofA.distance <= ofB.distance ? [ofA.point, b] : [ofB.point, a];
  const out = unit(minus(edge, inner));
  const tip = plus(edge, scaled(out, FLAG_GAP_MM));
  const base = plus(tip, scaled(out, FLAG_MM));
  const side = scaled(leftOf(out), FLAG_HALF_MM);
  return polyline([tip, plus(base, side), minus(base, side)], true);
}

const ZONE_LINES = {
  skive: "07.1",
  tooling: "07.1",
  glue: "07.1",
  keeper: "05.1",
  overlap: "05.1",
  trim: "08.1",
} as const satisfies Record<ZoneKind, LineType>;
const MARK_LINES = {
  crease: "03.1",
  centre: "04.1",
  place: "05.1",
  notch: "01.1",
  clip: "01.2",
} as const satisfies Record<Mark["kind"], LineType>;
/** Clips are cut; other marks are pressed or drawn, a notch on the flesh side: a cut in an edge that shows stays. */
const isCut = ({ kind }: Mark): boolean => kind === "clip";

const markStrokes = (m: Mark, outline: Path): readonly Stroke[] => [
  stroke(isCut(m) ? "cut" : "mark", MARK_LINES[m.kind], m.path, `mark.${m.id}`),
  ...(m.kind === "notch" ? [stroke("mark", "01.1", notchFlag(m, outline))] : []),
];

/** Every line of a piece, from what lies underneath to what is cut. */
export function strokesOf(piece: Piece): readonly Stroke[] {
  const hidden = grooveHoles(piece);
  return [
    ...piece.zones.map((z) =>
      stroke(z.kind === "skive" ? "skive" : "mark", ZONE_LINES[z.kind], z.outline, `zone.${z.id}`),
    ),
    ...piece.folds.map((f) => stroke("fold", "02.1", openPath(f.from, [line(f.to)]), `fold.${f.id}`)),
    ...piece.marks.flatMap((m) => markStrokes(m, piece.outline)),
    ...piece.seams.map((s) => stroke("stitch", "01.1", s.path, `seam.${s.id}`)),
    ...tenthsOf(piece).map(({ hole, along }) =>
      stroke("stitch", "01.1", across(hole.at, TENTH_MM / 2, along + Math.PI / 2)),
    ),
    ...piece.holes.filter((h) => !hidden.has(h.id)).flatMap(holeStrokes),
    ...piece.cutouts.map((c) => stroke("cut", "01.2", c.outline, `cutout.${c.id}`)),
    ...(piece.rough ? [stroke("cut", "02.1", piece.rough, "rough")] : []),
    stroke("cut", "01.2", piece.outline, "outline"),
  ];
}
