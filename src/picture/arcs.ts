// Arcs cut into shorter arcs with sums and square roots alone. Engines differ in the last bit of sines and
// arc tangents, and a drawing's bytes must not; + − × ÷ and √ are the same everywhere.
import type { ArcSegment, Point } from "../geometry/path.ts";
import { cross, dot, leftOf, minus, plus, scaled, sizeOf, unit } from "../geometry/vector.ts";

/** Part of a circle that turns by less than half a turn. */
export type ArcPiece = {
  readonly from: Point;
  readonly to: Point;
  /** Directions from the centre to both ends. */
  readonly out: Point;
  readonly back: Point;
  /** Distances of both ends from the centre: rounded coordinates let them differ by a thousandth. */
  readonly radii: readonly [from: number, to: number];
};

/**
 * Direction from the centre to the middle of the arc. The difference of both ends' directions stands
 * square to it; a sum would vanish at half a turn.
 */
function middleDirection(out: Point, back: Point, ccw: boolean): Point {
  const middle = leftOf(unit(minus(out, back)));
  return ccw ? middle : scaled(middle, -1);
}

function pieceOf(from: Point, { to, centre }: ArcSegment): ArcPiece {
  const [u, v] = [minus(from, centre), minus(to, centre)];
  return { from, to, out: unit(u), back: unit(v), radii: [sizeOf(u), sizeOf(v)] };
}

/** True when the arc turns by less than half a turn, so that the turn's cosine tells its size. */
const underHalfTurn = ({ out, back }: ArcPiece, ccw: boolean): boolean =>
  (ccw ? cross(out, back) : -cross(out, back)) > 0;

function halves(piece: ArcPiece, centre: Point, ccw: boolean): readonly [ArcPiece, ArcPiece] {
  const direction = middleDirection(piece.out, piece.back, ccw);
  const radius = (piece.radii[0] + piece.radii[1]) / 2;
  const middle = plus(centre, scaled(direction, radius));
  return [
    { from: piece.from, to: middle, out: piece.out, back: direction, radii: [piece.radii[0], radius] },
    { from: middle, to: piece.to, out: direction, back: piece.back, radii: [radius, piece.radii[1]] },
  ];
}

/** The arc halved, and its halves again, until `enough` is content with each piece. */
export function arcPieces(
  from: Point,
  arc: ArcSegment,
  enough: (piece: ArcPiece) => boolean,
): readonly ArcPiece[] {
  const cut = (piece: ArcPiece, short: boolean): readonly ArcPiece[] =>
    short && enough(piece) ? [piece] : halves(piece, arc.centre, arc.ccw).flatMap((half) => cut(half, true));
  const whole = pieceOf(from, arc);
  return cut(whole, underHalfTurn(whole, arc.ccw));
}

/** The point in the middle of an arc. */
export function arcMiddle(from: Point, arc: ArcSegment): Point {
  return halves(pieceOf(from, arc), arc.centre, arc.ccw)[0].to;
}

/** True when the arc turns by more than half a turn. */
export function overHalfTurn(from: Point, arc: ArcSegment): boolean {
  const piece = pieceOf(from, arc);
  const turn = cross(piece.out, piece.back);
  return arc.ccw ? turn < 0 : turn > 0;
}

/** Cosine of a piece's turn. */
export const turnCosine = (piece: ArcPiece): number => dot(piece.out, piece.back);
