// Hand-made pieces for the tests of layout and of pictures: plain data, written out by hand, so that no
// formula of the engine stands behind them. Their sizes are invented.
import {
  arc,
  circlePath,
  closedPath,
  cubic,
  line,
  openPath,
  type Path,
  type Point,
  polyline,
  rectanglePath,
  slotPath,
} from "../../src/geometry/path.ts";
import type { Cutout, Fold, Hole, Mark, Piece, SeamLine, Zone } from "../../src/model/piece.ts";

/** A piece with nothing on it but its outline; what is given replaces the rest. */
export function samplePiece(id: string, outline: Path, over: Partial<Piece> = {}): Piece {
  return {
    id,
    name: id.replaceAll("-", " "),
    count: 1,
    hand: "same",
    leather: { kind: "bridle leather", thickness: 3.5, thickest: 3.6 },
    outline,
    corners: [],
    cutouts: [],
    holes: [],
    seams: [],
    folds: [],
    turnBacks: [],
    zones: [],
    marks: [],
    grain: 0,
    straight: false,
    controls: [],
    sizes: [],
    sections: [],
    notes: [],
    ...over,
  };
}

export const roundHole = (id: string, x: number, size = 4, y = 0): Hole => ({
  id,
  kind: "round",
  at: [x, y],
  size,
  angle: 0,
  use: "buckle",
});

/** A straight strap along x from 0, its centre line on y = 0, with an English point at its far end. */
export function strapOutline(length: number, width: number, point = width * 1.1): Path {
  const h = width / 2;
  if (point === 0) return rectanglePath([0, -h], length, width);
  const radius = (point * point + h * h) / (2 * h);
  const shoulder = length - point;
  return closedPath(
    [0, -h],
    [
      line([shoulder, -h]),
      arc([length, 0], [shoulder, radius - h], true),
      arc([shoulder, h], [shoulder, h - radius], true),
      line([0, h]),
    ],
  );
}

/** Stitches along a line, slanted, from x0 to x1 at a height. */
function stitchRow(
  id: string,
  x0: number,
  x1: number,
  y: number,
  pitch: number,
): { seam: SeamLine; holes: Hole[] } {
  const count = Math.round((x1 - x0) / pitch);
  const holes = Array.from(
    { length: count + 1 },
    (_, i): Hole => ({
      id: `${id}.${i + 1}`,
      kind: "awl",
      at: [x0 + i * pitch, y],
      size: 2,
      angle: Math.PI / 4,
      use: "stitch",
    }),
  );
  const path = openPath([x0, y], [line([x1, y])]);
  const seam = {
    id,
    path,
    pitchAsked: pitch,
    pitch,
    stitches: count,
    inset: 2,
    holes: holes.map((h) => h.id),
  };
  return { seam, holes };
}

/** A crown-like strap of 900 mm: punched holes at both ends, a crease, a centre line. */
export function longStrap(id = "crown", length = 900, width = 16, over: Partial<Piece> = {}): Piece {
  const near = Array.from({ length: 7 }, (_, i) => roundHole(`near.${i + 1}`, 90 + i * 19));
  const far = Array.from({ length: 7 }, (_, i) => roundHole(`far.${i + 1}`, length - 90 - i * 19));
  const crease: Mark = {
    id: "crease",
    kind: "crease",
    path: polyline([
      [4, width / 2 - 2.5],
      [length - 20, width / 2 - 2.5],
    ]),
    label: "crease",
  };
  return samplePiece(id, strapOutline(length, width), {
    name: id === "crown" ? "Crown" : id,
    holes: [...near, ...far],
    marks: [crease],
    straight: true,
    controls: [{ from: [0, 0], to: [length, 0], words: "end to tip" }],
    notes: ["Edges creased 2.5 mm in."],
    ...over,
  });
}

const zone = (id: string, kind: Zone["kind"], x0: number, x1: number, half: number, label: string): Zone => ({
  id,
  kind,
  outline: rectanglePath([x0, -half], x1 - x0, half * 2),
  ...(kind === "skive" ? { from: 3.5, to: 2 } : {}),
  label,
});

/** A cheek-like shape of 350 mm: swelled body, a turn-back with a tongue slot at one end, screws at the other. */
export function cheekLike(id = "cheek", over: Partial<Piece> = {}): Piece {
  const outline = closedPath(
    [0, -8],
    [
      line([120, -8]),
      cubic([150, -8], [160, -16], [185, -16]),
      cubic([210, -16], [220, -8], [250, -8]),
      line([350, -8]),
      line([350, 8]),
      line([250, 8]),
      cubic([220, 8], [210, 16], [185, 16]),
      cubic([160, 16], [150, 8], [120, 8]),
      line([0, 8]),
    ],
  );
  const slot: Cutout = {
    id: "tongue-slot",
    use: "tongue slot",
    outline: slotPath([50, 0], 28, 4),
    length: 28,
    width: 4,
  };
  const folds: Fold[] = [
    { id: "top", from: [50, -8], to: [50, 8], label: "fold round the buckle bar" },
    { id: "bit", from: [305, -8], to: [305, 8], label: "fold round the bit ring" },
  ];
  const left = stitchRow("top.left", 70, 100, 5, 3);
  const right = stitchRow("top.right", 70, 100, -5, 3);
  return samplePiece(id, outline, {
    name: "Cheek",
    count: 2,
    hand: "pair",
    cutouts: [slot],
    folds,
    holes: [
      ...left.holes,
      ...right.holes,
      roundHole("bit.front.1", 277, 5),
      roundHole("bit.front.2", 263, 5),
      roundHole("bit.back.1", 333, 5),
      roundHole("bit.back.2", 342, 3),
    ],
    seams: [left.seam, right.seam],
    zones: [
      zone("top-skive", "skive", 0, 30, 8, "skive"),
      zone("bit-skive", "skive", 290, 350, 8, "skive"),
      zone("keeper", "keeper", 78, 88, 8, "keeper"),
    ],
    controls: [{ from: [50, 0], to: [305, 0], words: "fold to fold" }],
    notes: ["Turn-backs are damped before folding."],
    ...over,
  });
}

