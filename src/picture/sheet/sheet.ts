import { boundsOf } from "../../geometry/bounds.ts";
import type { Box, Point } from "../../geometry/path.ts";
import { rowLetters } from "../../layout/sheets.ts";
import type { Layout, Sheet } from "../../model/sheet.ts";
import type { Group, Item, Picture } from "../picture.ts";
import { type Block, blockSize, blockWords, paragraph } from "../piece/block.ts";
import { CLEAR_MM, findPlace } from "../piece/find.ts";
import { SMALL_MM } from "../piece/title.ts";
import { withEdges } from "./edges.ts";
import { overLeather, type Page, pageOf, scaleOf, withMore } from "./page.ts";
import type { PlatePiece } from "./plate.ts";
import { RULERS, withRuler } from "./ruler.ts";
import { scaledItems } from "./scale.ts";
import { withSquare, withTicks } from "./square.ts";
import { type SheetWords, STAMP_SIZES_MM, sayCorrection, stampIn, stampSize } from "./words.ts";

/** Height of the sheet's name, mm. */
const NAME_MM = 10;
const NAME_GAP_MM = 2.5;

function facts(
  sheet: Sheet,
  layout: Layout,
  pieces: readonly PlatePiece[],
  words: SheetWords,
): readonly string[] {
  const inRow = layout.sheets.filter((s) => s.row === sheet.row).length;
  const names = pieces.filter((p) => sheet.pieces.includes(p.piece.id)).map((p) => p.piece.name);
  const correction = sayCorrection(layout);
  return [
    ...(words.die ? [words.die.says] : []),
    `row ${rowLetters(sheet.row)}, sheet ${sheet.column + 1} of ${inRow}: ${[...new Set(names)].join(", ")}`,
    words.forWhom === "" ? words.article : `${words.article} for ${words.forWhom}`,
    ...(correction ? [correction] : []),
  ];
}

type Titled = {
  readonly name: Block;
  readonly lines: Block;
  readonly width: number;
  readonly height: number;
};

function titleOf(name: string, said: readonly string[], width: number, size: number): Titled {
  const big: Block = [{ text: name, size: NAME_MM, bold: true }];
  const lines = said.flatMap((text) => paragraph(text, size, width));
  const [a, b] = [blockSize(big), blockSize(lines)];
  return { name: big, lines, width: a.width + NAME_GAP_MM + b.width, height: Math.max(a.height, b.height) };
}

function titleWords(t: Titled, box: Box): readonly Item[] {
  const [a, b] = [blockSize(t.name), blockSize(t.lines)];
  const middle = (box.minY + box.maxY) / 2;
  const x = box.minX + a.width + NAME_GAP_MM;
  return [
    ...blockWords(t.name, {
      minX: box.minX,
      minY: middle - a.height / 2,
      maxX: box.minX + a.width,
      maxY: middle + a.height / 2,
    }),
    ...blockWords(t.lines, {
      minX: x,
      minY: middle - b.height / 2,
      maxX: x + b.width,
      maxY: middle + b.height / 2,
    }),
  ];
}

/** Widths for the lines beside the sheet's name, mm, the most welcome first. */
const WIDTHS_MM = [90, 110, 130, 160, 70, 55, 45] as const;

/** Puts the sheet's name, and what it is part of, in free space, low on the page; else on free leather. */
function withName(page: Page, said: readonly string[]): Page {
  const near: Point = [page.printable.minX, page.printable.minY];
  // Where there is little room, only what comes first is said, and at the least the name.
  for (const lines of [said, said.slice(0, 2), said.slice(0, 1), []]) {
    for (const leather of [false, true]) {
      for (const width of WIDTHS_MM) {
        const t = titleOf(page.sheet.name, lines, width, SMALL_MM);
        const accept = (b: Box): boolean => leather || !overLeather(page, b);
        const box = findPlace(page.space, { ...sizeOf(t), areas: [page.printable], near, accept });
        if (box) return withMore(page, titleWords(t, box), [box]);
      }
    }
  }
  return page;
}

