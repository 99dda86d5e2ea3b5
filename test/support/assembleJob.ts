import { articles } from "../../src/articles/index.ts";
import type { Join, Made } from "../../src/model/article.ts";
import type { Hole, Piece } from "../../src/model/piece.ts";
import { readOrder } from "../../src/order/read.ts";
import type { Vec } from "./assembleBends.ts";

// What an assembly is made from: the flat pieces as job.json has them, and what was ordered.

export type Flat = {
  readonly pieces: readonly Piece[];
  readonly joins: readonly Join[];
  /** What the order says or leaves to its default, by path. */
  readonly order: ReadonlyMap<string, unknown>;
};

/** How far off something is that should lie on something else, mm. */
export type Off = { readonly what: string; readonly off: number; readonly most: number };

/** Two holes that one stitch or rivet goes through. */
export const HOLES_MM = 0.2;

type Dimensions = readonly { readonly key: string; readonly value?: unknown }[];

/** Without the sizes and how they came about: an assembly must not lean on them. */
function flatOf(made: Pick<Made, "pieces" | "joins">, dimensions: Dimensions): Flat {
  const pieces = made.pieces.map((p) => ({ ...p, sizes: [], sections: [] }));
  const plain = JSON.parse(JSON.stringify({ pieces, joins: made.joins })) as Pick<Flat, "pieces" | "joins">;
  return { ...plain, order: new Map(dimensions.map((d) => [d.key, d.value])) };
}

/** An order's text made; undefined when it contradicts itself. */
export function makeFlat(text: string): Flat | undefined {
  const { order } = readOrder(text, "any.yaml", articles);
  if (!order) return undefined;
  return flatOf(
    order.article.make(order.values),
    order.sections.flatMap((s) => s.dimensions),
  );
}

export const asked = (f: Flat, key: string): number => {
  const value = f.order.get(key);
  if (typeof value !== "number") throw new Error(`the order has no ${key}`);
  return value;
};

export const pieceOf = (f: Flat, id: string): Piece => {
  const piece = f.pieces.find((p) => p.id === id);
  if (!piece) throw new Error(`no piece ${id}`);
  return piece;
};

/** The holes of one side of a seam, in order. */
export function holesOf(f: Flat, side: { readonly piece: string; readonly seam: string }): readonly Hole[] {
  const piece = pieceOf(f, side.piece);
  const seam = piece.seams.find((s) => s.id === side.seam)!;
  return seam.holes.map((id) => piece.holes.find((h) => h.id === id)!);
}

export const apart = (a: readonly number[], b: readonly number[]): number =>
  Math.hypot(...a.map((v, i) => v - b[i]!));

/** An outline's points: corners, and places on its curves. */
export function pointsOf(path: Piece["outline"], each = 12): readonly Vec[] {
  const points: Vec[] = [path.start];
  for (const s of path.segments) {
    const from = points.at(-1)!;
    for (let i = 1; i <= each; i++) {
      const t = i / each;
      if (s.kind === "line") {
        if (i === each) points.push(s.to);
        continue;
      }
      if (s.kind === "cubic") {
        const mix = (k: 0 | 1): number =>
          (1 - t) ** 3 * from[k] +
          3 * (1 - t) ** 2 * t * s.c1[k] +
          3 * (1 - t) * t * t * s.c2[k] +
          t ** 3 * s.to[k];
        points.push([mix(0), mix(1)]);
        continue;
      }
      const [a, b] = [from, s.to].map((q) => Math.atan2(q[1] - s.centre[1], q[0] - s.centre[0])) as [
        number,
        number,
      ];
      const full = 2 * Math.PI;
      const sweep = s.ccw ? (((b - a) % full) + full) % full : -((((a - b) % full) + full) % full);
      const r = Math.hypot(from[0] - s.centre[0], from[1] - s.centre[1]);
      points.push([s.centre[0] + r * Math.cos(a + sweep * t), s.centre[1] + r * Math.sin(a + sweep * t)]);
    }
  }
  return points;
}

/** Distance of a point from lines through points. */
export function fromLines(at: Vec, points: readonly Vec[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const [x, y] = [b[0] - a[0], b[1] - a[1]];
    const t = Math.max(0, Math.min(1, ((at[0] - a[0]) * x + (at[1] - a[1]) * y) / (x * x + y * y || 1)));
    least = Math.min(least, Math.hypot(at[0] - a[0] - t * x, at[1] - a[1] - t * y));
  }
  return least;
}

export type SizesAsked = {
  readonly width: number;
  readonly height: number;
  readonly depth: number;
  readonly inside: boolean;
};
/** Width, height and depth as they were measured. */
export const sizesAsked = (f: Flat): SizesAsked => ({
  width: asked(f, "measures.width"),
  height: asked(f, "measures.height"),
  depth: asked(f, "measures.depth"),
  inside: f.order.get("measures.measured") === "inside",
});

/** Between the inner faces of front and back. */
export function insideDepth(f: Flat): number {
  const { depth, inside } = sizesAsked(f);
  return inside ? depth + 2 * liningOf(f) : depth - 2 * asked(f, "leather.body.thickness");
}

/** A lining's thickness: inside sizes are measured to it. */
export const liningOf = (f: Flat): number =>
  String(f.order.get("bag.lining")) === "true" ? asked(f, "leather.lining.thickness") : 0;
