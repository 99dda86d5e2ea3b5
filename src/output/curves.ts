// What an output makes of an arc: cubics where a format has no arcs, shorter arcs where it has.
import { type ArcSegment, type CubicSegment, cubic, type Point } from "../geometry/path.ts";
import { leftOf, minus, plus, scaled } from "../geometry/vector.ts";
import { type ArcPiece, arcPieces, turnCosine } from "../picture/arcs.ts";

/** How far a cubic may stray from its arc: half of the 0.001 mm that coordinates are rounded to. */
const CUBIC_STRAY_MM = 0.0005;

/** A cubic stands for an eighth of a turn at most. */
const EIGHTH_TURN_COSINE = Math.SQRT1_2;

/** Cosine of half and tangent of a quarter of a piece's turn, by half-angle formulas. */
function partsOfTurn(piece: ArcPiece): { readonly halfCosine: number; readonly quarterTangent: number } {
  const halfCosine = Math.sqrt(Math.max(0, (1 + turnCosine(piece)) / 2));
  return { halfCosine, quarterTangent: Math.sqrt(Math.max(0, (1 - halfCosine) / (1 + halfCosine))) };
}

/**
 * Greatest distance between a circular arc turning by θ and its cubic, r · 2/27 · sin⁶(θ/4) ÷ cos²(θ/4)
 * (the well-known expansion for the standard cubic; from memory, and measured in a test).
 */
function strayOf(piece: ArcPiece): number {
  const { halfCosine } = partsOfTurn(piece);
  const [sin2, cos2] = [(1 - halfCosine) / 2, (1 + halfCosine) / 2];
  return (Math.max(...piece.radii) * 2 * sin2 ** 3) / (27 * cos2);
}

const cubicEnough = (piece: ArcPiece): boolean =>
  turnCosine(piece) >= EIGHTH_TURN_COSINE && strayOf(piece) <= CUBIC_STRAY_MM;

function cubicOf(piece: ArcPiece, ccw: boolean): CubicSegment {
  const reach = ((ccw ? 4 : -4) / 3) * partsOfTurn(piece).quarterTangent;
  const c1 = plus(piece.from, scaled(leftOf(piece.out), reach * piece.radii[0]));
  const c2 = minus(piece.to, scaled(leftOf(piece.back), reach * piece.radii[1]));
  return cubic(c1, c2, piece.to);
}

/** The arc as cubics that stray from it by no more than 0.0005 mm. */
export const arcCubics = (from: Point, arc: ArcSegment): readonly CubicSegment[] =>
  arcPieces(from, arc, cubicEnough).map((piece) => cubicOf(piece, arc.ccw));

/** Quarter turns between rounded points count as quarters. */
const QUARTER_SLACK = 1e-3;

/**
 * The arc as arcs of a quarter turn at most, each with its radius. An arc given by its ends and its
 * radius is well determined only when it is short: near half a turn, a thousandth on a radius of 10 mm
 * moves the middle of the arc by a tenth.
 */
export const shortArcs = (
  from: Point,
  arc: ArcSegment,
): readonly { readonly to: Point; readonly radius: number }[] =>
  arcPieces(from, arc, (piece) => turnCosine(piece) >= -QUARTER_SLACK).map(({ to, radii }) => ({
    to,
    radius: (radii[0] + radii[1]) / 2,
  }));
