// Pictures as a PDF: one page a picture, true size, one layer for each meaning.

import { type Path, type Point, type Segment, withStarts } from "../geometry/path.ts";
import { type Clip, type FlatItem, flattenPicture, runsBy } from "../picture/flat.ts";
import { LAYERS } from "../picture/layers.ts";
import type { LineType, Picture, Stroke, Words } from "../picture/picture.ts";
import { alignShare, textWidth } from "../picture/words.ts";
import { roundMm } from "../units/round.ts";
import * as trig from "../units/trigonometry.ts";
import { arcCubics } from "./curves.ts";
import { LINE_STYLES } from "./lineTypes.ts";
import { addPage, closePdf, onLayer, openPdf, type Pdf, type PdfOptions, PT_PER_MM } from "./pdfDocument.ts";

export type { PdfOptions } from "./pdfDocument.ts";

/** A page while it is drawn: pdfkit's y runs down from the upper edge, so y is turned over here. */
type Page = { readonly doc: PDFKit.PDFDocument; readonly height: number };

const at = ([x, y]: Point, { height }: Page): [number, number] => [x * PT_PER_MM, (height - y) * PT_PER_MM];

function drawSegment(from: Point, segment: Segment, page: Page): void {
  if (segment.kind === "line") {
    page.doc.lineTo(...at(segment.to, page));
    return;
  }
  const cubics = segment.kind === "arc" ? arcCubics(from, segment) : [segment];
  for (const { c1, c2, to } of cubics)
    page.doc.bezierCurveTo(...at(c1, page), ...at(c2, page), ...at(to, page));
}

function layPath(path: Path, page: Page): void {
  page.doc.moveTo(...at(path.start, page));
  for (const { from, segment } of withStarts(path)) drawSegment(from, segment, page);
  if (path.closed) page.doc.closePath();
}

function setLine(line: LineType, { doc }: Page): void {
  const { width, dash } = LINE_STYLES[line];
  doc.lineWidth(width * PT_PER_MM);
  if (dash.length === 0) doc.undash();
  else doc.dash(dash.map((length) => length * PT_PER_MM) as unknown as number, {});
}

/** Filled black, a path is drawn exactly as large as it is, without a line round it. */
function paint({ fill }: Stroke, { doc }: Page): void {
  if (fill === "black") doc.addContent("f");
  else if (fill === "white") doc.addContent("1 g").addContent("B").addContent("0 g");
  else doc.addContent("S");
}

/**
 * Kerning, ligatures and made-up fractions would change widths that are known from the letters alone;
 * accents that stand as characters of their own are still set over their letters.
 */
const FEATURES = {
  kern: false,
  liga: false,
  clig: false,
  calt: false,
  rlig: false,
  frac: false,
  numr: false,
  dnom: false,
};

function drawWords({ text, at: point, size, angle, align, bold }: Words, page: Page): void {
  if (text === "") return;
  const { doc } = page;
  const [cos, sin] = [trig.cos(angle), trig.sin(angle)];
  const left = -textWidth(text, size, bold) * alignShare(align) * PT_PER_MM;
  doc.save().transform(cos, -sin, sin, cos, ...at(point, page));
  doc.font(bold ? "bold" : "regular").fontSize(size * PT_PER_MM);
  doc.text(text, left, 0, {
    lineBreak: false,
    baseline: "alphabetic",
    features: FEATURES as unknown as PDFKit.Mixins.OpenTypeFeatures[],
  });
  doc.restore();
}

function drawItems(items: readonly FlatItem[], page: Page): void {
  let line: LineType | undefined;
  for (const { item } of items) {
    if (item.kind === "words") {
      drawWords(item, page);
      continue;
    }
    if (item.fill !== "black" && item.line !== line) {
      setLine(item.line, page);
      line = item.line;
    }
    layPath(item.path, page);
    paint(item, page);
  }
}

function clipTo(corners: Clip, page: Page): void {
  const [first, ...rest] = corners;
  page.doc.moveTo(...at(first!, page));
  for (const corner of rest) page.doc.lineTo(...at(corner, page));
  page.doc.closePath().clip();
}

/** Everything of one layer; the graphics state is put back after each run of items with the same clips. */
function drawLayer(items: readonly FlatItem[], page: Page): void {
  for (const { key: clips, run } of runsBy(items, (item) => item.clips)) {
    page.doc.save();
    for (const clip of clips) clipTo(clip, page);
    drawItems(run, page);
    page.doc.restore();
  }
}

function drawPage(pdf: Pdf, picture: Picture, items: readonly FlatItem[]): void {
  const [width, height] = [roundMm(picture.width), roundMm(picture.height)];
  const page: Page = { doc: pdf.doc, height };
  addPage(pdf, width, height);
  // Black alone, not mixed from colours, and round corners where lines meet.
  pdf.doc.addContent("0 G 0 g").lineJoin("round");
  for (const { key: layer, run } of runsBy(items, ({ item }) => item.layer))
    onLayer(pdf, layer, () => drawLayer(run, page));
}

/**
 * The pictures as the bytes of a PDF, one page each, at true size; the viewer is told not to scale it.
 * Coordinates keep a millionth of a point. The same pictures and options give the same bytes, in Node
 * and in a browser. Throws when there is no page, or one longer than 5080 mm: that is our own fault.
 */
export async function pdf(pages: readonly Picture[], options: PdfOptions): Promise<Uint8Array> {
  if (pages.length === 0) throw new Error("pdf: needs at least one page");
  const flat = pages.map((picture) => ({ picture, items: flattenPicture(picture) }));
  const used = new Set(flat.flatMap(({ items }) => items.map(({ item }) => item.layer)));
  const file = openPdf(
    options,
    LAYERS.filter((layer) => used.has(layer)),
  );
  for (const { picture, items } of flat) drawPage(file, picture, items);
  return closePdf(file);
}
