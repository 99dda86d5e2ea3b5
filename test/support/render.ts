// Pages and drawings as pixels, by renderers that have nothing to do with the engine: pdfjs for PDF, resvg
// for SVG; and rulers to lay on those pixels.
import { writeFileSync } from "node:fs";
import * as canvas from "@napi-rs/canvas";
import { Resvg } from "@resvg/resvg-js";
import pixelmatch from "pixelmatch";
import { PNG } from "pngjs";
import { fontFiles } from "./fonts.ts";

// pdfjs brings a canvas of its own and would take these three from it, which a page of ours then refuses.
Object.assign(globalThis, {
  Path2D: canvas.Path2D,
  DOMMatrix: canvas.DOMMatrix,
  ImageData: canvas.ImageData,
});
const pdfjs = await import("pdfjs-dist/legacy/build/pdf.mjs");

/** Red, green, blue, opacity, one byte each, row by row from the top. */
export type Image = { readonly width: number; readonly height: number; readonly data: Uint8ClampedArray };

export type PdfFile = Awaited<ReturnType<typeof openPdfFile>>;

/** Opens a PDF with pdfjs; close it with `.destroy()` of its loadingTask. */
export async function openPdfFile(bytes: Uint8Array) {
  // pdfjs keeps the bytes it is given, so it gets a copy.
  return pdfjs.getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
}

/** Opens a PDF, hands it over, and closes it. */
export async function withPdf<T>(bytes: Uint8Array, use: (file: PdfFile) => Promise<T>): Promise<T> {
  const file = await openPdfFile(bytes);
  try {
    return await use(file);
  } finally {
    await file.loadingTask.destroy();
  }
}

/** Renders one page of a PDF (counted from 1) on white, without the layers named in `hidden`. */
export async function renderPdfPage(
  bytes: Uint8Array,
  page: number,
  dpi: number,
  hidden: readonly string[] = [],
): Promise<Image> {
  return withPdf(bytes, async (file) => {
    const sheet = await file.getPage(page);
    const viewport = sheet.getViewport({ scale: dpi / 72 });
    const [width, height] = [Math.round(viewport.width), Math.round(viewport.height)];
    const surface = canvas.createCanvas(width, height);
    const context = surface.getContext("2d");
    context.fillStyle = "white";
    context.fillRect(0, 0, width, height);
    const layers = await file.getOptionalContentConfig();
    for (const [id, { name }] of layers) if (hidden.includes(name ?? "")) layers.setVisibility(id, false);
    const target = {
      canvasContext: context,
      viewport,
      optionalContentConfigPromise: Promise.resolve(layers),
    };
    await sheet.render(target as unknown as Parameters<typeof sheet.render>[0]).promise;
    return { width, height, data: context.getImageData(0, 0, width, height).data };
  });
}

/** Renders an SVG text on white, with the engine's fonts alone. */
export function renderSvg(text: string, dpi: number): Image {
  const drawn = new Resvg(text, {
    dpi,
    background: "white",
    font: { fontFiles: [...fontFiles], loadSystemFonts: false, defaultFontFamily: "DejaVu Sans" },
  }).render();
  return { width: drawn.width, height: drawn.height, data: new Uint8ClampedArray(drawn.pixels) };
}

/** Writes an image as a PNG file. */
export function savePng(image: Image, path: string): void {
  const png = new PNG({ width: image.width, height: image.height });
  png.data.set(image.data);
  writeFileSync(path, PNG.sync.write(png));
}

/** Share of pixels in which two images of the same size differ; edges that are only softened differently count too. */
export function differingShare(a: Image, b: Image): number {
  if (a.width !== b.width || a.height !== b.height) return 1;
  return pixelmatch(a.data, b.data, undefined, a.width, a.height, { threshold: 0.1 }) / (a.width * a.height);
}

/** Less than this is paper, not ink. */
const PAPER = 0.02;

/** How dark a pixel is, 0 white to 1 black; outside the image it is white. */
export function darkness({ width, height, data }: Image, x: number, y: number): number {
  if (x < 0 || y < 0 || x >= width || y >= height) return 0;
  const i = (y * width + x) * 4;
  return 1 - (data[i]! + data[i + 1]! + data[i + 2]!) / 765;
}

/** Share of ink over the whole image. */
export function inkShare(image: Image): number {
  let sum = 0;
  for (let y = 0; y < image.height; y += 1)
    for (let x = 0; x < image.width; x += 1) sum += darkness(image, x, y);
  return sum / (image.width * image.height);
}

/** The smallest box round all ink, in pixels from the upper left; undefined on an empty page. */
export function inkBox(image: Image): { minX: number; minY: number; maxX: number; maxY: number } | undefined {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (let y = 0; y < image.height; y += 1) {
    for (let x = 0; x < image.width; x += 1) {
      if (darkness(image, x, y) < PAPER) continue;
      box.minX = Math.min(box.minX, x);
      box.maxX = Math.max(box.maxX, x + 1);
      box.minY = Math.min(box.minY, y);
      box.maxY = Math.max(box.maxY, y + 1);
    }
  }
  return box.maxX < 0 ? undefined : box;
}

/** A line crossed by a ray: its middle and its thickness, in pixels, finer than a pixel. */
export type Crossing = { readonly middle: number; readonly thickness: number };

/** Rows or columns over which a ray is averaged, on either side. */
const BAND = 3;

/**
 * The first line that a ray from an empty place meets, by the centre of gravity of its ink; pixel i
 * covers i to i + 1. Undefined when the ray leaves the image without meeting one.
 */
export function firstLine(
  image: Image,
  x: number,
  y: number,
  [dx, dy]: readonly [number, number],
): Crossing | undefined {
  const ink = (step: number): number => {
    let sum = 0;
    for (let b = -BAND; b <= BAND; b += 1)
      sum += darkness(image, x + dx * step + Math.abs(dy) * b, y + dy * step + Math.abs(dx) * b);
    return sum / (2 * BAND + 1);
  };
  const reach = Math.max(image.width, image.height);
  let step = 0;
  while (step < reach && ink(step) < PAPER) step += 1;
  if (step === reach) return undefined;
  let [sum, moment] = [0, 0];
  for (let v = ink(step); v >= PAPER && step < reach; step += 1, v = ink(step)) {
    sum += v;
    moment += v * step;
  }
  const start = dx === 0 ? y : x;
  return { middle: start + (dx + dy) * (moment / sum) + 0.5, thickness: sum };
}

export type Span = { readonly middles: number; readonly outer: number; readonly inner: number };

/**
 * Measures the frame of lines round an empty place (pixels): from the middles of its lines, from outer
 * to outer and from inner to inner edge, on both axes, in pixels. Throws when a side is missing.
 */
export function measureSquare(
  image: Image,
  inside: readonly [x: number, y: number],
): { readonly x: Span; readonly y: Span } {
  const span = (back: readonly [number, number], forth: readonly [number, number]): Span => {
    const [a, b] = [firstLine(image, ...inside, back), firstLine(image, ...inside, forth)];
    if (!a || !b) throw new Error("measureSquare: no line on one side");
    const middles = b.middle - a.middle;
    const half = (a.thickness + b.thickness) / 2;
    return { middles, outer: middles + half, inner: middles - half };
  };
  return { x: span([-1, 0], [1, 0]), y: span([0, -1], [0, 1]) };
}
