// A sketch: what a drawing consists of, as data in units of its own, and how it becomes strokes.
import { arc, circlePath, closedPath, line, type Path, type Point, polyline } from "../../geometry/path.ts";
import type { LineType, Stroke } from "../picture.ts";
import { type Nib, penned, smooth, smoothLoop } from "./pen.ts";

/** Strengths of pen lines, mm: outlines, what lies within them, and wrinkles. Their breadth isn't scaled. */
const NIBS = {
  bold: { start: 0.2, full: 0.6, end: 0.2 },
  plain: { start: 0.12, full: 0.44, end: 0.12 },
  fine: { start: 0.1, full: 0.32, end: 0.1 },
} as const satisfies Record<string, Nib>;

/** One thing drawn, in the sketch's units, y up; later ones lie on top. */
export type SketchLine =
  /** A smooth pen line through the points. */
  | { readonly kind: "pen"; readonly nib: keyof typeof NIBS; readonly points: readonly Point[] }
  /** A smooth loop filled black. */
  | { readonly kind: "blot"; readonly points: readonly Point[] }
  /** A white shape in thin lines that hides what lies below: smooth runs, each from the last one's end. */
  | { readonly kind: "cover"; readonly runs: readonly (readonly Point[])[] }
  /** A round dot, black or white. */
  | { readonly kind: "dot"; readonly fill: "black" | "white"; readonly at: Point; readonly radius: number }
  /** A strap along the points: white between two thin lines. */
  | { readonly kind: "band"; readonly points: readonly Point[]; readonly width: number }
  /** A ring of round wire: the two edges of its wire. */
  | { readonly kind: "ring"; readonly at: Point; readonly radius: number; readonly wire: number }
  /** A closed shape with straight sides, white between thin lines. */
  | { readonly kind: "plate"; readonly points: readonly Point[] }
  /** A level box with rounded corners, white between thin lines. */
  | { readonly kind: "box"; readonly low: Point; readonly high: Point; readonly round: number }
  /** Straight thin lines from point to point. */
  | { readonly kind: "thin"; readonly line: LineType; readonly points: readonly Point[] };

/** Where a sketch lies: a point of it in mm on the page, and how many mm one of its units is. */
export type Lay = { readonly to: (point: Point) => Point; readonly scale: number };

const stroke = (path: Path, more: Partial<Stroke> = {}): Stroke => ({
  kind: "stroke",
  layer: "mark",
  line: "01.1",
  path,
  ...more,
});

const even = (width: number): Nib => ({ start: width, full: width, end: width });

const ringStrokes = (centre: Point, radius: number, wire: number): readonly Stroke[] =>
  [radius + wire / 2, radius - wire / 2].map((r) => stroke(circlePath(centre, r)));

function boxPath([x0, y0]: Point, [x1, y1]: Point, r: number): Path {
  return closedPath(
    [x0 + r, y0],
    [
      line([x1 - r, y0]),
      arc([x1, y0 + r], [x1 - r, y0 + r], true),
      line([x1, y1 - r]),
      arc([x1 - r, y1], [x1 - r, y1 - r], true),
      line([x0 + r, y1]),
      arc([x0, y1 - r], [x0 + r, y1 - r], true),
      line([x0, y0 + r]),
      arc([x0 + r, y0], [x0 + r, y0 + r], true),
    ],
  );
}

const coverPath = (runs: readonly (readonly Point[])[]): Path =>
  closedPath(
    runs[0]![0]!,
    runs.flatMap((run) => smooth(run).segments),
  );

/** The strokes of one line of a sketch. */
export function sketchStrokes(item: SketchLine, { to, scale }: Lay): readonly Stroke[] {
  switch (item.kind) {
    case "pen":
      return [stroke(penned(smooth(item.points.map(to)), NIBS[item.nib]), { fill: "black" })];
    case "blot":
      return [stroke(smoothLoop(item.points.map(to)), { fill: "black" })];
    case "cover":
      return [stroke(coverPath(item.runs.map((run) => run.map(to))), { fill: "white" })];
    case "dot":
      return [stroke(circlePath(to(item.at), item.radius * scale), { fill: item.fill })];
    case "band":
      return [stroke(penned(smooth(item.points.map(to)), even(item.width * scale)), { fill: "white" })];
    case "ring":
      return ringStrokes(to(item.at), item.radius * scale, item.wire * scale);
    case "plate":
      return [stroke(polyline(item.points.map(to), true), { fill: "white" })];
    case "box":
      return [stroke(boxPath(to(item.low), to(item.high), item.round * scale), { fill: "white" })];
    case "thin":
      return [stroke(polyline(item.points.map(to)), { line: item.line })];
  }
}
