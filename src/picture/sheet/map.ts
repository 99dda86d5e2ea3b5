import { unionBox } from "../../geometry/bounds.ts";
import {
  type Box,
  type Path,
  type Point,
  polyline,
  rectanglePath,
  SAME_POINT_MM,
} from "../../geometry/path.ts";
import { placed as laid, moved } from "../../geometry/transform.ts";
import { apart } from "../../geometry/vector.ts";
import { drawnBounds } from "../../layout/room.ts";
import type { Piece } from "../../model/piece.ts";
import type { Layout, Placed, Plate, Sheet } from "../../model/sheet.ts";
import type { Item, Stroke, Words } from "../picture.ts";
import { blockBox, blockWords } from "../piece/block.ts";
import { breakLine } from "../piece/breaks.ts";
import { chordsOf, keptChords } from "../piece/chords.ts";
import { findPlace } from "../piece/find.ts";
import { type Chord, crossesNoBox, grownBy, outsideBox, type Space, spaceOf } from "../piece/space.ts";
import { stroke } from "../piece/strokes.ts";
import { textBox } from "../words.ts";
import type { Flowing } from "./flow.ts";
import { scaledPath } from "./scale.ts";

// The small map of the whole: which sheet goes where.

/** 1 : n, the largest that fits is taken. */
const SCALES = [5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50] as const;
const GAP_MM = 5;
const NAME_SIZES_MM = [4, 3, 2.4] as const;
const NAME_CLEAR_MM = 0.4;

/** The part of a sheet that is seen when the sheets are joined: up to the middle of each overlap. */
function seen({ window, joins }: Sheet, overlap: number): Box {
  const half = overlap / 2;
  return {
    minX: window.minX + (joins.left ? half : 0),
    maxX: window.maxX - (joins.right ? half : 0),
    minY: window.minY + (joins.below ? half : 0),
    maxY: window.maxY - (joins.above ? half : 0),
  };
}

/** Chords that follow each other, as paths. */
function joined(chords: readonly Chord[]): readonly Path[] {
  const runs: Point[][] = [];
  for (const [from, to] of chords) {
    const run = runs.at(-1);
    const end = run?.at(-1);
    if (run && end && apart(end, from) < SAME_POINT_MM) run.push(to);
    else runs.push([from, to]);
  }
  return runs.map((run) => polyline(run));
}

/** Half the height of a break's zigzag, and how far it passes a strap's edges, on the map, mm. */
const BREAK_MM = { zigzag: 0.7, beyond: 1 } as const;

type Drawn = { readonly outlines: readonly Path[]; readonly breaks: readonly Path[] };

/** A piece's outline on its plate; of a strap printed ends only the stretches, and the breaks between. */
function drawnOf({ kept, placement }: Placed, piece: Piece, scale: number): Drawn {
  if (!kept) return { outlines: [laid(piece.outline, placement)], breaks: [] };
  const { minY, maxY } = drawnBounds(piece, kept);
  const ends = kept
    .slice(1)
    .flatMap(([from, , moved], i) => [kept[i]![1] - kept[i]![2], from - moved])
    .map((x) =>
      breakLine(x, minY, maxY, { zigzag: BREAK_MM.zigzag * scale, beyond: BREAK_MM.beyond * scale }),
    );
  return {
    outlines: joined(keptChords(chordsOf(piece.outline), kept)).map((p) => laid(p, placement)),
    breaks: ends.map((p) => laid(p, placement)),
  };
}

const boxPath = (b: Box) => rectanglePath([b.minX, b.minY], b.maxX - b.minX, b.maxY - b.minY);

const onMap = (b: Box, scale: number, at: Point): Box => ({
  minX: b.minX / scale + at[0],
  minY: b.minY / scale + at[1],
  maxX: b.maxX / scale + at[0],
  maxY: b.maxY / scale + at[1],
});

