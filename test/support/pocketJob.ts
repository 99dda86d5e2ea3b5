import {
  arc,
  closedPath,
  line,
  openPath,
  type Path,
  polyline,
  rectanglePath,
} from "../../src/geometry/path.ts";
import type { Piece, SeamEdge, SeamLine } from "../../src/model/piece.ts";
import { layMates, withSeams } from "../../src/trade/mates.ts";
import { stitched } from "./gussets.ts";
import { bareJob, barePiece } from "./soundPiece.ts";

// A front with a pocket on it, all sizes written out by hand.

/** A front 200 by 150 with round lower corners of 30; all its sizes are written out by hand. */
export const outline = closedPath(
  [-100, 150],
  [
    line([-100, 30]),
    arc([-70, 0], [-70, 30], true),
    line([70, 0]),
    arc([100, 30], [70, 30], true),
    line([100, 150]),
  ],
);
export const seam = (id: string, path: Path, over: Partial<SeamLine> = {}): SeamLine => ({
  id,
  path,
  pitchAsked: 4,
  pitch: 4,
  stitches: 10,
  inset: 4,
  holes: [],
  ...over,
});
export const side = seam(
  "edge",
  openPath(
    [-96, 145],
    [
      line([-96, 30]),
      arc([-70, 4], [-70, 30], true),
      line([70, 4]),
      arc([96, 30], [70, 30], true),
      line([96, 145]),
    ],
  ),
  { joins: "front to gusset: edge" },
);

export type Pocket = { readonly x?: number; readonly y: number; readonly w: number; readonly h: number };
/** A square-cornered pocket about x, its base at y, its seam 3 inside its edge. */
export const pocketSeam = ({ x = 0, y, w, h }: Pocket): SeamLine =>
  seam(
    "pocket",
    polyline([
      [x + 3 - w / 2, y + h - 3],
      [x + 3 - w / 2, y + 3],
      [x + w / 2 - 3, y + 3],
      [x + w / 2 - 3, y + h - 3],
    ]),
    { inset: 3, joins: "pocket to front: start to end" },
  );
export const place = ({ x = 0, y, w, h }: Pocket): Piece["marks"][number] => ({
  id: "pocket.place",
  kind: "place",
  path: rectanglePath([x - w / 2, y], w, h),
  label: "pocket",
});

export const pocketJob = (p: Pocket, over: Partial<Piece> = {}, marked = true) =>
  bareJob([
    barePiece("front", outline, {
      seams: [side, pocketSeam(p)],
      marks: marked ? [place(p)] : [],
      ...over,
    }),
    // The pocket's own side of the seam lies at its own edge, and is none of this rule's business.
    barePiece("pocket", rectanglePath([-p.w / 2, 0], p.w, p.h), {
      seams: [{ ...pocketSeam({ ...p, x: 0, y: 0 }), joins: "pocket to front: start to end" }],
    }),
  ]);

/** The same, its stitches laid and joined as a maker's would be. */
export function sewnPocketJob(p: Pocket) {
  const edge = (piece: string, id: string, path: Path, inset: number): SeamEdge => ({
    piece,
    id,
    path,
    inset,
    breaks: [],
  });
  const laid = layMates({
    name: "pocket to front",
    sides: [
      edge("pocket", "pocket", pocketSeam({ ...p, x: 0, y: 0 }).path, 3),
      edge("front", "pocket", pocketSeam(p).path, 3),
    ],
    pitch: 4,
    mode: "spread",
    marks: "awl slits",
    markSize: 2.5,
    stack: 4,
    backStitches: [2, 2],
    dimension: "pieces.pocket.height",
    pitchDimension: "stitching.pitch",
  });
  const front = stitched(barePiece("front", outline, { marks: [place(p)] }), [
    edge("front", "edge", side.path, 4),
  ]);
  const pocket = barePiece("pocket", rectanglePath([-p.w / 2, 0], p.w, p.h));
  return bareJob(
    [front, pocket].map((piece) => withSeams(piece, laid.sides)),
    {
      joins: laid.joins,
      assembly: [{ name: "pocket to front", does: "stitch", after: [], reaches: [], shuts: [] }],
    },
  );
}
