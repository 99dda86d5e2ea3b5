import type { Box, Point } from "../../geometry/path.ts";
import { clipped } from "../../layout/clip.ts";
import { printableBox, sheetFactor } from "../../layout/sheets.ts";
import type { Layout, Sheet } from "../../model/sheet.ts";
import type { Item, Words } from "../picture.ts";
import { chordsOfItems } from "../piece/chords.ts";
import { type Chord, insideOf, type Space, spaceOf, taken } from "../piece/space.ts";
import { roundPoint } from "../round.ts";
import { textBox } from "../words.ts";
import type { PlatePiece } from "./plate.ts";
import type { Scale } from "./scale.ts";

// A page while its sheet is drawn. Plate millimetres become page millimetres by the sheet's window, its
// origin, and the printer's factor.

export type Page = {
  readonly sheet: Sheet;
  /** What is printed of the page. */
  readonly printable: Box;
  /** Page millimetres to a true millimetre. */
  readonly scale: Scale;
  readonly items: readonly Item[];
  readonly space: Space;
  /** Whether a free box lies over leather. */
  readonly inside: (box: Box) => boolean;
  /** The window on the page. */
  readonly window: Box;
};

export function scaleOf(layout: Layout, landscape: boolean): Scale {
  const factor = sheetFactor(layout.factor, landscape);
  return { x: 1 / factor.x, y: 1 / factor.y };
}

/** Where a point of the plate lies on the page. */
export function pointOnPage([x, y]: Point, { window, origin }: Sheet, scale: Scale): Point {
  return roundPoint([origin[0] + (x - window.minX) * scale.x, origin[1] + (y - window.minY) * scale.y]);
}

export function boxOnPage(box: Box, sheet: Sheet, scale: Scale): Box {
  const [a, b] = [
    pointOnPage([box.minX, box.minY], sheet, scale),
    pointOnPage([box.maxX, box.maxY], sheet, scale),
  ];
  return { minX: a[0], minY: a[1], maxX: b[0], maxY: b[1] };
}

const cutBox = (a: Box, b: Box): Box | undefined => {
  const cut = {
    minX: Math.max(a.minX, b.minX),
    minY: Math.max(a.minY, b.minY),
    maxX: Math.min(a.maxX, b.maxX),
    maxY: Math.min(a.maxY, b.maxY),
  };
  return cut.minX < cut.maxX && cut.minY < cut.maxY ? cut : undefined;
};

/** A page with the plate's part on it, nothing else drawn yet. */
export function pageOf(
  sheet: Sheet,
  layout: Layout,
  pieces: readonly PlatePiece[],
  marks: readonly Item[],
  plate: Item,
): Page {
  const scale = scaleOf(layout, sheet.landscape);
  const onPage = (c: Chord): Chord => [pointOnPage(c[0], sheet, scale), pointOnPage(c[1], sheet, scale)];
  const chords = [...pieces.flatMap((p) => p.lines), ...chordsOfItems(marks)]
    .map((c) => clipped(c, sheet.window))
    .filter((c) => c !== undefined);
  const marked = marks.flatMap((m) => (m.kind === "words" ? [textBox(m)] : []));
  const words = [...pieces.flatMap((p) => p.words), ...marked].flatMap((b) => {
    const cut = cutBox(b, sheet.window);
    return cut ? [boxOnPage(cut, sheet, scale)] : [];
  });
  return {
    sheet,
    printable: printableBox(sheet, layout.margin),
    scale,
    items: [plate],
    space: spaceOf(chords.map(onPage), words),
    inside: insideOf(pieces.flatMap((p) => p.edges).map(onPage)),
    window: boxOnPage(sheet.window, sheet, scale),
  };
}

/** The page with more drawn on it; `boxes` are kept free from then on. */
export function withMore(
  page: Page,
  items: readonly Item[],
  boxes: readonly Box[] = [],
  chords: readonly Chord[] = [],
): Page {
  const words = items.flatMap((i) => (i.kind === "words" ? [textBox(i as Words)] : []));
  return {
    ...page,
    items: [...page.items, ...items],
    space: taken(page.space, { boxes: [...boxes, ...words], chords }),
  };
}

/** True when a free box lies over leather that is drawn on this page. */
export function overLeather({ inside, window }: Page, box: Box): boolean {
  const [x, y] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  return x > window.minX && x < window.maxX && y > window.minY && y < window.maxY && inside(box);
}
