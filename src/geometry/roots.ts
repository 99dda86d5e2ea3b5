// Roots of a polynomial between 0 and 1, given by its Bernstein coefficients.
// Method: a polynomial lies within the hull of its coefficients and has no more roots than they
// change sign (variation diminishing; Farin, Curves and Surfaces for CAGD, from memory).

/** Two roots closer than this in t are one. */
const SAME_ROOT = 1e-11;
/** A turning point this near a root belongs to it: both are the same shallow crossing. */
const SAME_TOUCH = 0.01;
/** Halving alone reaches SAME_ROOT in 37 steps. */
const MOST_STEPS = 60;

/** Row n, place k: n over k. */
const BINOMIAL = [
  [1],
  [1, 1],
  [1, 2, 1],
  [1, 3, 3, 1],
  [1, 4, 6, 4, 1],
  [1, 5, 10, 10, 5, 1],
  [1, 6, 15, 20, 15, 6, 1],
] as const;

type Poly = readonly number[];

/** Left and right half of the polynomial, by de Casteljau. */
function halves(b: Poly): [Poly, Poly] {
  const n = b.length;
  const left = new Array<number>(n);
  const right = b.slice();
  for (let k = 0; k < n; k++) {
    left[k] = right[0]!;
    for (let i = 0; i < n - 1 - k; i++) right[i] = (right[i]! + right[i + 1]!) / 2;
  }
  return [left, right];
}

/** Value at t, by Horner's scheme for Bernstein coefficients (Farin, from memory). */
export function bernsteinAt(b: Poly, t: number): number {
  const n = b.length - 1;
  if (n === 0) return b[0]!;
  const s = 1 - t;
  let power = 1;
  let value = b[0]! * s;
  for (let i = 1; i < n; i++) {
    power *= t;
    value = (value + power * BINOMIAL[n]![i]! * b[i]!) * s;
  }
  return value + power * t * b[n]!;
}

/** Coefficients of the derivative. */
export function bernsteinSlope(b: Poly): Poly {
  const n = b.length - 1;
  const slope = new Array<number>(n);
  for (let i = 0; i < n; i++) slope[i] = n * (b[i + 1]! - b[i]!);
  return slope;
}

/** Coefficients of the product of two polynomials; its degree is at most 6. */
export function bernsteinProduct(a: Poly, b: Poly): Poly {
  const [m, n] = [a.length - 1, b.length - 1];
  const product = new Array<number>(m + n + 1).fill(0);
  for (let i = 0; i <= m; i++) {
    for (let j = 0; j <= n; j++) product[i + j]! += BINOMIAL[m]![i]! * BINOMIAL[n]![j]! * a[i]! * b[j]!;
  }
  for (let k = 0; k <= m + n; k++) product[k]! /= BINOMIAL[m + n]![k]!;
  return product;
}

function signChanges(b: Poly): number {
  let changes = 0;
  let last = 0;
  for (const value of b) {
    if (value === 0) continue;
    if (last !== 0 && value > 0 !== last > 0) changes++;
    last = value;
  }
  return changes;
}

/** The one root of a polynomial whose ends differ in sign: Newton, kept inside a shrinking bracket. */
function onlyRoot(b: Poly): number {
  const slope = bernsteinSlope(b);
  const rising = b.at(-1)! > 0;
  let [lo, hi, t] = [0, 1, b[0]! / (b[0]! - b.at(-1)!)];
  for (let i = 0; i < MOST_STEPS; i++) {
    const value = bernsteinAt(b, t);
    if (value === 0) return t;
    if (value > 0 === rising) hi = t;
    else lo = t;
    const newton = t - value / bernsteinAt(slope, t);
    const next = newton > lo && newton < hi ? newton : (lo + hi) / 2;
    if (Math.abs(next - t) < SAME_ROOT / 8) return next;
    t = next;
  }
  return t;
}

function collect(b: Poly, lo: number, hi: number, found: number[]): void {
  if (b[0] === 0) found.push(lo);
  if (b.at(-1) === 0) found.push(hi);
  const changes = signChanges(b);
  if (changes === 0) return;
  if (changes === 1 && b[0] !== 0 && b.at(-1) !== 0) {
    found.push(lo + (hi - lo) * onlyRoot(b));
  } else if (hi - lo < SAME_ROOT) {
    found.push((lo + hi) / 2);
  } else {
    const [left, right] = halves(b);
    const middle = (lo + hi) / 2;
    collect(left, lo, middle, found);
    collect(right, middle, hi, found);
  }
}

/** All roots from 0 to 1, rising, each once. A polynomial that is zero everywhere has none here. */
export function rootsBetween(b: Poly): readonly number[] {
  if (b.every((value) => value === 0)) return [];
  const found: number[] = [];
  collect(b, 0, 1, found);
  found.sort((x, y) => x - y);
  return found.filter((t, i) => i === 0 || t - found[i - 1]! > SAME_ROOT);
}

/** Roots, and besides them the places where the polynomial comes within `near` of zero and turns back. */
export function rootsAndTouches(b: Poly, near: number): readonly number[] {
  const roots = rootsBetween(b);
  const touches = rootsBetween(bernsteinSlope(b)).filter(
    (t) => Math.abs(bernsteinAt(b, t)) < near && !roots.some((root) => Math.abs(root - t) < SAME_TOUCH),
  );
  return touches.length === 0 ? roots : [...roots, ...touches].sort((x, y) => x - y);
}
