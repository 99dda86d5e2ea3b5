// Rectangles packed into rectangles, x to the right and y downwards from the upper left corner.

export type Rect = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};
export type Size = { readonly width: number; readonly height: number };

/** Free places narrower than this hold nothing, mm. */
const LEAST_MM = 0.5;
/** Edges that only rounding lets overlap don't overlap, mm. */
const TOUCH_MM = 1e-6;

const meets = (a: Rect, b: Rect): boolean =>
  a.x < b.x + b.width - TOUCH_MM &&
  b.x < a.x + a.width - TOUCH_MM &&
  a.y < b.y + b.height - TOUCH_MM &&
  b.y < a.y + a.height - TOUCH_MM;

const holds = (a: Rect, b: Rect): boolean =>
  a.x <= b.x + TOUCH_MM &&
  a.y <= b.y + TOUCH_MM &&
  a.x + a.width >= b.x + b.width - TOUCH_MM &&
  a.y + a.height >= b.y + b.height - TOUCH_MM;

/** What is left of a free place beside something that lies in it: up to four overlapping rectangles. */
function leftOver(free: Rect, taken: Rect): readonly Rect[] {
  const [right, foot] = [free.x + free.width, free.y + free.height];
  const [takenRight, takenFoot] = [taken.x + taken.width, taken.y + taken.height];
  return [
    { ...free, width: taken.x - free.x },
    { ...free, x: takenRight, width: right - takenRight },
    { ...free, height: taken.y - free.y },
    { ...free, y: takenFoot, height: foot - takenFoot },
  ].filter((r) => r.width > LEAST_MM && r.height > LEAST_MM);
}

/** Every largest free rectangle of `areas` beside what is taken. */
export function freeRects(areas: readonly Rect[], taken: readonly Rect[]): readonly Rect[] {
  let free = [...areas];
  for (const t of taken) {
    const split = free.flatMap((f) => (meets(f, t) ? leftOver(f, t) : [f]));
    free = split.filter((a, i) => !split.some((b, k) => i !== k && holds(b, a) && (k < i || !holds(a, b))));
  }
  return free;
}

/** How the next place is chosen: as far up as can be, as far left, or where it fits most closely. */
export type Rule = "up" | "left" | "close";

type Found = Rect & { readonly turned: boolean; readonly score: readonly [number, number] };

function scoreOf(rule: Rule, free: Rect, size: Size): readonly [number, number] {
  if (rule === "up") return [free.y + size.height, free.x];
  if (rule === "left") return [free.x + size.width, free.y];
  const spare = [free.width - size.width, free.height - size.height] as const;
  return [Math.min(...spare), Math.max(...spare)];
}

/** The best place for a rectangle, lying or turned by a quarter; undefined when it fits nowhere. */
export function placeFor(
  size: Size,
  free: readonly Rect[],
  rule: Rule,
): (Rect & { readonly turned: boolean }) | undefined {
  let best: Found | undefined;
  for (const turned of [false, true]) {
    const [width, height] = turned ? [size.height, size.width] : [size.width, size.height];
    for (const f of free) {
      if (width > f.width + TOUCH_MM || height > f.height + TOUCH_MM) continue;
      const score = scoreOf(rule, f, { width, height });
      const better =
        !best || score[0] < best.score[0] || (score[0] === best.score[0] && score[1] < best.score[1]);
      if (better) best = { x: f.x, y: f.y, width, height, turned, score };
    }
  }
  return best;
}
