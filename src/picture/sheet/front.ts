import type { Box } from "../../geometry/path.ts";
import { barLengths } from "../../layout/printer.ts";
import type { AssemblyStep, Capacity } from "../../model/article.ts";
import type { Piece } from "../../model/piece.ts";
import type { Units } from "../../model/say.ts";
import type { Layout } from "../../model/sheet.ts";
import { capital } from "../../model/words.ts";
import { printNumber } from "../../units/index.ts";
import type { Item, Picture } from "../picture.ts";
import { blockSize, blockWords, paragraph } from "../piece/block.ts";
import { sayCount, sayCutSize, sayLeather } from "../piece/say.ts";
import { assemblyList, capacityList } from "./article.ts";
import { frontFrame, measuringBars } from "./bars.ts";
import { BODY_MM, evened, type Flowing, flowInto, heading, inset, step, text, together } from "./flow.ts";
import { legend, usedBy } from "./legend.ts";
import { looks } from "./look.ts";
import { sheetMap } from "./map.ts";
import { printerCheckFile } from "./printerCheck.ts";
import { benchWords } from "./terms.ts";
import { type SheetWords, stampItems } from "./words.ts";

// The first sheet: bars to measure, a map, the pieces, what the lines mean, what to do and what to heed.

export type FrontInput = {
  readonly layout: Layout;
  readonly pieces: readonly Piece[];
  readonly words: SheetWords;
  readonly units: Units;
  readonly stamp?: string;
  /** How it is put together, and what it holds, where the article says so. */
  readonly assembly?: readonly AssemblyStep[];
  readonly capacity?: Capacity;
  /** Words that found no room on their piece, by the piece's id. */
  readonly unplaced: ReadonlyMap<string, readonly string[]>;
};

const TITLE_MM = 7;
const COLUMN_GAP_MM = 7;
/** Columns are at least this wide, mm: a line of words is read in one glance. */
const COLUMN_MM = 80;
/** The map takes at most this share of the page's height. */
const MAP_SHARE = 0.3;

