// The sizes over all: the length below the view, the width to its left.
import { type Box, type Point, polyline } from "../../geometry/path.ts";
import { minus, plus, scaled, unit } from "../../geometry/vector.ts";
import type { Item, Stroke, Words } from "../picture.ts";
import { blockSize, blockWords } from "../piece/block.ts";
import { arrow, type Dimension, dimensionBeside, dimensionStrokes } from "../piece/dimension.ts";
import { stroke } from "../piece/strokes.ts";
import { PLAIN_MM } from "../piece/title.ts";

/** From the outline to the dimension line, and from there to its words, mm. */
export const OVERALL_MM = 6.5;
const WORDS_MM = 0.8;
/** Two arrows need this much between them, mm; where there is less they come from outside. */
const ARROWS_MM = 8;
const OUTSIDE_MM = 6;

/** The strokes of a dimension, its arrows outside when there is no room between (ISO 129-1, from memory). */
function strokesFor(dimension: Dimension, length: number): readonly Stroke[] {
  const strokes = dimensionStrokes("mark", dimension);
  if (length >= ARROWS_MM) return strokes;
  const along = unit(minus(dimension.lineTo, dimension.lineFrom));
  const outside = (tip: Point, way: Point): readonly Stroke[] => [
    stroke("mark", "01.1", polyline([tip, plus(tip, scaled(way, OUTSIDE_MM))])),
    arrow("mark", tip, scaled(way, -1)),
  ];
  return [
    ...strokes.filter(({ fill }) => fill === undefined),
    ...outside(dimension.lineFrom, scaled(along, -1)),
    ...outside(dimension.lineTo, along),
  ];
}

const half = (a: number, b: number): number => (a + b) / 2;

/** The box of the width's words: turned, left of the line, in the middle. */
function widthBox({ minX, minY, maxY }: Box, text: string): Box {
  const { width, height } = blockSize([{ text, size: PLAIN_MM }]);
  const [right, middle] = [minX - OVERALL_MM - WORDS_MM, half(minY, maxY)];
  return { minX: right - height, maxX: right, minY: middle - width / 2, maxY: middle + width / 2 };
}

/** The words of a width reach this far up and down from the middle of the view. */
export const widthReach = (text: string): number => blockSize([{ text, size: PLAIN_MM }]).width / 2;

function lengthWords({ minX, maxX, minY }: Box, text: string, low: number): readonly Words[] {
  const block = [{ text, size: PLAIN_MM }];
  const { width, height } = blockSize(block);
  const [left, top] = [half(minX, maxX) - width / 2, Math.min(minY - OVERALL_MM, low) - WORDS_MM];
  return blockWords(block, { minX: left, maxX: left + width, minY: top - height, maxY: top });
}

export type Overall = { readonly length: string; readonly width: string };

/** Both dimensions round the box of the outline on paper. The length's line lies at `low`, or lower. */
export function overallItems(box: Box, says: Overall, low: number): readonly Item[] {
  const { minX, minY, maxX, maxY } = box;
  const below = Math.min(minY - OVERALL_MM, low);
  const length = dimensionBeside([minX, minY], [maxX, minY], below - minY);
  const width = dimensionBeside([minX, minY], [minX, maxY], OVERALL_MM);
  return [
    ...strokesFor(length, maxX - minX),
    ...lengthWords(box, says.length, low),
    ...strokesFor(width, maxY - minY),
    ...blockWords([{ text: says.width, size: PLAIN_MM }], widthBox(box, says.width), 90),
  ];
}
