import { boundsOf } from "../../geometry/bounds.ts";
import type { Bend, Piece } from "../../model/piece.ts";
import * as trig from "../../units/trigonometry.ts";

// Folds a drawn piece with a flap by going along its leather from the base line up: straight, round each bend
// that is drawn on it, straight on. Nothing of what the flap's length was worked out by is used.
//
// In section: u from the back's inner face towards the front, v up from the base line. The flap is drawn above
// the back, so that y grows along it.

/** A bend where it lies on the flat, from the base line along the piece. */
export type FlatBend = { readonly centre: number; readonly bend: Bend };
/** A place on the leather's inner face, and which way the leather runs on from there. */
export type Lies = { readonly u: number; readonly v: number; readonly heading: number };

/** A fold's line runs across the piece when its ends lie at one height within this, mm. */
const ACROSS_MM = 0.05;

/** Length that a bend takes of the flat leather: along its neutral fibre. */
const flatLength = ({ angle, inner, thickness, neutral, inside }: Bend): number =>
  angle * (inner + (inside === "flesh" ? neutral : 1 - neutral) * thickness);

/** The piece's bends above its base line, in order. A bend that rounds the base into the back lies below. */
export function bendsAbove(piece: Piece, baseLine: number): readonly FlatBend[] {
  return piece.folds
    .flatMap(({ bend, from, to }) =>
      bend && Math.abs(from[1] - to[1]) <= ACROSS_MM
        ? [{ centre: (from[1] + to[1]) / 2 - baseLine, bend }]
        : [],
    )
    .filter(({ centre, bend }) => centre > bend.inner + bend.thickness)
    .sort((a, b) => a.centre - b.centre);
}

/** One step along the neutral fibre, straight on or bent to the right by 1/radius. */
function step({ u, v, heading }: Lies, bent: number, length: number): Lies {
  if (bent === 0) return { u: u + length * trig.cos(heading), v: v + length * trig.sin(heading), heading };
  const next = heading - length * bent;
  return {
    u: u + (trig.sin(heading) - trig.sin(next)) / bent,
    v: v + (trig.cos(next) - trig.cos(heading)) / bent,
    heading: next,
  };
}

/**
 * Where the leather's flesh side lies, `s` along the piece from the base line, once it is bent: the back stands
 * upright with its flesh side on u = 0. Bends that overlap on the flat follow one another.
 */
export function lies(bends: readonly FlatBend[], s: number): Lies {
  const first = bends[0]?.bend;
  const fibre = first ? first.neutral * first.thickness : 0;
  let at: Lies = { u: -fibre, v: 0, heading: Math.PI / 2 };
  let gone = 0;
  for (const { centre, bend } of bends) {
    const length = flatLength(bend);
    const straight = Math.max(0, Math.min(s, centre - length / 2) - gone);
    at = step(at, 0, straight);
    gone += straight;
    const round = Math.max(0, Math.min(s - gone, length));
    const turn = bend.inside === "flesh" ? bend.angle : -bend.angle;
    if (length > 0) at = step(at, turn / length, round);
    gone += round;
  }
  at = step(at, 0, s - gone);
  return {
    u: at.u + fibre * trig.sin(at.heading),
    v: at.v - fibre * trig.cos(at.heading),
    heading: at.heading,
  };
}

/**
 * The same bends on a bag that is less deep: the last one comes nearer the back and hangs plumb, so that the
 * flap's flesh side lies on u = reach.
 */
export function hungAt(bends: readonly FlatBend[], reach: number): readonly FlatBend[] {
  const last = bends.at(-1);
  if (!last || bends.length < 2) return bends;
  const before = bends.slice(0, -1);
  const heading = lies(before, last.centre).heading;
  const plumb: Bend = { ...last.bend, angle: heading + Math.PI / 2 };
  const hang = (centre: number): readonly FlatBend[] => [...before, { centre, bend: plumb }];
  const far = last.centre + flatLength(plumb);
  // Over a level top, what the bend moves along the leather the hanging part moves towards the back.
  return hang(last.centre + (reach - lies(hang(last.centre), far).u) / trig.cos(heading));
}

/** Where the drawn piece ends, from the base line along it. */
export const drawnEnd = (piece: Piece, baseLine: number): number => boundsOf(piece.outline).maxY - baseLine;