/** A keeper: a short narrow strip with staple holes. */
export const keeperLike = (id = "keeper", over: Partial<Piece> = {}): Piece =>
  samplePiece(id, rectanglePath([0, -5], 64, 10), {
    name: "Fixed keeper",
    count: 2,
    leather: { kind: "bridle leather", thickness: 2, thickest: 2.1 },
    zones: [zone("lap-a", "skive", 0, 10, 5, "skive"), zone("lap-b", "skive", 54, 64, 5, "skive")],
    ...over,
  });

/** A bag panel: round lower corners, stitched on three sides, a tooling zone inside. */
export function panel(id = "panel", width = 400, height = 300, over: Partial<Piece> = {}): Piece {
  const r = 40;
  const [w, h] = [width, height];
  const outline = closedPath(
    [r, 0],
    [
      line([w - r, 0]),
      arc([w, r], [w - r, r], true),
      line([w, h]),
      line([0, h]),
      line([0, r]),
      arc([r, 0], [r, r], true),
    ],
  );
  const inset = 4;
  const seam = openPath(
    [inset, h - 6],
    [
      line([inset, r]),
      arc([r, inset], [r, r], true),
      line([w - r, inset]),
      arc([w - inset, r], [w - r, r], true),
      line([w - inset, h - 6]),
    ],
  );
  const side = (x: number, tag: string): Hole[] =>
    Array.from({ length: Math.floor((h - 6 - r) / 4) + 1 }, (_, i) => ({
      id: `side.${tag}.${i + 1}`,
      kind: "awl" as const,
      at: [x, h - 6 - i * 4] as Point,
      size: 2.4,
      angle: Math.PI / 4,
      use: "stitch",
    }));
  return samplePiece(id, outline, {
    name: "Front",
    leather: { kind: "bag leather", thickness: 2, thickest: 2.2 },
    holes: [
      ...side(inset, "left"),
      ...side(w - inset, "right"),
      { ...roundHole("stud", w / 2, 5, h * 0.7), use: "stud" },
    ],
    seams: [{ id: "side", path: seam, pitchAsked: 4, pitch: 4, stitches: 230, inset, holes: [] }],
    zones: [
      {
        id: "tooling",
        kind: "tooling",
        outline: rectanglePath([30, 30], w - 60, h / 2 - 40),
        label: "tooling, 12 × 4 stamps",
      },
    ],
    marks: [
      {
        id: "middle",
        kind: "centre",
        path: polyline([
          [w / 2, 0],
          [w / 2, h],
        ]),
        label: "middle",
      },
    ],
    controls: [{ from: [0, h], to: [w, h], words: "along the top" }],
    grain: Math.PI / 2,
    ...over,
  });
}

/** The smallest thing anybody cuts: a washer of 12 mm. */
export const tinyPiece = (id = "washer", over: Partial<Piece> = {}): Piece =>
  samplePiece(id, circlePath([0, 0], 6), {
    name: "Washer",
    count: 4,
    holes: [{ ...roundHole("middle", 0, 4), use: "screw" }],
    ...over,
  });

/** An ear-piece-like band: a bow with a tab at each end, hollow in the middle. */
export function bowLike(id = "ear-piece", over: Partial<Piece> = {}): Piece {
  const [outer, inner] = [62, 44];
  const outline = closedPath(
    [outer, 0],
    [
      arc([-outer, 0], [0, 0], true),
      line([-outer, -30]),
      line([-inner, -30]),
      line([-inner, 0]),
      arc([inner, 0], [0, 0], false),
      line([inner, -30]),
      line([outer, -30]),
    ],
  );
  return samplePiece(id, outline, {
    name: "Ear piece",
    cutouts: [
      {
        id: "slot.left",
        use: "strap slot",
        outline: slotPath([-53, -18], 10, 5, Math.PI / 2),
        length: 10,
        width: 5,
      },
      {
        id: "slot.right",
        use: "strap slot",
        outline: slotPath([53, -18], 10, 5, Math.PI / 2),
        length: 10,
        width: 5,
      },
    ],
    ...over,
  });
}

/** The pieces of one headstall, near enough. */
export const sampleHeadstall = (): readonly Piece[] => [
  longStrap(),
  cheekLike(),
  bowLike(),
  keeperLike(),
  keeperLike("running-keeper", { name: "Running keeper" }),
  tinyPiece(),
];