/** A sheet's name in its place on the map: clear of outlines where it can be, else low in the middle. */
function nameIn(name: string, cell: Box, space: Space): readonly Words[] {
  const near: Point = [(cell.minX + cell.maxX) / 2, cell.minY];
  for (const size of NAME_SIZES_MM) {
    const block = [{ text: name, size, bold: true }];
    const inner = grownBy(cell, -2 * NAME_CLEAR_MM);
    const box = findPlace(space, { ...blockBox(block, 0), areas: [inner], near, clear: NAME_CLEAR_MM });
    if (box) return blockWords(block, box);
  }
  const block = [{ text: name, size: NAME_SIZES_MM.at(-1)!, bold: true }];
  const { width, height } = blockBox(block, 0);
  const low = cell.minY + NAME_CLEAR_MM;
  return blockWords(block, {
    minX: near[0] - width / 2,
    maxX: near[0] + width / 2,
    minY: low,
    maxY: low + height,
  });
}

/** A line, interrupted where a name stands on it: low plates leave no room beside. */
function interrupted(outline: Stroke, names: readonly Box[]): readonly Stroke[] {
  const space = spaceOf([], names);
  const chords = chordsOf(outline.path);
  if (chords.every((c) => crossesNoBox(space, c))) return [outline];
  const bits = names.reduce<readonly Chord[]>(
    (rest, name) => rest.flatMap((c) => outsideBox(c, name)),
    chords,
  );
  return bits.map((bit) => stroke(outline.layer, outline.line, polyline(bit)));
}

function plateItems(
  plate: Plate,
  pieces: readonly Piece[],
  layout: Layout,
  scale: number,
  at: Point,
): readonly Item[] {
  const by = { x: 1 / scale, y: 1 / scale };
  const sheets = layout.sheets.filter((s) => s.plate === plate.id);
  const frames = sheets.map((s) =>
    stroke("sheet", "01.1", moved(scaledPath(boxPath(seen(s, layout.overlap)), by), at)),
  );
  const outlines = plate.placed.flatMap((p) => {
    const drawn = drawnOf(p, pieces.find((one) => one.id === p.piece)!, scale);
    const onPaper = (line: "01.1" | "01.2") => (path: Path) =>
      stroke("sheet", line, moved(scaledPath(path, by), at));
    return [...drawn.outlines.map(onPaper("01.2")), ...drawn.breaks.map(onPaper("01.1"))];
  });
  const space = spaceOf(outlines.flatMap((o) => chordsOf(o.path)));
  const names = sheets.flatMap((s) => nameIn(s.name, onMap(seen(s, layout.overlap), scale, at), space));
  const boxes = names.map((w) => grownBy(textBox(w), NAME_CLEAR_MM));
  return [...[...frames, ...outlines].flatMap((o) => interrupted(o, boxes)), ...names];
}

type Spot = { readonly plate: Plate; readonly x: number; readonly y: number };

/** Plates side by side, in rows; undefined when they don't fit the width or the height. */
function arrangedAt(
  plates: readonly Plate[],
  scale: number,
  width: number,
  height: number,
): readonly Spot[] | undefined {
  const spots: Spot[] = [];
  let [x, y, row] = [0, 0, 0];
  for (const plate of plates) {
    const [w, h] = [plate.width / scale, plate.height / scale];
    if (x > 0 && x + w > width) [x, y, row] = [0, y + row + GAP_MM, 0];
    if (w > width) return undefined;
    spots.push({ plate, x, y });
    [x, row] = [x + w + GAP_MM, Math.max(row, h)];
  }
  return y + row <= height ? spots : undefined;
}

/** The map, as large as fits a width and a height, with its scale. */
export function sheetMap(
  layout: Layout,
  pieces: readonly Piece[],
  width: number,
  height: number,
): { readonly scale: number; readonly flowing: Flowing } {
  const scale = SCALES.find((s) => arrangedAt(layout.plates, s, width, height)) ?? SCALES.at(-1)!;
  const spots =
    arrangedAt(layout.plates, scale, width, height) ??
    arrangedAt(layout.plates, scale, width, Number.POSITIVE_INFINITY) ??
    [];
  const boxes = spots.map(({ plate, x, y }) => ({
    minX: x,
    minY: -y - plate.height / scale,
    maxX: x + plate.width / scale,
    maxY: -y,
  }));
  const used = boxes.length > 0 ? -unionBox(boxes).minY : 0;
  return {
    scale,
    flowing: {
      height: used + 3,
      draw: (left, top) =>
        spots.flatMap(({ plate, x, y }) =>
          plateItems(plate, pieces, layout, scale, [left + x, top - 2 - y - plate.height / scale]),
        ),
    },
  };
}
