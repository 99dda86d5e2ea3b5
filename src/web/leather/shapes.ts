import type { PagePiece } from "../../job.ts";

// The kinds of line and word that the page is sent, by their own names.

export type FlatItem = PagePiece["lines"][number];
export type Stroke = Extract<FlatItem["item"], { readonly kind: "stroke" }>;
export type Words = Extract<FlatItem["item"], { readonly kind: "words" }>;
export type Path = Stroke["path"];
export type Point = readonly [x: number, y: number];
export type Box = PagePiece["box"];
export type Part = PagePiece["parts"][number];

export const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

export const isStroke = (item: FlatItem["item"]): item is Stroke => item.kind === "stroke";

/** The line of that id, or undefined. */
export const strokeNamed = (items: readonly FlatItem[], id: string): Stroke | undefined =>
  items.map(({ item }) => item).find((item): item is Stroke => isStroke(item) && item.id === id);

/** The edge that is cut. */
export const outlineOf = (items: readonly FlatItem[]): Stroke | undefined => strokeNamed(items, "outline");

/** The line that a part is drawn by; its ids are those of the lines. */
export const strokeOfPart = (piece: PagePiece, part: string): Stroke | undefined =>
  strokeNamed(piece.lines, part);
