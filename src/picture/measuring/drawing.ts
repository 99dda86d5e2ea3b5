// A drawing of what is measured: sketches side by side, the arrows on them, and the words beside them.
import { type Box, type Point, rectanglePath } from "../../geometry/path.ts";
import { plus, scaled } from "../../geometry/vector.ts";
import type { Item, Stroke, Words } from "../picture.ts";
import { type Arrow, arrowItems } from "./arrow.ts";
import { LEADING, words } from "./block.ts";
import { type Lay, type SketchLine, sketchStrokes } from "./sketch.ts";

/** One sketch in the drawing. */
export type View = {
  readonly lines: readonly SketchLine[];
  /** Where the sketch's origin lies in the drawing, mm, and how many mm one of its units is. */
  readonly at: Point;
  readonly scale: number;
  /** A framed view shows only what lies in this box of the drawing, mm. */
  readonly window?: Box;
};

/** A few words in the drawing, in lines; their size isn't scaled. */
export type Label = {
  readonly lines: readonly string[];
  /** The first base line, in the drawing, mm. */
  readonly at: Point;
  readonly align: Words["align"];
};

/** What is to be said beside the numbers, e.g. from where the tape was held. */
export type Ask = { readonly question: string; readonly choices: readonly string[] };

/** What is asked in words and not measured: a row of its own, without boxes for numbers. */
export type Question = {
  /** Its name in an order; a measure of that name becomes this question. */
  readonly measure: string;
  readonly how: string;
  readonly choices: readonly string[];
  /** Before a line to write on, for what isn't among the choices. */
  readonly other?: string;
};

export type MeasureDrawing = {
  /** Size at full scale, mm; smaller paper shrinks the drawing, larger paper enlarges it. */
  readonly width: number;
  readonly height: number;
  readonly views: readonly View[];
  /** By measure: on which view it lies (counted from 0), and where. */
  readonly arrows: Readonly<Record<string, Arrow & { readonly view: number }>>;
  readonly labels: readonly Label[];
  /** What to know before one begins. */
  readonly notes: readonly string[];
  /** What the boxes to write in are for. */
  readonly boxes: readonly string[];
  /** By measure: what to tick. */
  readonly asks: Readonly<Record<string, Ask>>;
  /** Asked below the measures. */
  readonly questions?: readonly Question[];
};

const LABEL_SIZE_MM = 3.2;

/** Where a drawing lies on the page: its lower left corner, and its scale. */
export type Place = { readonly corner: Point; readonly scale: number };

const onPage = (point: Point, { corner, scale }: Place): Point => plus(corner, scaled(point, scale));

const layOf = (view: View, place: Place): Lay => ({
  scale: view.scale * place.scale,
  to: (point) => onPage(plus(view.at, scaled(point, view.scale)), place),
});

/** A framed view is cut off at its frame, which is drawn before it to clear the ground, and again over it. */
function viewItems(view: View, place: Place): readonly Item[] {
  const lay = layOf(view, place);
  const strokes = view.lines.flatMap((line) => sketchStrokes(line, lay));
  if (!view.window) return strokes;
  const { minX, minY, maxX, maxY } = view.window;
  const [low, high] = [onPage([minX, minY], place), onPage([maxX, maxY], place)];
  const path = rectanglePath(low, high[0] - low[0], high[1] - low[1]);
  const frame: Stroke = { kind: "stroke", layer: "mark", line: "01.1", path };
  const clip: Box = { minX: low[0], minY: low[1], maxX: high[0], maxY: high[1] };
  return [
    { ...frame, fill: "white" },
    { kind: "group", placement: { at: [0, 0], angle: 0 }, clip, items: strokes },
    frame,
  ];
}

function labelWords({ lines, at, align }: Label, place: Place): readonly Words[] {
  const [x, y] = onPage(at, place);
  return lines.map((text, i) => words(text, [x, y - i * LEADING * LABEL_SIZE_MM], LABEL_SIZE_MM, { align }));
}

/**
 * The drawing with the arrows of these measures, numbered from 1 in their order. A measure that the
 * drawing doesn't know keeps its number and has no arrow.
 */
export function drawingItems(
  drawing: MeasureDrawing,
  measures: readonly string[],
  place: Place,
): readonly Item[] {
  const arrows = measures.flatMap((measure, i) => {
    const arrow = drawing.arrows[measure];
    return arrow ? arrowItems(arrow, i + 1, layOf(drawing.views[arrow.view]!, place)) : [];
  });
  return [
    ...drawing.views.flatMap((view) => viewItems(view, place)),
    ...arrows,
    ...drawing.labels.flatMap((label) => labelWords(label, place)),
  ];
}
