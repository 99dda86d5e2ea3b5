import { distanceBetween } from "../../geometry/distance.ts";
import { line, openPath, type Path, type Point } from "../../geometry/path.ts";
import type { Made } from "../../model/article.ts";
import type { Bend, Piece } from "../../model/piece.ts";
import { sectionOf } from "../measure/dimensions.ts";
import { holeShape } from "../measure/shapes.ts";
import { measurable } from "../measure/sound.ts";
import { sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** Leather left between what is cut out and a bend or a seam, mm; common practice, no source. */
const CLEAR_MM = 2;
/** With less than this beside a stitch it pulls through, as at an edge, mm; common practice, no source. */
const TEARS_MM = 1.5;
const SLACK_MM = 1e-6;

/** Something cut out of the leather, and what in the order may set where it is. */
type Opening = {
  readonly id: string;
  readonly place: string;
  readonly at: Point;
  readonly shape: Path;
  readonly dimension: string | undefined;
};

/** Parts of a closure lie this near its middle, mm: half of the largest turn lock's plate. */
const CLOSURE_MM = 30;

/** The dimension of the join that a hole or a cutout is part of. */
function dimensionOf(job: Made, piece: Piece, id: string, [x, y]: Point): string | undefined {
  const near = (half: { readonly piece: string; readonly at: Point }): boolean =>
    half.piece === piece.id && Math.hypot(half.at[0] - x, half.at[1] - y) < CLOSURE_MM;
  return job.joins.find(
    (j) =>
      (j.kind === "strap in slot" && j.piece === piece.id && j.cutout === id) ||
      (j.kind === "fixed" && j.sides.some((s) => s.piece === piece.id && s.holes.includes(id))) ||
      (j.kind === "closure" && (near(j.flap) || near(j.front))),
  )?.dimension;
}

/** Cutouts and punched holes; a tongue's slot lies on its fold by right, stitch holes on their seams. */
function openingsOf(job: Made, piece: Piece): readonly Opening[] {
  const stitches = new Set(piece.seams.flatMap((s) => s.holes));
  return [
    ...piece.cutouts
      .filter((c) => !(c.use === "tongue slot" && piece.turnBacks.length > 0))
      .map((c) => ({ id: c.id, place: `${c.use} ${c.id}`, at: c.outline.start, shape: c.outline })),
    ...piece.holes
      .filter((h) => h.kind !== "awl" && !stitches.has(h.id))
      .map((h) => ({ id: h.id, place: `hole ${h.id}`, at: h.at, shape: holeShape(h) })),
  ].map((o) => ({ ...o, dimension: dimensionOf(job, piece, o.id, o.at) }));
}

/** Flat leather that a bend takes, angle × (inner + k′ t); the neutral fibre is told from the flesh side. */
const flatOf = ({ angle, inner, thickness, neutral, inside }: Bend): number =>
  angle * (inner + (inside === "flesh" ? neutral : 1 - neutral) * thickness);

/** A line that openings must keep away from: error under the one distance, caution under the other. */
type Keep = {
  readonly words: string;
  readonly path: Path;
  readonly torn: number;
  readonly clear: number;
  readonly why: string;
};

function linesOf(piece: Piece): readonly Keep[] {
  return [
    ...piece.folds.flatMap((f): readonly Keep[] => {
      if (!f.bend) return [];
      const half = flatOf(f.bend) / 2;
      const path = openPath(f.from, [line(f.to)]);
      const why = "the leather bends there";
      return [{ words: `the fold ${f.id}`, path, torn: half, clear: half + CLEAR_MM, why }];
    }),
    ...piece.seams
      .filter((s) => s.joins !== undefined)
      .map(
        (s): Keep => ({
          words: `the seam ${s.id}`,
          path: s.path,
          torn: TEARS_MM,
          clear: CLEAR_MM,
          why: "the stitches pull through",
        }),
      ),
  ];
}

function tooNear(piece: Piece, opening: Opening, keep: Keep, context: Context): readonly Remark[] {
  const distance = distanceBetween(opening.shape, keep.path);
  if (distance >= keep.clear - SLACK_MM) return [];
  const error = distance < keep.torn - SLACK_MM;
  const [is, least] = [sayLength(distance, context), sayLength(error ? keep.torn : keep.clear, context)];
  const sets = [...new Set([...(opening.dimension ? [opening.dimension] : []), sectionOf(piece)])].join(", ");
  return [
    {
      severity: error ? "error" : "caution",
      piece: piece.id,
      place: opening.place,
      at: opening.at,
      message: `The edge of the ${opening.place} of ${piece.name} lies ${is} from ${keep.words}; ${error ? `under ${least} ${keep.why}` : `it should be ${least}`}.`,
      value: is,
      limit: `at least ${least}`,
      mend: `Move it, or make it smaller, or give the piece more room there: ${sets}.`,
    },
  ];
}

/** Slots, openings and punched holes keep clear of bends and of the seams that join the piece to its mates. */
export const slotsClear = rule(
  "slots-clear",
  "slots and punched holes keep clear of bends and mated seams",
  (job, context) =>
    measurable(job).flatMap((piece) => {
      const lines = linesOf(piece);
      if (lines.length === 0) return [];
      return openingsOf(job, piece).flatMap((o) => lines.flatMap((keep) => tooNear(piece, o, keep, context)));
    }),
);