/** Every name once, in the order of the sheets: "A1 to A4", "A2". */
function sheetsOf(piece: Piece, layout: Layout): string {
  const names = layout.sheets.filter((s) => s.pieces.includes(piece.id)).map((s) => s.name);
  return names.length < 3 ? names.join(" and ") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

function pieceList({ pieces, layout, units, unplaced }: FrontInput, width: number): readonly Flowing[] {
  const rows = pieces.map((p): Flowing => {
    const notes = [...p.notes, ...(unplaced.get(p.id) ?? [])];
    const once = notes.filter((note, i) => notes.indexOf(note) === i);
    return together([
      text(`${p.name}: ${sayCount(p)}`, width, true),
      inset(`${sayCutSize(p, units)}; ${sayLeather(p, units)}; on ${sheetsOf(p, layout)}`, width, 3),
      ...once.map((note) => inset(note, width, 3)),
    ]);
  });
  return [heading("Pieces"), ...rows];
}

/** What to do about a bar that is off: a correction is reckoned anew from the uncorrected printer check. */
function sayOff({ paper, margin, factor }: Layout, forDie: boolean): string {
  const { x, y } = barLengths(paper, margin);
  if (forDie)
    return "If a bar is off by more than half a millimetre, these sheets are not true: print them on another printer, or ask for sheets that are corrected for yours.";
  if (factor.x === 1 && factor.y === 1)
    return `If a bar is off by more than half a millimetre, make the sheets again with --printed and what the bars measured, as in --printed ${printNumber(x - 0.8, 1)}x${printNumber(y - 0.5, 1)}.`;
  const prints = (length: number, by: number): string => printNumber(length * by, 1);
  return `These sheets are corrected for a printer that prints ${prints(x, factor.x)} for ${printNumber(x, 1)} and ${prints(y, factor.y)} for ${printNumber(y, 1)}. If a bar here is still off, measure ${printerCheckFile(paper)} afresh and make again with --printed.`;
}

function printingSteps({ layout, words }: FrontInput, width: number): readonly Flowing[] {
  const { x, y } = barLengths(layout.paper, layout.margin);
  const joined = layout.sheets.some((s) => s.joins.left || s.joins.above);
  const says = [
    "Print at actual size: no “fit to page”, no scaling.",
    `Before cutting, measure the bars along two edges of this sheet from outer edge to outer edge: ${printNumber(x, 1)} mm and ${printNumber(y, 1)} mm. On every other sheet measure the 50 mm square. ${sayOff(layout, words.die !== undefined)}`,
    ...(joined
      ? [
          "Trim each sheet along the edges that say “trim here”. Lay its edge on the line of the neighbour that it names, so that marks of the same number make one diamond, and glue where it says “glue here”.",
          "On the joined paper measure every length that says “check”. A millimetre off is a joint to be done again.",
        ]
      : []),
    "Every piece is drawn with its grain side up. For “turned over” lay the template face down on the grain side.",
    "Cut through the middle of the thick line.",
  ];
  return [heading("Print, check, join"), ...says.map((s, i) => step(i + 1, s, width))];
}

/** The first caution of every template: rules of the house, whatever the article. */
const MEASURE_FIRST = "Measure the bars and the square before you cut leather: a printer can be wrong.";

const cautionList = ({ words }: FrontInput, width: number): readonly Flowing[] => [
  heading("Take care"),
  ...[MEASURE_FIRST, ...words.cautions].map((c) => text(c, width)),
];

function lookList({ words, pieces }: FrontInput, width: number): readonly Flowing[] {
  const said = looks(words.findings ?? [], pieces, words.die === undefined);
  return said.length === 0 ? [] : [heading("Look here first"), ...said.map((s) => text(s, width))];
}

type Top = { readonly items: readonly Item[]; readonly foot: number };

/** Article, customer, file and the map, over the whole width. */
function topOf(input: FrontInput, frame: ReturnType<typeof frontFrame>): Top {
  const { words, layout, pieces } = input;
  const width = frame.maxX - frame.minX;
  const count = layout.sheets.length;
  const lines = [
    ...paragraph(capital(words.article), TITLE_MM, width, true),
    ...(words.forWhom === "" ? [] : paragraph(`for ${words.forWhom}`, 4.4, width)),
    ...paragraph(
      `${words.die ? capital(words.die.says) : words.file}; ${layout.paper.name} paper: this sheet and ${count} ${count === 1 ? "sheet" : "sheets"} of pieces`,
      BODY_MM,
      width,
    ),
  ];
  const { height } = blockSize(lines);
  const title = blockWords(lines, {
    minX: frame.minX,
    maxX: frame.maxX,
    minY: frame.maxY - height,
    maxY: frame.maxY,
  });
  const map = sheetMap(layout, pieces, width, (frame.maxY - frame.minY) * MAP_SHARE);
  const head = heading(`Where the sheets go (map 1 : ${map.scale})`);
  const top = frame.maxY - height;
  const stamp = stampItems(input.stamp, { x: frame.maxX, y: frame.maxY });
  return {
    items: [
      ...title,
      ...stamp,
      ...head.draw(frame.minX, top),
      ...map.flowing.draw(frame.minX, top - head.height),
    ],
    foot: top - head.height - map.flowing.height,
  };
}

function columnsOf(box: Box): readonly Box[] {
  const whole = box.maxX - box.minX + COLUMN_GAP_MM;
  const count = Math.max(1, Math.floor(whole / (COLUMN_MM + COLUMN_GAP_MM)));
  const step = whole / count;
  return Array.from({ length: count }, (_, i) => ({
    ...box,
    minX: box.minX + i * step,
    maxX: box.minX + (i + 1) * step - COLUMN_GAP_MM,
  }));
}

/** The first sheet, and further ones when its text needs them. */
export function frontPictures(input: FrontInput): readonly Picture[] {
  const { layout } = input;
  const frame = frontFrame(layout);
  const top = topOf(input, frame);
  const [column] = columnsOf(frame);
  const width = column!.maxX - column!.minX;
  const all = [
    ...lookList(input, width),
    ...printingSteps(input, width),
    ...pieceList(input, width),
    ...assemblyList(input.assembly ?? [], width),
    ...(input.capacity ? capacityList(input.capacity, input.units, width) : []),
    ...legend(
      width,
      usedBy(
        input.pieces,
        layout.plates.some((p) => p.placed.some((one) => one.kept)),
        input.words.die?.notches ?? false,
      ),
    ),
    ...benchWords(input.pieces, width),
    ...cautionList(input, width),
  ];
  const columns = columnsOf({ ...frame, maxY: top.foot });
  const first = flowInto(all, evened(all, columns));
  const pages: Picture[] = [
    {
      title: "first sheet",
      width: frame.width,
      height: frame.height,
      items: [...measuringBars(layout), ...top.items, ...first.items],
    },
  ];
  const head = input.words.die ? [text(capital(input.words.die.says), frame.maxX - layout.margin, true)] : [];
  let rest = first.rest;
  while (rest.length > 0) {
    const maxY = frame.maxY - head.reduce((sum, h) => sum + h.height, 0);
    const more = flowInto(rest, columnsOf({ ...frame, maxY, minX: layout.margin, minY: layout.margin }));
    pages.push({
      title: `first sheet, part ${pages.length + 1}`,
      width: frame.width,
      height: frame.height,
      items: [
        ...head.flatMap((h) => h.draw(layout.margin, frame.maxY)),
        ...more.items,
        ...stampItems(input.stamp, { x: frame.maxX, y: layout.margin + 12 }),
      ],
    });
    rest = more.rest;
  }
  return pages;
}
