// A picture as an SVG file: millimetres, no scripts, no styles from elsewhere, no references outside.
import { type Clip, type FlatItem, flattenPicture, runsBy } from "../picture/flat.ts";
import { LAYERS } from "../picture/layers.ts";
import type { Picture, Stroke, Words } from "../picture/picture.ts";
import { alignShare, steady, textWidth } from "../picture/words.ts";
import { roundMm } from "../units/round.ts";
import { LINE_STYLES } from "./lineTypes.ts";
import { num } from "./number.ts";
import { pathData } from "./svgPath.ts";
import { escapeXml, idMaker } from "./xml.ts";

/** The embedded PDF font's names, as different systems know them. */
const FONT = `font-family="'DejaVu Sans Condensed','DejaVu Sans',sans-serif" font-stretch="condensed"`;
/** Widths are sums of the letters' own widths, so letters are neither drawn together nor joined. */
const SPACING = `style="font-kerning:none;font-variant-ligatures:none"`;

/** What the writing of one picture carries along: its height, to turn y over, and the ids given out. */
type Sheet = {
  readonly height: number;
  readonly id: (wanted: string) => string;
  readonly clipId: (clip: Clip) => string;
};

const idOf = (item: Stroke | Words, sheet: Sheet): string =>
  item.id === undefined ? "" : ` id="${sheet.id(item.id)}"`;

/** Filled black, a path is drawn exactly as large as it is, without a line round it. */
function paintOf({ line, fill }: Stroke): string {
  if (fill === "black") return ` fill="#000" stroke="none"`;
  const { width, dash } = LINE_STYLES[line];
  const dashes = dash.length === 0 ? "" : ` stroke-dasharray="${dash.map(num).join(" ")}"`;
  return `${fill === "white" ? ` fill="#fff"` : ""} stroke-width="${num(width)}"${dashes}`;
}

const strokeElement = (stroke: Stroke, sheet: Sheet): string =>
  `<path${idOf(stroke, sheet)}${paintOf(stroke)} d="${pathData(stroke.path, sheet.height)}"/>`;

const DEGREES = 180 / Math.PI;

function wordsElement(words: Words, sheet: Sheet): string {
  const width = textWidth(words.text, words.size, words.bold);
  if (width === 0) return "";
  const [x, y] = [num(words.at[0]), num(sheet.height - words.at[1])];
  const turn = num(-words.angle * DEGREES);
  const shift = num(-width * alignShare(words.align));
  const place = `transform="translate(${x} ${y})${turn === "0" ? "" : ` rotate(${turn})`}" x="${shift}" y="0"`;
  const size = `font-size="${num(words.size)}"${words.bold ? ` font-weight="bold"` : ""}`;
  const length = `textLength="${num(width)}" lengthAdjust="spacingAndGlyphs"`;
  return `<text${idOf(words, sheet)} fill="#000" stroke="none" ${place} ${size} ${length}>${escapeXml(words.text)}</text>`;
}

const element = ({ item }: FlatItem, sheet: Sheet): string =>
  item.kind === "stroke" ? strokeElement(item, sheet) : wordsElement(item, sheet);

/** Neighbouring items with the same clips stand in one group a clip. */
function clipped(items: readonly FlatItem[], sheet: Sheet): readonly string[] {
  return runsBy(items, ({ clips }) => clips).flatMap(({ key: clips, run }) => {
    const open = clips.map((clip) => `<g clip-path="url(#${sheet.clipId(clip)})">`);
    return [...open, ...run.map((item) => element(item, sheet)), ...clips.map(() => "</g>")];
  });
}

function layerGroups(items: readonly FlatItem[], sheet: Sheet): readonly string[] {
  return runsBy(items, ({ item }) => item.layer).flatMap(({ key: layer, run }) => [
    `<g id="${layer}" fill="none" stroke="#000" stroke-linejoin="round">`,
    ...clipped(run, sheet),
    "</g>",
  ]);
}

type Clips = { readonly idFor: (clip: Clip) => string; readonly definitions: () => readonly string[] };

/** Gives each different clip an id and remembers its shape. */
function clipShapes(height: number, id: Sheet["id"]): Clips {
  const ids = new Map<string, string>();
  const idFor = (clip: Clip): string => {
    const data = `M${clip.map(([x, y]) => `${num(x)} ${num(height - y)}`).join("L")}Z`;
    if (!ids.has(data)) ids.set(data, id(`clip-${ids.size + 1}`));
    return ids.get(data)!;
  };
  const shape = ([data, clip]: readonly [string, string]): string =>
    `<clipPath id="${clip}"><path d="${data}"/></clipPath>`;
  return { idFor, definitions: () => (ids.size === 0 ? [] : ["<defs>", ...[...ids].map(shape), "</defs>"]) };
}

/**
 * The picture as the text of an SVG file, in millimetres at true size. Each layer is one group whose id
 * is the layer's name, in the order of LAYERS; items keep their ids, made safe and unique. The same
 * picture gives the same text.
 */
export function svg(picture: Picture): string {
  const [width, height] = [roundMm(picture.width), roundMm(picture.height)];
  const id = idMaker(LAYERS);
  const clips = clipShapes(height, id);
  const sheet: Sheet = { height, id, clipId: clips.idFor };
  const groups = layerGroups(flattenPicture(picture), sheet);
  const size = `width="${num(width)}mm" height="${num(height)}mm" viewBox="0 0 ${num(width)} ${num(height)}"`;
  const lines = [
    `<?xml version="1.0" encoding="UTF-8"?>`,
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} xml:space="preserve" ${FONT} ${SPACING}>`,
    `<title>${escapeXml(steady(picture.title))}</title>`,
    ...clips.definitions(),
    ...groups.filter((line) => line !== ""),
    "</svg>",
  ];
  return `${lines.join("\n")}\n`;
}
