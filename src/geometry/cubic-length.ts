// Arc length of a cubic: Gauss–Legendre sums over panels that are halved until both halves agree
// with the whole, then Newton on the table to go back from length to t.
import { type CubicCurve, velocityAt } from "./curve.ts";
import { bernsteinProduct, bernsteinSlope, rootsBetween } from "./roots.ts";
import { sizeOf } from "./vector.ts";

/** Nodes and weights of the five-point rule (Abramowitz & Stegun 1964, table 25.4; from memory). */
const NODES = [
  [0, 0.5688888888888889],
  [0.5384693101056831, 0.47862867049936647],
  [-0.5384693101056831, 0.47862867049936647],
  [0.906179845938664, 0.23692688505618908],
  [-0.906179845938664, 0.23692688505618908],
] as const;

/** Panels to begin with, besides those that end where the speed turns; a gentle curve needs no more. */
const FIRST_PANELS = 4;
/** Halves that agree with the whole within this are exact enough: a millionth of what a knife follows. */
const PANEL_ERROR_MM = 1e-9;
/** At a cusp halving stops here: 2^-40 of the curve is under 1e-9 mm. */
const DEEPEST = 40;
/** Newton's step in mm below which a position is found. */
const POSITION_ERROR_MM = 1e-10;

export type LengthTable = {
  /** Bounds of the panels, rising from 0 to 1. */
  readonly ts: readonly number[];
  /** Length from the curve's start to each bound. */
  readonly lengths: readonly number[];
  readonly total: number;
};

function panelLength(curve: CubicCurve, t0: number, t1: number): number {
  const [middle, half] = [(t0 + t1) / 2, (t1 - t0) / 2];
  let sum = 0;
  for (const [node, weight] of NODES) sum += weight * sizeOf(velocityAt(curve, middle + half * node));
  return sum * half;
}

function addPanels(
  curve: CubicCurve,
  t0: number,
  t1: number,
  whole: number,
  depth: number,
  table: Rows,
): void {
  const middle = (t0 + t1) / 2;
  const left = panelLength(curve, t0, middle);
  const right = panelLength(curve, middle, t1);
  if (Math.abs(left + right - whole) < PANEL_ERROR_MM || depth === DEEPEST) {
    table.ts.push(middle, t1);
    const before = table.lengths.at(-1)!;
    table.lengths.push(before + left, before + left + right);
    return;
  }
  addPanels(curve, t0, middle, left, depth + 1, table);
  addPanels(curve, middle, t1, right, depth + 1, table);
}

type Rows = { readonly ts: number[]; readonly lengths: number[] };

/** Where the speed turns: roots of p′ · p″, of degree 3. A near-cusp between two nodes would go unseen. */
function speedTurns({ p0, c1, c2, p1 }: CubicCurve): readonly number[] {
  const product = (axis: 0 | 1): readonly number[] => {
    const speed = [c1[axis] - p0[axis], c2[axis] - c1[axis], p1[axis] - c2[axis]];
    return bernsteinProduct(speed, bernsteinSlope(speed));
  };
  const [x, y] = [product(0), product(1)];
  return rootsBetween(x.map((value, i) => value + y[i]!));
}

/** The table of a cubic's length. */
export function lengthTable(curve: CubicCurve): LengthTable {
  const rows: Rows = { ts: [0], lengths: [0] };
  const even = Array.from({ length: FIRST_PANELS + 1 }, (_, i) => i / FIRST_PANELS);
  const bounds = [...even, ...speedTurns(curve)].sort((a, b) => a - b);
  for (let i = 1; i < bounds.length; i++) {
    const [t0, t1] = [bounds[i - 1]!, bounds[i]!];
    if (t1 > t0) addPanels(curve, t0, t1, panelLength(curve, t0, t1), 0, rows);
  }
  return { ...rows, total: rows.lengths.at(-1)! };
}

/** The last row of a rising list that is not above `value`, never the last row of all. */
function rowBelow(list: readonly number[], value: number): number {
  let [lo, hi] = [0, list.length - 1];
  while (hi - lo > 1) {
    const middle = (lo + hi) >> 1;
    if (list[middle]! <= value) lo = middle;
    else hi = middle;
  }
  return lo;
}

/** Length from the start of the curve to t. */
export function lengthTo(curve: CubicCurve, table: LengthTable, t: number): number {
  const row = rowBelow(table.ts, t);
  return table.lengths[row]! + panelLength(curve, table.ts[row]!, t);
}

/** The t that lies `length` along the curve. */
export function parameterAt(curve: CubicCurve, table: LengthTable, length: number): number {
  if (length <= 0) return 0;
  if (length >= table.total) return 1;
  const row = rowBelow(table.lengths, length);
  const [t0, t1] = [table.ts[row]!, table.ts[row + 1]!];
  const [s0, s1] = [table.lengths[row]!, table.lengths[row + 1]!];
  let [lo, hi] = [t0, t1];
  let t = s1 > s0 ? t0 + ((t1 - t0) * (length - s0)) / (s1 - s0) : t0;
  for (let i = 0; i < DEEPEST; i++) {
    const over = s0 + panelLength(curve, t0, t) - length;
    if (Math.abs(over) < POSITION_ERROR_MM) break;
    if (over > 0) hi = t;
    else lo = t;
    const newton = t - over / sizeOf(velocityAt(curve, t));
    t = newton > lo && newton < hi ? newton : (lo + hi) / 2;
  }
  return t;
}
