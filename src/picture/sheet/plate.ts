import type { Box, Point } from "../../geometry/path.ts";
import { type Placement, placedPoint } from "../../geometry/transform.ts";
import { keptPoint } from "../../layout/draw.ts";
import { outermost } from "../../layout/room.ts";
import type { ControlLength, Piece } from "../../model/piece.ts";
import type { Units } from "../../model/say.ts";
import type { Layout, Placed, Plate, Sheet } from "../../model/sheet.ts";
import type { Group } from "../picture.ts";
import { chordsOf } from "../piece/chords.ts";
import type { Chord } from "../piece/space.ts";
import { pictureOfPiece } from "../piece.ts";
import { roundPoint } from "../round.ts";
import { edgesOf } from "./marks.ts";

/** A piece drawn on its plate, in plate millimetres. */
export type PlatePiece = {
  readonly piece: Piece;
  readonly group: Group;
  readonly lines: readonly Chord[];
  readonly words: readonly Box[];
  /** The piece's outermost edge. */
  readonly edges: readonly Chord[];
  readonly unplaced: readonly string[];
};

/** The placement that undoes one; none is mirrored on a plate. */
function undone({ at, angle }: Placement): Placement {
  const back = placedPoint([-at[0], -at[1]], { at: [0, 0], angle: -angle });
  return { at: back, angle: -angle };
}

export function boxUnder(box: Box, placement: Placement): Box {
  const a = roundPoint(placedPoint([box.minX, box.minY], placement));
  const b = roundPoint(placedPoint([box.maxX, box.maxY], placement));
  return {
    minX: Math.min(a[0], b[0]),
    minY: Math.min(a[1], b[1]),
    maxX: Math.max(a[0], b[0]),
    maxY: Math.max(a[1], b[1]),
  };
}

/** The strips where sheets of a plate overlap. */
function overlapsOf(plate: Plate, overlap: number): readonly Box[] {
  const half = overlap / 2;
  return [
    ...plate.jointsX.map((x) => ({ minX: x - half, maxX: x + half, minY: 0, maxY: plate.height })),
    ...plate.jointsY.map((y) => ({ minX: 0, maxX: plate.width, minY: y - half, maxY: y + half })),
  ];
}

const inBox = ([x, y]: Point, b: Box): boolean => x >= b.minX && x <= b.maxX && y >= b.minY && y <= b.maxY;

/** Control lengths whose ends no single sheet shows. */
function spanning(piece: Piece, placed: Placed, windows: readonly Box[]): readonly ControlLength[] {
  const onPlate = (p: Point): Point | undefined => {
    const drawn = keptPoint(p, placed.kept);
    return drawn && placedPoint(drawn, placed.placement);
  };
  return piece.controls.filter((c) => {
    const [a, b] = [onPlate(c.from), onPlate(c.to)];
    return a && b && !windows.some((w) => inBox(a, w) && inBox(b, w));
  });
}

/**
 * The two ends of every overlap: the edge of the sheet on top, and the end of what the one below shows.
 * Words that cross neither are whole on every sheet that shows any of them.
 */
function stripEdges(sheets: readonly Sheet[], overlap: number): readonly Chord[] {
  return edgesOf(sheets).flatMap(({ axis, at, from, to }): readonly Chord[] =>
    axis === "y"
      ? [at, at + overlap].map(
          (x): Chord => [
            [x, from],
            [x, to],
          ],
        )
      : [at, at - overlap].map(
          (y): Chord => [
            [from, y],
            [to, y],
          ],
        ),
  );
}

function drawPlaced(placed: Placed, piece: Piece, plate: Plate, layout: Layout, units: Units): PlatePiece {
  const sheets = layout.sheets.filter((s) => s.plate === plate.id);
  const windows = sheets.map((s) => s.window);
  const { placement, kept } = placed;
  const back = undone(placement);
  const under = (p: Point): Point => roundPoint(placedPoint(p, back));
  const drawn = pictureOfPiece(piece, {
    units,
    controls: spanning(piece, placed, windows),
    joints: overlapsOf(plate, layout.overlap).map((b) => boxUnder(b, back)),
    windows: windows.map((w) => boxUnder(w, back)),
    edges: stripEdges(sheets, layout.overlap).map(([a, b]): Chord => [under(a), under(b)]),
    reading: placement.angle === 0 ? 0 : -90,
    ...(kept ? { kept } : {}),
  });
  const lay = ([a, b]: Chord): Chord => [
    roundPoint(placedPoint(a, placement)),
    roundPoint(placedPoint(b, placement)),
  ];
  const edges = chordsOf(outermost(piece));
  return {
    piece,
    group: { kind: "group", id: piece.id, placement, items: drawn.items },
    lines: drawn.lines.map(lay),
    words: drawn.words.map((b) => boxUnder(b, placement)),
    edges: kept ? [] : edges.map(lay),
    unplaced: drawn.unplaced,
  };
}

/** Every piece of a plate, drawn once; its sheets show parts of it. */
export function drawPlate(
  plate: Plate,
  pieces: readonly Piece[],
  layout: Layout,
  units: Units,
): readonly PlatePiece[] {
  return plate.placed.map((placed) => {
    const piece = pieces.find((p) => p.id === placed.piece);
    if (!piece) throw new Error(`drawPlate: the layout names ${placed.piece}, which is not among the pieces`);
    return drawPlaced(placed, piece, plate, layout, units);
  });
}
