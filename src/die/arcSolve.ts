// The chain of so many arcs that lies nearest to a curve, its ends exactly as they must be.
import { type Link, mostOf, type Sample, strays } from "./arcChain.ts";
import { type ChainEnd, chainOf, endOf, misses, type Numbers, startsFree } from "./arcEnds.ts";
import { solved } from "./arcLinear.ts";

export type Task = {
  readonly start: ChainEnd;
  readonly end: ChainEnd;
  readonly samples: readonly Sample[];
  /** How far the samples may lie from the chain, mm. */
  readonly tolerance: number;
};

export type Solved = { readonly numbers: Numbers; readonly most: number };

/** Steps by which slopes are taken: of a curvature, 1/mm, and of a length or the start's number. */
const CURVATURE_STEP = 1e-8;
const STEP = 1e-6;
/** Ends that miss by less than this, mm, are as they must be. */
const ENDS_MM = 1e-10;
const STEPS = 40;
/** A step that gains a smaller share is the last: to see whether a guess leads anywhere, and within a band. */
const CHANGE = 0.01;
const BAND_CHANGE = 0.002;
const MISS_WEIGHT = 1e3;
/** Where the sum of squares is least, the furthest stray is seldom more than half as much again as it need be. */
const HOPELESS = 1.7;
/** Shares of the tolerance within which a stray hardly counts, one after another: the rest is pressed below them. */
const BANDS = [0, 0.9, 0.97] as const;
const HARDLY = 1e-3;

type State = {
  readonly numbers: Numbers;
  readonly stray: readonly number[];
  readonly miss: readonly number[];
  readonly cost: number;
};

const isCurvature = ({ start }: Task, index: number): boolean => {
  const at = index - (startsFree(start) ? 1 : 0) - (start.kind === "kept" ? 1 : 0);
  return at >= 0 && at % 2 === 0;
};

/** An arc with no length, or round and round, is none. */
const sound = (links: readonly Link[]): boolean =>
  links.every(({ curvature, length }) => length > 0 && Math.abs(curvature * length) < 2 * Math.PI);

/** The end's own line or arc is followed behind the chain. */
function straysOf({ end, samples, start }: Task, numbers: Numbers): readonly number[] | undefined {
  const { pose, links } = chainOf(start, numbers);
  if (!sound(links)) return undefined;
  const behind = end.kind === "kept" ? [{ curvature: end.curvature, length: Infinity }] : [];
  return strays(pose, [...links, ...behind], samples);
}

/** What a stray counts: all of it, or what is beyond the band; and how much it weighs. */
const beyond = (stray: number, band: number): number =>
  Math.abs(stray) > band ? stray - Math.sign(stray) * band : stray;
const weightOf = (stray: number, band: number): number => (Math.abs(stray) > band ? 1 : HARDLY);

function stateOf(task: Task, numbers: Numbers, band: number): State | undefined {
  const stray = straysOf(task, numbers);
  if (!stray) return undefined;
  const miss = misses(task.end, endOf(task.start, numbers));
  let fit = 0;
  for (const r of stray) fit += weightOf(r, band) * beyond(r, band) ** 2;
  const cost = fit + MISS_WEIGHT * miss.reduce((sum, c) => sum + c * c, 0);
  return Number.isFinite(cost) ? { numbers, stray, miss, cost } : undefined;
}

type Slopes = {
  readonly stray: readonly (readonly number[])[];
  readonly miss: readonly (readonly number[])[];
};

function slopesOf(task: Task, { numbers, stray, miss }: State): Slopes {
  const all = numbers.map((_, p) => {
    const step = isCurvature(task, p) ? CURVATURE_STEP : STEP;
    const moved = numbers.map((n, i) => (i === p ? n + step : n));
    const by = straysOf(task, moved) ?? stray;
    const slope = stray.map((r, i) => (by[i]! - r) / step);
    return {
      stray: slope,
      miss: misses(task.end, endOf(task.start, moved)).map((c, i) => (c - miss[i]!) / step),
    };
  });
  return { stray: all.map((a) => a.stray), miss: all.map((a) => a.miss) };
}

function product(a: readonly number[], b: readonly number[], weights: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += weights[i]! * a[i]! * b[i]!;
  return sum;
}

/** Normal equations bordered by the ends' conditions (Lagrange's multipliers), without damping. */
function normal({ stray, miss }: Slopes, state: State, band: number): number[][] {
  const weights = state.stray.map((r) => weightOf(r, band));
  const aims = state.stray.map((r) => beyond(r, band));
  const conditions = state.miss.map((_, k) => miss.map((row) => row[k]!));
  const square: number[][] = [];
  stray.forEach((a, p) => {
    square.push(stray.map((b, q) => (q < p ? square[q]![p]! : product(a, b, weights))));
  });
  const rows = square.map((row, p) => [
    ...row,
    ...conditions.map((c) => c[p]!),
    -product(stray[p]!, aims, weights),
  ]);
  const bottom = conditions.map((c, k) => [...c, ...conditions.map(() => 0), -state.miss[k]!]);
  return [...rows, ...bottom];
}

const damped = (rows: number[][], count: number, by: number): number[][] =>
  rows.map((row, i) => (i < count ? row.map((n, j) => (i === j ? n * (1 + by) + 1e-12 : n)) : [...row]));

/** Levenberg and Marquardt's steps until nothing gets better. */
function descend(task: Task, from: State, band: number): State {
  let [state, damping] = [from, 1e-3];
  for (let i = 0; i < STEPS; i++) {
    const rows = normal(slopesOf(task, state), state, band);
    let next: State | undefined;
    for (let tries = 0; tries < 12 && !next; tries++) {
      const step = solved(damped(rows, state.numbers.length, damping));
      const moved =
        step &&
        stateOf(
          task,
          state.numbers.map((n, k) => n + step[k]!),
          band,
        );
      next = moved && moved.cost < state.cost ? moved : undefined;
      damping = next ? Math.max(damping / 8, 1e-9) : damping * 6;
    }
    if (!next) return state;
    const gain = (state.cost - next.cost) / state.cost;
    state = next;
    if (gain < (band > 0 ? BAND_CHANGE : CHANGE) || (band > 0 && mostOf(state.stray) <= task.tolerance))
      return state;
  }
  return state;
}

/** The ends brought in to the last digit by the least change of the numbers. */
function closed(task: Task, state: State): State | undefined {
  let now: State | undefined = state;
  for (let i = 0; i < 8 && now; i++) {
    if (now.miss.every((c) => Math.abs(c) < ENDS_MM)) return now;
    const rows = normal(slopesOf(task, now), { ...now, stray: now.stray.map(() => 0) }, 0);
    const step: readonly number[] | undefined = solved(damped(rows, now.numbers.length, 1e-6));
    now =
      step &&
      stateOf(
        task,
        now.numbers.map((n, k) => n + step[k]!),
        0,
      );
  }
  return now?.miss.every((c) => Math.abs(c) < 100 * ENDS_MM) ? now : undefined;
}

/** The chain near the given first guess whose furthest stray is within the tolerance; undefined when none is found. */
export function solve(task: Task, guess: Numbers): Solved | undefined {
  let numbers = guess;
  for (const share of BANDS) {
    const band = share * task.tolerance;
    const first = stateOf(task, numbers, band);
    const done = first && closed(task, descend(task, first, band));
    if (!done) return undefined;
    const most = mostOf(done.stray);
    if (most <= task.tolerance) return { numbers: done.numbers, most };
    if (most > HOPELESS * task.tolerance) return undefined;
    numbers = done.numbers;
  }
  return undefined;
}
