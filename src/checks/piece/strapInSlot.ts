import type { Path, Point } from "../../geometry/path.ts";
import type { Join } from "../../model/article.ts";
import type { Cutout, Piece } from "../../model/piece.ts";
import * as trig from "../../units/trigonometry.ts";
import { outlinePoints, spansInside } from "../measure/chords.ts";
import { pieceOf } from "../measure/sound.ts";
import { sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** A solid that touches within this still goes in: what a knife can follow, ten times over. */
const FIT_MM = 0.01;
/** Places through the strap's thickness at which the slot is measured; its corners among them. */
const THROUGH = 9;

type Through = Extract<Join, { kind: "strap in slot" }>;

type Turned = { readonly points: readonly Point[]; readonly across: number };

/** The points turned so that `way` lies along x, the middle of their extents at the origin. */
function alongWay(points: readonly Point[], [ux, uy]: Point): Turned {
  const turned = points.map(([x, y]): Point => [x * ux + y * uy, y * ux - x * uy]);
  const [xs, ys] = [turned.map(([x]) => x), turned.map(([, y]) => y)];
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const [cx, cy] = [(minX + maxX) / 2, (minY + maxY) / 2];
  return { points: turned.map(([x, y]): Point => [x - cx, y - cy]), across: maxY - minY };
}

/** The slot lying along x as a strap would go through it: with the least extent across, one of its edges along x. */
function alongItself(path: Path): readonly Point[] {
  const points = outlinePoints(path);
  const edges = points.map((a, i) => {
    const b = points[(i + 1) % points.length]!;
    return { a, b, length: Math.hypot(b[0] - a[0], b[1] - a[1]) };
  });
  // A slot's sides are its long edges; the short ones round its ends need no try.
  const long = Math.max(...edges.map((e) => e.length)) / 2;
  let best: Turned = { points, across: Infinity };
  for (const { a, b, length } of edges) {
    if (length < long || length === 0) continue;
    const turned = alongWay(points, [(b[0] - a[0]) / length, (b[1] - a[1]) / length]);
    // A hair less is the same: an edge further round must not win by rounding.
    if (turned.across < best.across - FIT_MM / 100) best = turned;
  }
  return best.points;
}

/** The widest flat strap of a thickness that goes through the slot; 0 when it is too thick. */
export function widestThrough(path: Path, thickness: number): number {
  const points = alongItself(path);
  let [low, high] = [-Infinity, Infinity];
  for (let i = 0; i < THROUGH; i++) {
    const y = (thickness / 2) * ((2 * i) / (THROUGH - 1) - 1);
    const span = spansInside(points, "x", y).find(([a, b]) => a <= 0 && b >= 0);
    if (!span) return 0;
    low = Math.max(low, span[0]);
    high = Math.min(high, span[1]);
  }
  return high - low;
}

/** How much of the slot's width a sloping strap takes: its corners where it enters and leaves the leather. */
function acrossSloping(thickness: number, { angle, through }: NonNullable<Through["weave"]>): number {
  const along: Point = [trig.cos(angle), trig.sin(angle)];
  const side: Point = [-along[1], along[0]];
  const xs = [-1, 1].flatMap((face) =>
    [-1, 1].map((edge) => {
      const [x, y] = [(side[0] * edge * thickness) / 2, (side[1] * edge * thickness) / 2];
      // Follow the strap's edge to the leather's face.
      return x + (along[0] / along[1]) * ((face * through) / 2 - y);
    }),
  );
  return Math.max(...xs) - Math.min(...xs);
}

/** A strap that weaves through needs the slot wider than it is thick. */
function tooNarrow(piece: Piece, slot: Cutout, join: Through, context: Context): readonly Remark[] {
  if (!join.weave) return [];
  const ys = alongItself(slot.outline).map(([, y]) => y);
  const wide = Math.max(...ys) - Math.min(...ys);
  const needs = acrossSloping(join.strapThickness, join.weave);
  if (wide >= needs - FIT_MM) return [];
  const say = (mm: number): string => sayLength(mm, context);
  return [
    {
      severity: "error",
      piece: piece.id,
      place: `${slot.use} ${slot.id}`,
      at: slot.outline.start,
      message: `The crown weaves through the slot ${slot.id} of ${piece.name}, which is ${say(wide)} wide; at that slope it needs ${say(needs)}.`,
      value: say(wide),
      limit: `at least ${say(needs)}`,
      mend: `Cut a wider slot or a thinner strap: change ${join.dimension}.`,
    },
  ];
}

function tooSmall(piece: Piece, slot: Cutout, join: Through, context: Context): readonly Remark[] {
  const passes = widestThrough(slot.outline, join.strapThickness - FIT_MM);
  if (passes >= join.strapWidth - FIT_MM) return [];
  const [thick, wide] = [sayLength(join.strapThickness, context), sayLength(join.strapWidth, context)];
  const lets = passes === 0 ? "nothing that thick" : `at most ${sayLength(passes, context)}`;
  return [
    {
      severity: "error",
      piece: piece.id,
      place: `${slot.use} ${slot.id}`,
      at: slot.outline.start,
      message: `A strap ${wide} wide and ${thick} thick must go through the slot ${slot.id} of ${piece.name}, which lets through ${lets}.`,
      value: lets,
      limit: `${wide} by ${thick}`,
      mend: `Cut a larger slot or a thinner strap: change ${join.dimension}.`,
    },
  ];
}

/** A strap goes through its slot with all its layers: tried as a solid in the drawn slot. */
export const strapInSlot = rule("strap-in-slot", "a strap goes through its slot", (job, context) =>
  job.joins.flatMap((join) => {
    if (join.kind !== "strap in slot") return [];
    const piece = pieceOf(job, join.piece);
    const slot = piece?.cutouts.find((c) => c.id === join.cutout);
    return piece && slot
      ? [...tooSmall(piece, slot, join, context), ...tooNarrow(piece, slot, join, context)]
      : [];
  }),
);