const sizeOf = ({ width, height }: Titled) => ({ width, height });

/** A stamp is kept this clear of everything where it can, mm. */
const AIRY_MM = 4;

/** Puts the stamp on the page, as large as finds room; over free leather rather than not at all. */
function withStamp(page: Page, stamp: string | undefined): Page {
  if (stamp === undefined) return page;
  const near: Point = [
    (page.printable.minX + page.printable.maxX) / 2,
    (page.printable.minY + page.printable.maxY) / 2,
  ];
  for (const [size, clear] of STAMP_SIZES_MM.flatMap((s) => [
    [s, AIRY_MM] as const,
    [s, CLEAR_MM] as const,
  ])) {
    const box = findPlace(page.space, { ...stampSize(stamp, size), areas: [page.printable], near, clear });
    if (box) return withMore(page, stampIn(stamp, size, box), [box]);
  }
  return page;
}

/** The part of the plate on this page, cut off at the window. */
function plateGroup(
  sheet: Sheet,
  layout: Layout,
  pieces: readonly PlatePiece[],
  marks: readonly Item[],
): Group {
  const scale = scaleOf(layout, sheet.landscape);
  const w = sheet.window;
  const items: readonly Item[] = [...pieces.map((p) => p.group), ...marksNear(marks, w)];
  const at: Point = [sheet.origin[0] - w.minX * scale.x, sheet.origin[1] - w.minY * scale.y];
  const clip = {
    minX: w.minX * scale.x,
    minY: w.minY * scale.y,
    maxX: w.maxX * scale.x,
    maxY: w.maxY * scale.y,
  };
  return { kind: "group", placement: { at, angle: 0 }, clip, items: scaledItems(items, scale) };
}

/** Marks that a window shows, if only in part. */
function marksNear(marks: readonly Item[], w: Box): readonly Item[] {
  const reach = 12;
  return marks.filter((m) => {
    if (m.kind === "group") return true;
    const b =
      m.kind === "stroke" ? boundsOf(m.path) : { minX: m.at[0], maxX: m.at[0], minY: m.at[1], maxY: m.at[1] };
    return (
      b.maxX > w.minX - reach && b.minX < w.maxX + reach && b.maxY > w.minY - reach && b.minY < w.maxY + reach
    );
  });
}

/** Puts ruler and square on the page; a shorter ruler when that leaves the square room beside the pieces. */
function withScales(page: Page): Page {
  const { maxX, minY } = page.printable;
  const byRuler: Point = [maxX - 50, minY + 4];
  for (const ruler of RULERS) {
    const both = withSquare(withRuler(page, byRuler, ruler.mm), [maxX - 27, minY + 40]);
    if (both) return both;
  }
  const ruled = withRuler(page, byRuler);
  return withTicks(ruled) ?? ruled;
}

export type SheetTask = {
  readonly layout: Layout;
  /** The pieces of the sheet's plate. */
  readonly pieces: readonly PlatePiece[];
  /** The plate's joining marks, in plate millimetres. */
  readonly marks: readonly Item[];
  readonly words: SheetWords;
  readonly stamp?: string;
};

/** The picture of one sheet, ready to print. */
export function sheetPicture(sheet: Sheet, { layout, pieces, marks, words, stamp }: SheetTask): Picture {
  const here = pieces.filter((p) => sheet.pieces.includes(p.piece.id));
  const near = pieces.filter(
    (p) =>
      here.includes(p) ||
      p.words.some(
        (b) =>
          b.maxX > sheet.window.minX &&
          b.minX < sheet.window.maxX &&
          b.maxY > sheet.window.minY &&
          b.minY < sheet.window.maxY,
      ),
  );
  const page = pageOf(sheet, layout, near, marks, plateGroup(sheet, layout, near, marks));
  const edged = withEdges(page, layout.overlap);
  const named = withStamp(withName(edged, facts(sheet, layout, pieces, words)), stamp);
  const done = withScales(named);
  return {
    title: `sheet ${sheet.name}`,
    width: sheet.page.width,
    height: sheet.page.height,
    items: done.items,
  };
}
