// A paper in words and tables drawn on pages.
import { type Box, polyline } from "../../geometry/path.ts";
import { overSheets, type Sheeted } from "../die/sheeted.ts";
import type { Item, Picture } from "../picture.ts";
import { blockSize, blockWords } from "../piece/block.ts";
import { stroke } from "../piece/strokes.ts";
import { textWidth } from "../words.ts";
import type { BenchDocument, DocumentBlock } from "./document.ts";
import {
  blankLines,
  headingLines,
  itemLines,
  linesOf,
  type Setting,
  stepLines,
  textLines,
  titleLines,
} from "./lines.ts";
import { tableLines } from "./tableLines.ts";

export type PageSize = { readonly width: number; readonly height: number; readonly margin: number };

/** Lines are read with ease up to this width; on a wide roll the rest of the paper isn't used. */
const MOST_WIDTH_MM = 260;
/** A page from a roll is no longer than this. */
const MOST_HEIGHT_MM = 450;
/** Between the page's head and what it holds. */
const BELOW_HEAD_MM = 3;
/** Above a table: below its heading, and below anything else. */
const ABOVE_TABLE_MM = 1.6;
const BETWEEN_TABLES_MM = 5;
/** Half of a thick rule lies outside its line. */
const HALF_RULE_MM = 0.25;

function linesFor(
  block: DocumentBlock,
  before: DocumentBlock | undefined,
  setting: Setting,
): readonly Sheeted[] {
  switch (block.kind) {
    case "heading":
      return headingLines(block.text, setting);
    case "text":
      return textLines(block.text, setting);
    case "table":
      return tableLines(block, setting, before?.kind === "heading" ? ABOVE_TABLE_MM : BETWEEN_TABLES_MM);
    case "steps":
      return block.steps.flatMap((s, i) => stepLines(s, i + 1, setting));
    case "list":
      return block.items.flatMap((item) => itemLines(item, setting));
    case "blanks":
      return block.labels.flatMap((label) => blankLines(label, setting));
  }
}

/** The blocks in parts that each begin a page. */
function pagedParts(blocks: readonly DocumentBlock[]): readonly (readonly DocumentBlock[])[] {
  const parts: DocumentBlock[][] = [[]];
  for (const block of blocks) {
    if (block.kind === "heading" && block.newPage && parts.at(-1)!.length > 0) parts.push([]);
    parts.at(-1)!.push(block);
  }
  return parts;
}

const sayPage = (page: number, of: number): string => `page ${page} of ${of}`;

/** The head of every page: what it is of, beside the page's number, over a rule. */
function pageHead(
  head: string,
  { width, size }: Setting,
): { readonly height: number; readonly draw: (at: Box, page: string) => readonly Item[] } {
  const room = width - textWidth(sayPage(9999, 9999), size) - 4;
  const lines = linesOf(head, { width: room, size });
  const height = lines.length === 0 ? size : blockSize(lines).height;
  const ruled = height + 1;
  const draw = ({ minX, maxX, maxY }: Box, page: string): readonly Item[] => {
    const number = [{ text: page, size }];
    const box = blockSize(number);
    const rule = polyline([
      [minX, maxY - ruled],
      [maxX, maxY - ruled],
    ]);
    return [
      ...(lines.length === 0
        ? []
        : blockWords(lines, { minX, maxX: minX + room, minY: maxY - height, maxY })),
      ...blockWords(number, { minX: maxX - box.width, maxX, minY: maxY - box.height, maxY }),
      stroke("sheet", "01.1", rule),
    ];
  };
  return { height: ruled + HALF_RULE_MM, draw };
}

/**
 * The pages of a paper, mm: as wide as asked, and as high, but on a roll, whose pages end early. Nothing is left
 * out or made smaller: what is too long for a line is folded, and what has no room goes on the next page.
 * Characters that the fonts lack stand as their numbers, and those that only steer others are dropped.
 */
export function benchPictures(paper: BenchDocument, page: PageSize): readonly Picture[] {
  const { width, margin } = page;
  const height = Math.min(page.height, MOST_HEIGHT_MM);
  const [minX, minY, maxY] = [margin + HALF_RULE_MM, margin + HALF_RULE_MM, height - margin - HALF_RULE_MM];
  const room = Math.min(width - 2 * minX, MOST_WIDTH_MM);
  const frame: Box = { minX, maxX: minX + room, minY, maxY };
  const head = pageHead(paper.head, { width: room, size: paper.type });
  const column: Box = { ...frame, maxY: maxY - head.height - BELOW_HEAD_MM };
  const setting: Setting = { width: room, size: paper.type, height: column.maxY - column.minY };
  const top = [...titleLines(paper.title, setting), ...paper.subtitle.flatMap((s) => textLines(s, setting))];
  const sheets = pagedParts(paper.blocks).flatMap((blocks, i) => {
    const lines = blocks.flatMap((block, k) => linesFor(block, blocks[k - 1], setting));
    return overSheets(i === 0 ? [...top, ...lines] : lines, () => [column]);
  });
  return sheets.map((items, i) => ({
    title: `${paper.title}, ${sayPage(i + 1, sheets.length)}`,
    width,
    height,
    items: [...head.draw(frame, sayPage(i + 1, sheets.length)), ...items],
  }));
}
