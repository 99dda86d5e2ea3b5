// A small sound job with a mated seam, a riveted tab, a slot beside a bend and an order of putting together,
// made by hand: no formula of the engine stands behind its sizes.
import { rectanglePath, slotPath } from "../../src/geometry/path.ts";
import type { AssemblyStep, FixedJoin, Made, SeamJoin } from "../../src/model/article.ts";
import type { Fold, Piece } from "../../src/model/piece.ts";
import { bareJob, barePiece, punched, stitched } from "./soundPiece.ts";

const RUN = "front to gusset: edge";

/** The front's or the gusset's half of the seam: 25 stitches, 5 mm from the edge, `length` long. */
const half = (y: number, length: number) =>
  stitched("edge", 10, y, 25, length / 25, { joins: RUN, inset: 5, pitchAsked: 4 });

export const seamFront = (length = 100): Piece => {
  const row = half(5, length);
  return barePiece("front", rectanglePath([0, 0], 120, 60), {
    leather: { kind: "body", thickness: 2, thickest: 2.1 },
    seams: [row.seam],
    holes: [...row.holes, punched("tab.1", [40, 30], 3, "rivet"), punched("tab.2", [60, 30], 3, "rivet")],
  });
};

/** Bent by a right angle round 1 mm: it takes (π/2) (1 + 1) = 3.1416 mm of the flat, 1.5708 on each side. */
export const gussetFold: Fold = {
  id: "flange",
  from: [0, 28],
  to: [120, 28],
  label: "fold",
  bend: { inner: 1, angle: Math.PI / 2, thickness: 2, neutral: 0.5, inside: "flesh" },
};

export const seamGusset = (length = 100): Piece => {
  const row = half(35, length);
  return barePiece("gusset", rectanglePath([0, 0], 120, 40), {
    leather: { kind: "gusset", thickness: 2, thickest: 2.1 },
    seams: [row.seam],
    holes: row.holes,
    folds: [gussetFold],
    cutouts: [{ id: "slot", use: "strap slot", outline: slotPath([60, 14], 20, 4), length: 20, width: 4 }],
  });
};

export const seamTab = (): Piece =>
  barePiece("tab", rectanglePath([0, 0], 40, 16), {
    leather: { kind: "strap", thickness: 3, thickest: 3.1 },
    holes: [punched("a", [10, 8], 3, "rivet"), punched("b", [30, 8], 3, "rivet")],
  });

export const seamJoin: SeamJoin = {
  kind: "seam",
  name: RUN,
  sides: [
    { piece: "front", seam: "edge" },
    { piece: "gusset", seam: "edge" },
  ],
  stack: 4,
  backStitches: [2, 2],
  dimension: "measures.height",
};

export const fixedJoin: FixedJoin = {
  kind: "fixed",
  name: "tab to front",
  by: "rivet",
  sides: [
    { piece: "front", holes: ["tab.1", "tab.2"] },
    { piece: "tab", holes: ["a", "b"] },
  ],
  stack: 5,
  dimension: "pieces.strap-tab.rivets",
};

export const step = (name: string, over: Partial<AssemblyStep> = {}): AssemblyStep => ({
  name,
  does: "stitch",
  after: [],
  reaches: [],
  shuts: [],
  ...over,
});

export const soundSteps: readonly AssemblyStep[] = [
  step("tab to front", { does: "rivet", reaches: ["inside of the front"] }),
  step("front to gusset", { after: ["tab to front"], shuts: ["inside of the front"] }),
];

/** The whole, with nothing to find. */
export const soundSeams = (over: Partial<Made> = {}): Made =>
  bareJob([seamFront(), seamGusset(), seamTab()], {
    joins: [seamJoin, fixedJoin],
    assembly: soundSteps,
    ...over,
  });
