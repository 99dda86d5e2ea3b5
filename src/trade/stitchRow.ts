import { pathLength, pointAt, tangentAt } from "../geometry/length.ts";
import type { Path } from "../geometry/path.ts";
import type { Hole, SeamLine } from "../model/piece.ts";

/** An awl's slit, as a share of the pitch, and its slant to the seam; common practice, no source. */
export const SLIT_SHARE = 0.6;
export const SLIT_LONGEST_MM = 2.5;
export const SLIT_SLANT = Math.PI / 4;

export type StitchRow = {
  readonly id: string;
  readonly path: Path;
  readonly asked: number;
  readonly stitches: number;
  readonly inset: number;
  readonly turnBack?: string;
  readonly note?: string;
};

/** Lays the awl marks of one open run evenly on its path: n stitches, n + 1 holes. */
export function stitchRow(row: StitchRow): { readonly seam: SeamLine; readonly holes: readonly Hole[] } {
  const length = pathLength(row.path);
  const pitch = length / row.stitches;
  const holes = Array.from({ length: row.stitches + 1 }, (_, i): Hole => {
    const s = Math.min(length, i * pitch);
    return {
      id: `${row.id}.${i + 1}`,
      kind: "awl",
      at: pointAt(row.path, s),
      size: Math.min(SLIT_LONGEST_MM, SLIT_SHARE * pitch),
      angle: tangentAt(row.path, s) + SLIT_SLANT,
      use: "stitch",
    };
  });
  const seam: SeamLine = {
    id: row.id,
    path: row.path,
    pitchAsked: row.asked,
    pitch,
    stitches: row.stitches,
    inset: row.inset,
    holes: holes.map((h) => h.id),
    ...(row.turnBack === undefined ? {} : { turnBack: row.turnBack }),
    ...(row.note === undefined ? {} : { note: row.note }),
  };
  return { seam, holes };
}
