import { boundsOf } from "../../geometry/bounds.ts";
import { containsPoint } from "../../geometry/contains.ts";
import { distanceBetween } from "../../geometry/distance.ts";
import { type Box, line, openPath, type Path } from "../../geometry/path.ts";
import { placed as laid } from "../../geometry/transform.ts";
import { type OnPlate, OUTLINE, piecesOnPlates, ROUGH } from "../measure/drawn.ts";
import { BAD_SHEETS, sayLength } from "../measure/words.ts";
import { type Context, type Remark, sheetRule } from "../rule.ts";

/** Less paper between two cut lines and they are taken for one; mm. */
const LEAST_GAP_MM = 1;
const SLACK_MM = 1e-6;

type Drawn = { readonly on: OnPlate; readonly lines: readonly Path[]; readonly box: Box };

/** The outermost cut line as it lies on the plate: whole, or in pieces when stretches are left out. */
function drawn(on: OnPlate): Drawn {
  const whole = on.placed.kept ? undefined : laid(on.piece.rough ?? on.piece.outline, on.placed.placement);
  const strokes = on.strokes.filter((s) => s.what === (on.piece.rough ? ROUGH : OUTLINE));
  const lines = whole ? [whole] : strokes.map(({ a, b }) => openPath(a, [line(b)]));
  const boxes = lines.map(boundsOf);
  const box = {
    minX: Math.min(...boxes.map((b) => b.minX)),
    minY: Math.min(...boxes.map((b) => b.minY)),
    maxX: Math.max(...boxes.map((b) => b.maxX)),
    maxY: Math.max(...boxes.map((b) => b.maxY)),
  };
  return { on, lines, box };
}

const near = (a: Box, b: Box): boolean =>
  a.minX <= b.maxX + LEAST_GAP_MM &&
  b.minX <= a.maxX + LEAST_GAP_MM &&
  a.minY <= b.maxY + LEAST_GAP_MM &&
  b.minY <= a.maxY + LEAST_GAP_MM;

/** Distance between two drawn cut lines; 0 when one piece lies on the other. */
function gapOf(a: Drawn, b: Drawn): number {
  const [wa, wb] = [a.lines[0]!, b.lines[0]!];
  if (wa.closed && containsPoint(wa, wb.start)) return 0;
  if (wb.closed && containsPoint(wb, wa.start)) return 0;
  return Math.min(...a.lines.flatMap((p) => b.lines.map((q) => distanceBetween(p, q))));
}

function tooNear(a: Drawn, b: Drawn, context: Context): readonly Remark[] {
  if (a.on.plate.id !== b.on.plate.id || !near(a.box, b.box)) return [];
  const gap = gapOf(a, b);
  if (gap >= LEAST_GAP_MM - SLACK_MM) return [];
  const [is, least] = [sayLength(gap, context), sayLength(LEAST_GAP_MM, context)];
  return [
    {
      severity: "error",
      piece: a.on.piece.id,
      place: `beside ${b.on.piece.id}`,
      message: `On the sheets ${a.on.piece.name} and ${b.on.piece.name} lie ${gap === 0 ? "over each other" : `${is} apart`}.`,
      value: is,
      limit: `at least ${least}`,
      mend: BAD_SHEETS,
    },
  ];
}

/** Pieces that share a drawing lie apart, so that each can be cut out whole. */
export const piecesApart = sheetRule(
  "pieces-apart",
  "pieces on the same paper lie apart",
  (job, layout, context) => {
    const all = piecesOnPlates(job, layout).map(drawn);
    return all.flatMap((a, i) => all.slice(i + 1).flatMap((b) => tooNear(a, b, context)));
  },
);
