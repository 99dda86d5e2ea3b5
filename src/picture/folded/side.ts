import { boundsOf } from "../../geometry/bounds.ts";
import { pathLength } from "../../geometry/length.ts";
import { line, openPath, type Path } from "../../geometry/path.ts";
import type { Piece, TurnBack } from "../../model/piece.ts";
import { alongLeg, type Taut, tautOf } from "./foldedLeg.ts";

// What of a piece belongs to a turn-back, and where it lies when it is folded.

/** The strap goes on this far past what belongs to the turn-back, mm. */
const BEYOND_MM = 12;

/** A piece's turn-back with all that is drawn of it; lengths from the fold's middle along the leather. */
export type Side = {
  readonly t: TurnBack;
  readonly taut: Taut;
  readonly piece: Piece;
  /** Where the legs are held, along the neutral fibre. */
  readonly held: number;
  readonly frontShown: number;
  readonly backEnd: number;
  /** Where the back leg begins to be feathered; its end where it is not. */
  readonly feather: number;
};

export const along = (t: TurnBack, x: number): number => (x - t.centre) * t.direction;

/** Where a length along a leg lies, past the place where the legs are held. */
export const xAt = ({ taut, held }: Side, u: number): number => taut.held[0] + (u - held);

export function sideOf(piece: Piece, t: TurnBack): Side | undefined {
  const taut = tautOf(t);
  if (!taut) return undefined;
  const held = pathLength(alongLeg(taut, 0, taut.held, taut.held));
  const { minX, maxX } = boundsOf(piece.outline);
  const [a, b] = [along(t, minX), along(t, maxX)];
  const backEnd = -Math.min(a, b);
  const own = piece.zones.filter(({ id, kind }) => kind === "keeper" && id.startsWith(`${t.id}.`));
  const shown = own
    .flatMap((z) => [boundsOf(z.outline).minX, boundsOf(z.outline).maxX])
    .map((x) => along(t, x));
  const wanted = Math.max(held, backEnd, ...shown) + BEYOND_MM;
  const feather = piece.zones.find(({ id, to }) => id === `${t.id}.feather` && to === 0);
  const feathered = feather && boundsOf(feather.outline);
  return {
    t,
    taut,
    piece,
    held,
    frontShown: Math.max(held, Math.min(wanted, Math.max(a, b))),
    backEnd: Math.max(held, backEnd),
    feather: feathered
      ? Math.max(held, -Math.max(along(t, feathered.minX), along(t, feathered.maxX)))
      : Math.max(held, backEnd),
  };
}

export type Heights = { readonly neutral: number; readonly flesh: number; readonly grain: number };

export const heightsOf = ({ t, taut }: Side, thickness: number): Heights => {
  const neutral = taut.held[1];
  return { neutral, flesh: neutral - t.neutral * thickness, grain: neutral + (1 - t.neutral) * thickness };
};

/** One leg above the middle: its two faces and its neutral fibre. */
export function legLines(
  side: Side,
  name: string,
  thickness: number,
  end: number,
): readonly { id: string; path: Path }[] {
  const { t, taut } = side;
  const h = heightsOf(side, thickness);
  const [x0, x1] = [taut.held[0], xAt(side, end)];
  const face = (off: number, y: number, to: number): Path => alongLeg(taut, off, [x0, y], [to, y]);
  const isBack = name === "back";
  const thin = isBack && side.feather < end ? xAt(side, side.feather) : x1;
  const grain = face((1 - t.neutral) * t.wrapThickness, h.grain, thin);
  // Feathered to nothing, or cut square; the front leg goes on.
  const closing = isBack ? [line([x1, h.flesh])] : [];
  return [
    { id: `${name}.grain`, path: openPath(grain.start, [...grain.segments, ...closing]) },
    { id: `${name}.flesh`, path: face(-t.neutral * t.wrapThickness, h.flesh, x1) },
    { id: `${name}.neutral`, path: face(0, h.neutral, thin) },
  ];
}
