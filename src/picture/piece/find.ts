import type { Box, Point } from "../../geometry/path.ts";
import { grownBy, isFree, type Space, within } from "./space.ts";

/** Words keep this far from every line and from other words, mm. */
export const CLEAR_MM = 0.8;
/** Places are tried this far apart, mm: less would not be seen. */
const STEP_MM = { x: 2, y: 1 } as const;

export type Search = {
  readonly width: number;
  readonly height: number;
  /** The box may lie anywhere in one of these. */
  readonly areas: readonly Box[];
  /** Its middle as near to this as can be. */
  readonly near: Point;
  /** mm to keep clear of everything. */
  readonly clear?: number;
  readonly accept?: (box: Box) => boolean;
  /** No further than this from `near`, to the box's middle. */
  readonly within?: number;
};

/** A box that is larger than its place by this still fits: rounding. */
const FIT_MM = 1e-6;

/** Values from `from` to `to`, the nearest to `wanted` first; both ends are among them. */
function outward(from: number, end: number, wanted: number, step: number): readonly number[] {
  if (end < from - FIT_MM) return [];
  const to = Math.max(from, end);
  const middle = Math.min(Math.max(wanted, from), to);
  const values = [middle];
  for (let k = 1; middle + k * step <= to || middle - k * step >= from; k++) {
    if (middle + k * step <= to) values.push(middle + k * step);
    if (middle - k * step >= from) values.push(middle - k * step);
  }
  for (const last of [from, to]) if (!values.includes(last)) values.push(last);
  return values.sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted));
}

const distance = (a: number, b: number): number => Math.sqrt(a * a + b * b);

/** Ties between places are broken the same way everywhere: a nearer place must be nearer by this, mm. */
const NEARER_MM = 1e-6;

/** The free place nearest to where it is wanted; undefined when there is none. */
export function findPlace(space: Space, search: Search): Box | undefined {
  const { width, height, near, clear = CLEAR_MM, accept } = search;
  let best: { readonly box: Box; readonly far: number } | undefined;
  const furthest = search.within ?? Number.POSITIVE_INFINITY;
  for (const area of search.areas) {
    const xs = outward(area.minX, area.maxX - width, near[0] - width / 2, STEP_MM.x);
    const ys = outward(area.minY, area.maxY - height, near[1] - height / 2, STEP_MM.y);
    for (const x of xs) {
      const dx = x + width / 2 - near[0];
      if (Math.abs(dx) > Math.min(furthest, best?.far ?? furthest)) break;
      for (const y of ys) {
        const far = distance(dx, y + height / 2 - near[1]);
        if (far > furthest || (best && far > best.far - NEARER_MM)) break;
        const box: Box = { minX: x, minY: y, maxX: x + width, maxY: y + height };
        if (!isFree(space, grownBy(box, clear)) || (accept && !accept(box))) continue;
        best = { box, far };
        break;
      }
    }
  }
  return best?.box;
}

/** `areas` without what lies outside all of `windows`: a box must fit into one sheet to be read on it. */
export function areasWithin(areas: readonly Box[], windows: readonly Box[] | undefined): readonly Box[] {
  if (!windows) return areas;
  return areas.flatMap((a) =>
    windows.flatMap((w): readonly Box[] => {
      if (within(w, a)) return [a];
      const cut = {
        minX: Math.max(a.minX, w.minX),
        minY: Math.max(a.minY, w.minY),
        maxX: Math.min(a.maxX, w.maxX),
        maxY: Math.min(a.maxY, w.maxY),
      };
      return cut.minX < cut.maxX && cut.minY < cut.maxY ? [cut] : [];
    }),
  );
}
