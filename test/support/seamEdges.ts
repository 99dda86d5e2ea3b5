// Sides of seams made by hand, and a seam laid on them with the rest of its input at usual values.
import { arc, line, openPath, type Path, polyline } from "../../src/geometry/path.ts";
import type { SeamEdge } from "../../src/model/piece.ts";
import { type Laid, layMates, type MatesInput } from "../../src/trade/mates.ts";

/** One side; breaks as name and length. */
export const side = (
  piece: string,
  path: Path,
  breaks: Readonly<Record<string, number>> = {},
  id = "seam",
): SeamEdge => ({
  piece,
  id,
  path,
  inset: 4,
  breaks: Object.entries(breaks).map(([name, at]) => ({ at, name })),
});

export const straight = (length: number): Path => openPath([0, 0], [line([length, 0])]);

/** Down, along and up: a rectangle's U, its two lower corners rounded with radius r (sharp where r is 0). */
export function uPath(width: number, height: number, r: number): Path {
  const x = width / 2;
  if (r === 0)
    return polyline([
      [-x, height],
      [-x, 0],
      [x, 0],
      [x, height],
    ]);
  return openPath(
    [-x, height],
    [
      line([-x, r]),
      arc([-x + r, 0], [-x + r, r], true),
      line([x - r, 0]),
      arc([x, r], [x - r, r], true),
      line([x, height]),
    ],
  );
}

export const laid = (sides: readonly SeamEdge[], over: Partial<MatesInput> = {}): Laid =>
  layMates({
    name: "front to gusset",
    sides,
    pitch: 3.5,
    mode: "spread",
    marks: "awl slits",
    markSize: 2,
    stack: 4,
    backStitches: [2, 2],
    dimension: "measures.height",
    pitchDimension: "stitching.pitch",
    ...over,
  });
