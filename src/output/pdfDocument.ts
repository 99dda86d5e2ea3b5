// The one file that knows pdfkit from inside: an empty document with its settings, its layers, its end.
import PDFDocument from "pdfkit";
import { toBytes } from "pdfkit/output";
import type { Layer } from "../picture/picture.ts";
import { steady } from "../picture/words.ts";

export type PdfOptions = {
  /** The embedded fonts, as TrueType files. */
  readonly font: Uint8Array;
  readonly bold: Uint8Array;
  readonly title: string;
  readonly subject?: string;
  /** The order's hash: two orders with the same title still get different file identifiers. */
  readonly id: string;
};

/** Points to a millimetre. */
export const PT_PER_MM = 72 / 25.4;

/** Longest side of a page, 200 in, that readers take (ISO 32000-1, annex C.2; from memory). */
const LONGEST_PAGE_PT = 14400;

/** The same for every file: the same order gives the same bytes, today and next year. */
const DATE = new Date(Date.UTC(2000, 0, 1));

type Reference = { readonly data: Record<string, unknown>; end(): void };
type Inside = {
  readonly _root: Reference;
  readonly page: { readonly resources: Reference };
  ref(data: Record<string, unknown>): Reference;
  endMetadata(): void;
};

export type Pdf = { readonly doc: PDFKit.PDFDocument; readonly layers: ReadonlyMap<Layer, Reference> };

const inside = (doc: PDFKit.PDFDocument): Inside => doc as unknown as Inside;

/** A PDF name must not be a script's text, and pdfkit writes plain strings as names. */
const words = (text: string): string => new String(text) as string;

/** Tells viewers and printers not to scale, and to take paper of the page's size (ISO 32000-1, table 150). */
function setViewer(doc: PDFKit.PDFDocument): void {
  const { _root, ref } = inside(doc);
  _root.data.ViewerPreferences = ref.call(doc, {
    PrintScaling: "None",
    PickTrayByPDFSize: true,
    DisplayDocTitle: true,
  });
}

/** One layer for each meaning, all shown (ISO 32000-1, 8.11: optional content). */
function addLayers(doc: PDFKit.PDFDocument, names: readonly Layer[]): ReadonlyMap<Layer, Reference> {
  const { _root } = inside(doc);
  const groups = names.map((name): [Layer, Reference] => {
    return [name, inside(doc).ref({ Type: "OCG", Name: words(name) })];
  });
  const all = groups.map(([, group]) => group);
  if (all.length > 0) _root.data.OCProperties = { OCGs: all, D: { Order: all, ON: all, OFF: [] } };
  return new Map(groups);
}

/** An empty document, without pages, with the layers it will use. */
export function openPdf(options: PdfOptions, layers: readonly Layer[]): Pdf {
  const info = {
    Title: steady(options.title),
    ...(options.subject === undefined ? {} : { Subject: steady(options.subject) }),
    Creator: "Whittaw",
    CreationDate: DATE,
    ModDate: DATE,
    Order: options.id,
  };
  const settings = { autoFirstPage: false, compress: false, pdfVersion: "1.7", lang: "en", font: null, info };
  const doc = new PDFDocument(settings as unknown as PDFKit.PDFDocumentOptions);
  // pdfkit would write the title a second time as XML, unescaped.
  inside(doc).endMetadata = () => {};
  doc.registerFont("regular", options.font);
  doc.registerFont("bold", options.bold);
  setViewer(doc);
  return { doc, layers: addLayers(doc, layers) };
}

/** A page of exactly this size, mm. Throws when it is larger than readers take: layout must not ask it. */
export function addPage({ doc }: Pdf, width: number, height: number): void {
  const size: [number, number] = [width * PT_PER_MM, height * PT_PER_MM];
  if (Math.max(...size) > LONGEST_PAGE_PT)
    throw new Error(`pdf: a page of ${width} × ${height} mm is too large`);
  doc.addPage({ size, margin: 0 });
}

/** What is drawn in `draw` belongs to the layer. */
export function onLayer({ doc, layers }: Pdf, layer: Layer, draw: () => void): void {
  const { data } = inside(doc).page.resources;
  const known = (data.Properties ?? {}) as Record<string, unknown>;
  data.Properties = { ...known, [`layer_${layer}`]: layers.get(layer) };
  doc.addContent(`/OC /layer_${layer} BDC`);
  draw();
  doc.addContent("EMC");
}

/** Ends the document and gives its bytes. */
export async function closePdf({ doc, layers }: Pdf): Promise<Uint8Array> {
  const bytes = toBytes(doc);
  for (const group of layers.values()) group.end();
  doc.end();
  return bytes;
}
