import { tilesFor } from "./tile.ts";

/** A stretch that a joint should not cross, and how much it matters. */
export type Obstacle = { readonly from: number; readonly to: number; readonly weight: number };

export type JointTask = {
  /** Length to be covered from 0, mm. */
  readonly length: number;
  /** The most a sheet shows, mm. */
  readonly tile: number;
  readonly overlap: number;
  readonly obstacles: readonly Obstacle[];
  /** Which end of an overlap is the edge of the sheet that lies on top. */
  readonly edge: "low" | "high";
};

/** Joints are tried this far apart, mm: less than the smallest hole. */
const STEP_MM = 1;
/** A hole under the very edge of the upper sheet is worse than one that both sheets show whole. */
const UNDER_EDGE = 3;
/** Between joints that cross as little, the even spacing wins; never against an awl mark. */
const EVEN_WEIGHT = 0.2;

type Choice = { readonly at: number; readonly cost: number; readonly before: number };

/** Obstacles are rounded to 0.001 mm; what reaches less than this into an overlap only touches it, mm. */
const TOUCH_MM = 1e-6;

/** What a joint at `at` crosses: its overlap, and the edge of the sheet on top at one end of that. */
export function crossingCost(
  at: number,
  { overlap, obstacles, edge }: Omit<JointTask, "length" | "tile">,
): number {
  const [from, to] = [at - overlap / 2, at + overlap / 2];
  const cut = edge === "low" ? from : to;
  let cost = 0;
  for (const o of obstacles) {
    if (o.to <= from + TOUCH_MM || o.from >= to - TOUCH_MM) continue;
    cost += o.from < cut - TOUCH_MM && o.to > cut + TOUCH_MM ? o.weight * UNDER_EDGE : o.weight;
  }
  return cost;
}

/** The places where joint `i` of `count` may lie, so that every sheet shows no more than its tile. */
function placesFor(i: number, count: number, task: JointTask): readonly number[] {
  const { length, tile, overlap } = task;
  const reach = tile - overlap;
  const high = Math.min(tile - overlap / 2 + (i - 1) * reach, length - overlap / 2);
  const low = Math.max(length - (tile - overlap / 2) - (count - i) * reach, overlap / 2);
  const steps = Math.max(1, Math.floor((high - low) / STEP_MM));
  const even = Array.from({ length: steps + 1 }, (_, k) => low + ((high - low) * k) / steps);
  // What is crossed changes only where an overlap's end, or the edge on top, meets an obstacle's end.
  const meets = task.obstacles
    .flatMap((o) => [o.from, o.to])
    .flatMap((at) => [at - overlap / 2, at + overlap / 2])
    .filter((at) => at > low && at < high);
  return [...new Set([...even, ...meets])].sort((a, b) => a - b);
}

/**
 * Where the joints lie: the fewest sheets that cover `length`, each no longer than the tile, neighbours
 * sharing exactly the overlap; of all such, those that cross least (dynamic programming over the joints).
 */
export function chooseJoints(task: JointTask): readonly number[] {
  const { length, tile, overlap } = task;
  const count = tilesFor(length, tile, overlap) - 1;
  if (count === 0) return [];
  const chains: Choice[][] = [];
  for (let i = 1; i <= count; i++) {
    const before = chains.at(-1) ?? [{ at: overlap / 2, cost: 0, before: -1 }];
    const even = (length * i) / (count + 1);
    chains.push(
      placesFor(i, count, task).flatMap((at) => {
        const best = cheapestBefore(before, at, tile - overlap, overlap, i === 1);
        if (best < 0) return [];
        const own = crossingCost(at, task) + EVEN_WEIGHT * ((at - even) / tile) ** 2;
        return [{ at, cost: before[best]!.cost + own, before: best }];
      }),
    );
  }
  return trace(chains);
}

/** Sums that should be equal may differ in the last bit. */
const REACH_SLACK = 1e-9;

function cheapestBefore(
  before: readonly Choice[],
  at: number,
  reach: number,
  overlap: number,
  first: boolean,
): number {
  let best = -1;
  for (let k = 0; k < before.length; k++) {
    const gap = at - before[k]!.at;
    // Three sheets never lie on one another.
    if (gap > reach + REACH_SLACK || (!first && gap < 2 * overlap)) continue;
    if (best < 0 || before[k]!.cost < before[best]!.cost) best = k;
  }
  return best;
}

function trace(chains: readonly (readonly Choice[])[]): readonly number[] {
  const last = chains.at(-1)!;
  let k = last.reduce((best, c, i) => (c.cost < last[best]!.cost ? i : best), 0);
  const joints: number[] = [];
  for (let i = chains.length - 1; i >= 0; i--) {
    const choice = chains[i]![k];
    if (!choice) throw new Error("chooseJoints: no joint fits; the tile must be wider than three overlaps");
    joints.unshift(choice.at);
    k = choice.before;
  }
  return joints;
}
