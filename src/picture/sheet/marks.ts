import { type Box, type Point, polyline } from "../../geometry/path.ts";
import type { Sheet } from "../../model/sheet.ts";
import type { Item, Words } from "../picture.ts";
import { findPlace } from "../piece/find.ts";
import { type Chord, insideEdges, type Space, taken } from "../piece/space.ts";
import { stroke } from "../piece/strokes.ts";
import { PLAIN_MM, SMALL_MM } from "../piece/title.ts";
import { textBox, textWidth } from "../words.ts";

// Joining marks: diamonds on the edge of the upper sheet, drawn on both sheets at the same place of the
// plate, so that halves with the same number make one diamond when the sheets are joined.

/** Half a diamond's diagonal, and from its middle to its numbers' middle, mm. */
const HALF_MM = 2.6;
const NUMBER_MM = 5;
const GAP_MM = 0.3;
/** A mark keeps this far from the ends of its edge. */
const END_MM = 6;
/** An edge shorter than this carries one mark. */
const SHORT_EDGE_MM = 50;
/** Marks are wished at these shares of an edge. */
const AT = [0.18, 0.82] as const;

/** An edge of the upper one of two sheets: along x or y, at `at`. */
export type Edge = {
  readonly axis: "x" | "y";
  readonly at: number;
  readonly from: number;
  readonly to: number;
};

/** The edges at which a plate's sheets are joined. A sheet's left and upper edges lie on its neighbours. */
export function edgesOf(sheets: readonly Sheet[]): readonly Edge[] {
  const named = (name: string | undefined): Sheet | undefined => sheets.find((s) => s.name === name);
  return sheets.flatMap((s): readonly Edge[] => {
    const [right, below] = [named(s.joins.right), named(s.joins.below)];
    const w = s.window;
    const beside: readonly Edge[] = right
      ? [
          {
            axis: "y",
            at: right.window.minX,
            from: Math.max(w.minY, right.window.minY),
            to: Math.min(w.maxY, right.window.maxY),
          },
        ]
      : [];
    const under: readonly Edge[] = below
      ? [
          {
            axis: "x",
            at: below.window.maxY,
            from: Math.max(w.minX, below.window.minX),
            to: Math.min(w.maxX, below.window.maxX),
          },
        ]
      : [];
    return [...beside, ...under];
  });
}

const pointOn = ({ axis, at }: Edge, along: number, aside: number): Point =>
  axis === "y" ? [at + aside, along] : [along, at + aside];

function markItems(edge: Edge, along: number, number: number): readonly Item[] {
  const corners = [
    pointOn(edge, along, -HALF_MM),
    pointOn(edge, along - HALF_MM, 0),
    pointOn(edge, along, HALF_MM),
    pointOn(edge, along + HALF_MM, 0),
  ];
  const text = String(number);
  // Three figures are set smaller, and as far off as they need.
  const size = number < 100 ? PLAIN_MM : SMALL_MM;
  const off = Math.max(NUMBER_MM, HALF_MM + GAP_MM + textWidth(text, size, true) / 2);
  const numbers = [-off, off].map((aside): Words => {
    const [x, y] = pointOn(edge, along, aside);
    return {
      kind: "words",
      layer: "text",
      at: [x, y - size * 0.36],
      size,
      text,
      align: "centre",
      angle: 0,
      bold: true,
    };
  });
  return [stroke("sheet", "01.1", polyline(corners, true)), ...numbers];
}

export type Marked = { readonly items: readonly Item[]; readonly space: Space };

const boxOn = (edge: Edge, from: number, to: number, aside: number): Box => {
  const [a, b] = [pointOn(edge, from, -aside), pointOn(edge, to, aside)];
  return { minX: a[0], minY: a[1], maxX: b[0], maxY: b[1] };
};

/** What is drawn on the plate, and the edges of the leather. */
export type MarkGround = { readonly space: Space; readonly leather: readonly Chord[] };

/** Where along an edge a mark crosses nothing, nearest to where it is wished. */
function placeOn(
  edge: Edge,
  from: number,
  to: number,
  wish: number,
  { space, leather }: MarkGround,
): number | undefined {
  const aside = NUMBER_MM + PLAIN_MM;
  const area = boxOn(edge, from, to, aside);
  const size = 2 * HALF_MM + 1;
  const [width, height] = edge.axis === "y" ? [2 * aside, size] : [size, 2 * aside];
  const search = { width, height, areas: [area], near: pointOn(edge, wish, 0), clear: 0.3 };
  // On the paper beside the pieces, where it can be: a template is neater without.
  const off = (b: Box): boolean => !insideEdges(leather, [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2]);
  const box = findPlace(space, { ...search, accept: off }) ?? findPlace(space, search);
  if (!box) return undefined;
  return edge.axis === "y" ? (box.minY + box.maxY) / 2 : (box.minX + box.maxX) / 2;
}

/** Puts marks on an edge, one near either end; numbers go on from `first`. */
function marksOn(
  edge: Edge,
  { space, leather }: MarkGround,
  first: number,
): Marked & { readonly next: number } {
  const length = edge.to - edge.from;
  const [from, to] = [edge.from + END_MM, edge.to - END_MM];
  const halves =
    length < SHORT_EDGE_MM
      ? [[from, to, 0.5]]
      : [
          [from, (from + to) / 2, AT[0]],
          [(from + to) / 2, to, AT[1]],
        ];
  let [now, next] = [space, first];
  const items: Item[] = [];
  for (const [low = 0, high = 0, share = 0] of halves) {
    const along = placeOn(edge, low, high, edge.from + length * share, { space: now, leather });
    if (along === undefined) continue;
    const mark = markItems(edge, along, next++);
    items.push(...mark);
    const aside = NUMBER_MM + PLAIN_MM;
    const words = mark.flatMap((m) => (m.kind === "words" ? [textBox(m)] : []));
    now = taken(now, { boxes: [boxOn(edge, along - HALF_MM, along + HALF_MM, aside), ...words] });
  }
  return { items, space: now, next };
}

/** All marks of a plate, numbered on from `first`. */
export function joiningMarks(
  sheets: readonly Sheet[],
  ground: MarkGround,
  first: number,
): Marked & { readonly next: number } {
  const edges = edgesOf(sheets);
  const lineOf = (e: Edge): Chord => [pointOn(e, e.from, 0), pointOn(e, e.to, 0)];
  return edges.reduce(
    (before, edge) => {
      // A mark's numbers must not lie on another sheet's edge that runs beside it.
      const chords = edges.filter((e) => e.axis !== edge.axis).map(lineOf);
      const space = taken(before.space, { chords });
      const here = marksOn(edge, { space, leather: ground.leather }, before.next);
      return {
        items: [...before.items, ...here.items],
        space: { ...here.space, chords: before.space.chords },
        next: here.next,
      };
    },
    { items: [] as readonly Item[], space: ground.space, next: first },
  );
}
