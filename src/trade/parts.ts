import { type Path, type Point, rectanglePath } from "../geometry/path.ts";
import type { Cutout, Fold, Hole, Mark, SeamLine, Section, TurnBack, Zone } from "../model/piece.ts";

/** What one end or one feature adds to a piece. */
export type Parts = {
  readonly holes: readonly Hole[];
  readonly cutouts: readonly Cutout[];
  readonly seams: readonly SeamLine[];
  readonly folds: readonly Fold[];
  readonly turnBacks: readonly TurnBack[];
  readonly zones: readonly Zone[];
  readonly marks: readonly Mark[];
  readonly sections: readonly Section[];
};

export const NO_PARTS: Parts = {
  holes: [],
  cutouts: [],
  seams: [],
  folds: [],
  turnBacks: [],
  zones: [],
  marks: [],
  sections: [],
};

/** Puts the parts of several features together. */
export function together(...all: readonly Partial<Parts>[]): Parts {
  const pick = <K extends keyof Parts>(key: K): Parts[K] =>
    all.flatMap((p) => (p[key] ?? []) as readonly unknown[]) as unknown as Parts[K];
  return {
    holes: pick("holes"),
    cutouts: pick("cutouts"),
    seams: pick("seams"),
    folds: pick("folds"),
    turnBacks: pick("turnBacks"),
    zones: pick("zones"),
    marks: pick("marks"),
    sections: pick("sections"),
  };
}

/**
 * A strap end's own frame: lengths u from the fold's centre, positive on the front leg. `direction` is
 * +1 when the front leg lies at greater x.
 */
export type EndFrame = { readonly id: string; readonly centre: number; readonly direction: 1 | -1 };

export const alongX = (f: EndFrame, u: number): number => f.centre + f.direction * u;

/** A band across a strap from u₀ to u₁, of the strap's width. */
export function bandAcross(f: EndFrame, u0: number, u1: number, width: number): Path {
  const [a, b] = [alongX(f, u0), alongX(f, u1)];
  return rectanglePath([Math.min(a, b), -width / 2], Math.abs(b - a), width);
}

/** The fold line across a strap at u = 0. */
export const foldAcross = (f: EndFrame, width: number, label: string): Fold => ({
  id: `${f.id}.fold`,
  from: [f.centre, -width / 2],
  to: [f.centre, width / 2],
  label,
});

export const roundHole = (id: string, at: Point, size: number, use: string): Hole => ({
  id,
  kind: "round",
  at,
  size,
  angle: 0,
  use,
});
