import { arc, line, openPath, type Path, type Point, rectanglePath } from "../../src/geometry/path.ts";
import type { Gather, InwardFold, Made as MadeBag } from "../../src/model/article.ts";
import type { Values } from "../../src/model/dimension.ts";
import type { Piece, SeamEdge } from "../../src/model/piece.ts";
import { resolve } from "../../src/model/resolve.ts";
import { dimensions } from "../../src/trade/gussetTable.ts";
import { layMates, withSeams } from "../../src/trade/mates.ts";
import { given } from "./quantities.ts";
import { bareJob, barePiece } from "./soundPiece.ts";

// What an article hands to a gusset, and bodies' seams drawn by hand.

export type Made = Values<typeof dimensions>["made"];
export type GussetValues = Values<typeof dimensions>;

const KINDS: Readonly<Record<string, "thickness" | "ratio">> = {
  thickness: "thickness",
  thickest: "thickness",
  bodyThickness: "thickness",
  neutral: "ratio",
  bodyNeutral: "ratio",
};

export const HANDED = {
  thickness: 2,
  thickest: 2,
  neutral: 0.5,
  bodyThickness: 2.5,
  bodyNeutral: 0.5,
  depth: 60,
  height: 180,
  insideWidth: 220,
  baseFold: 8,
  inset: 4,
  allowance: 0,
  flange: 10,
  seamStart: 8,
  sideRun: 130,
};

/** Resolves a gusset's section; `texts` are what the order gives. */
export const resolveGusset = (
  made: Made,
  handed: Partial<typeof HANDED> = {},
  texts: Readonly<Record<string, string>> = {},
) =>
  resolve({
    table: dimensions,
    section: "pieces.gusset",
    label: "gusset",
    given: Object.fromEntries(
      Object.entries(texts).map(([k, text]) => [k, { text, place: { line: 1, column: 1 } }]),
    ),
    handed: {
      made,
      wetMoulded: false,
      ...Object.fromEntries(
        Object.entries({ ...HANDED, ...handed }).map(([k, v]) => [k, given(k, v, KINDS[k] ?? "length")]),
      ),
    },
    units: "mm",
    file: "test.yaml",
  });

export function gussetValues(
  made: Made,
  handed: Partial<typeof HANDED> = {},
  texts: Readonly<Record<string, string>> = {},
): GussetValues {
  const { values, faults } = resolveGusset(made, handed, texts);
  if (!values) throw new Error(JSON.stringify(faults));
  return values;
}

/** Down one side, round two corners of radius r (0: sharp), up the other; `side` and `base` from corner to corner. */
export function uPath(side: number, base: number, r: number): Path {
  const [x, y] = [base / 2, side];
  if (r === 0) return openPath([-x, y], [[-x, 0] as Point, [x, 0] as Point, [x, y] as Point].map(line));
  return openPath(
    [-x, y],
    [
      line([-x, r]),
      arc([-x + r, 0], [-x + r, r], true),
      line([x - r, 0]),
      arc([x, r], [x - r, r], true),
      line([x, y]),
    ],
  );
}

export const edge = (piece: string, path: Path, inset = 4): SeamEdge => ({
  piece,
  id: "gusset",
  path,
  inset,
  breaks: [],
});

/** The piece with stitches laid along its edges, joined to nothing. */
export function stitched(
  piece: Piece,
  edges: readonly SeamEdge[],
  unstitched: readonly string[] = [],
): Piece {
  return edges.reduce((p, e) => {
    const laid = layMates({
      name: e.id,
      sides: [e],
      pitch: 3.6,
      mode: "spread",
      marks: "awl slits",
      markSize: 2,
      stack: 4,
      backStitches: [2, 2],
      dimension: "measures.height",
      pitchDimension: "stitching.pitch",
      unstitched,
    });
    const alone = laid.sides.map((side) => ({
      ...side,
      seams: side.seams.map(({ joins: _, ...seam }) => seam),
    }));
    return withSeams(p, alone);
  }, piece);
}

/** A gusset of the worked case's leather round a body whose seam is drawn in these runs, each stitched. */
export function gatheredJob(runs: readonly Path[], over: Partial<Gather> = {}): MadeBag {
  const edges = runs.map((path, i): SeamEdge => ({ ...edge("front", path), id: `run-${i + 1}` }));
  const body = stitched(
    barePiece("front", rectanglePath([-160, -20], 320, 240), { name: "Front", sections: [] }),
    edges,
  );
  const gusset = barePiece("gusset", rectanglePath([0, -40], 600, 80), { name: "Gusset" });
  const join: Gather = {
    kind: "gather",
    gusset: "gusset",
    body: "front",
    seams: body.seams.map((s) => s.id),
    inset: 4,
    fold: 10,
    thickness: 2,
    wetMoulded: false,
    dimension: "pieces.body.corner-radius",
    ...over,
  };
  return bareJob([body, gusset], { joins: [join] });
}

/** A side gusset's web 60 wide, its edges 6 apart when shut, 200 high, in a bag this wide. */
export function foldingJob(insideWidth: number, over: Partial<InwardFold> = {}): MadeBag {
  const piece = barePiece("side-gusset", rectanglePath([-40, 0], 80, 210), { name: "Side gusset" });
  const join: InwardFold = {
    kind: "inward fold",
    piece: "side-gusset",
    topWidth: 60,
    height: 200,
    apart: 6,
    insideWidth,
    dimension: "pieces.gusset.top-width",
    ...over,
  };
  return bareJob([piece], { joins: [join] });
}
