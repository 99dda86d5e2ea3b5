// A plotter's sheet as an SVG file: one group for each operation, in the order in which they are done.
import type { Operation, OperationName, PlotterSheet } from "../picture/die/plotterSheet.ts";
import { drawable, steady } from "../picture/words.ts";
import { num } from "./number.ts";
import { pathData } from "./svgPath.ts";
import { escapeXml } from "./xml.ts";

/** A hairline, about 0.001 in: drivers of lasers take it for a line to cut. Common practice, no source. */
const HAIRLINE_MM = 0.025;

/** The first has the widths that the sheet was made for; any system has one of the others. */
const FONTS = `font-family="'DejaVu Sans Condensed','DejaVu Sans',Arial,Helvetica,sans-serif"`;

/** Drivers tell operations apart by colour. */
const COLOURS: Readonly<Record<OperationName, string>> = {
  words: "#808080",
  "check-square": "#804000",
  "flesh-skive": "#008080",
  "flesh-glue": "#808000",
  "flesh-notches": "#800080",
  marks: "#0000ff",
  notches: "#ff8000",
  clips: "#a04000",
  "stitch-holes": "#00a000",
  holes: "#ff00ff",
  slots: "#00a0ff",
  outline: "#ff0000",
};

function group({ name, means, paths, words }: Operation, height: number): readonly string[] {
  const colour = COLOURS[name];
  const label = `id="${name}" inkscape:groupmode="layer" inkscape:label="${escapeXml(means)}"`;
  const paint =
    words.length > 0
      ? `fill="${colour}" stroke="none"`
      : `fill="none" stroke="${colour}" stroke-width="${num(HAIRLINE_MM)}"`;
  return [
    `<g ${label} ${paint}>`,
    ...paths.map((path) => `<path d="${pathData(path, height)}"/>`),
    ...words.map(
      ({ at: [x, y], size, text }) =>
        `<text x="${num(x)}" y="${num(height - y)}" font-size="${num(size)}">${escapeXml(drawable(text).text)}</text>`,
    ),
    "</g>",
  ];
}

/**
 * The sheet as the text of an SVG file in millimetres at true size: hairlines, no fill, each operation a group
 * with its name as id and its own colour. The same sheet gives the same text.
 */
export function plotterSvg({ title, width, height, operations }: PlotterSheet): string {
  const size = `width="${num(width)}mm" height="${num(height)}mm" viewBox="0 0 ${num(width)} ${num(height)}"`;
  const lines = [
    `<?xml version="1.0" encoding="UTF-8"?>`,
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape" ${size} ${FONTS}>`,
    `<title>${escapeXml(steady(title))}</title>`,
    ...operations.flatMap((operation) => group(operation, height)),
    "</svg>",
  ];
  return `${lines.join("\n")}\n`;
}
