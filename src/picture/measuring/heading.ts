// The head of the measuring sheet: what it is for, and lines to fill in.
import type { Point } from "../../geometry/path.ts";
import type { Item } from "../picture.ts";
import { textWidth } from "../words.ts";
import { type Block, rule, stacked, textBlock, words } from "./block.ts";

const TITLE_MM = 6.4;
const MEANS_MM = 3.4;
const FIELD_MM = 3.6;
/** Room for handwriting over a line to fill in, mm. */
const WRITING_MM = 9;
/** Between a field's name and its line, and between fields, mm. */
const AFTER_NAME_MM = 1.6;
const BETWEEN_MM = 4;

/** What is filled in, and its share of the width. */
const FIELDS = [
  { name: "For", share: 0.46 },
  { name: "Date", share: 0.2 },
  { name: "Measured by", share: 0.34 },
] as const;

function fieldItems(name: string, [x, y]: Point, width: number): readonly Item[] {
  const start = textWidth(name, FIELD_MM) + AFTER_NAME_MM;
  return [words(name, [x, y], FIELD_MM), rule([x + start, y - 0.6], width - start)];
}

/** The lines to fill in, side by side. */
function fields(width: number): Block {
  const room = width - BETWEEN_MM * (FIELDS.length - 1);
  return {
    height: WRITING_MM,
    items: ([x, y]) => {
      let left = x;
      return FIELDS.flatMap(({ name, share }) => {
        const items = fieldItems(name, [left, y - WRITING_MM + 1.6], share * room);
        left += share * room + BETWEEN_MM;
        return items;
      });
    },
  };
}

/** Title, what the article is, and for whom, when and by whom it was measured. */
export const heading = (name: string, means: string, width: number): Block =>
  stacked(
    [
      textBlock(`Measuring sheet: ${name}`, { size: TITLE_MM, width, bold: true }),
      textBlock(means, { size: MEANS_MM, width }),
      fields(width),
    ],
    0.6,
  );
