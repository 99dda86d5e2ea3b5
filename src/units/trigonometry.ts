// Sine, cosine and the rest by additions, multiplications, divisions and square roots alone. IEEE 754 (2019,
// section 5.4) defines those to the last bit, so that every browser and every Node gives the same number;
// their own Math.sin and its kin differ from one another in the last bit, and then so do the files.
// Each is right to within 2 units in the last place.

/** A quarter turn in three parts: multiples of the first two are exact, the third ends the sum at 119 bits. */
const QUARTER = [1.5707963267341256, 6.077100506303966e-11, 2.0222662487959506e-21] as const;
/** A quarter turn as a number, and what it lacks. */
const [HALF_PI, HALF_PI_REST] = [1.5707963267948966, 6.123233995736766e-17] as const;
/** Up to so many quarter turns their multiples are exact; no drawing turns as often. */
const MOST_QUARTERS = 2 ** 20;

/** Taylor's series, beginning behind the terms that are summed apart; highest power first. */
const SINE = [
  1 / 355687428096000,
  -1 / 1307674368000,
  1 / 6227020800,
  -1 / 39916800,
  1 / 362880,
  -1 / 5040,
  1 / 120,
  -1 / 6,
];
const COSINE = [
  -1 / 6402373705728000,
  1 / 20922789888000,
  -1 / 87178291200,
  1 / 479001600,
  -1 / 3628800,
  1 / 40320,
  -1 / 720,
  1 / 24,
];
const ARC = [1 / 17, -1 / 15, 1 / 13, -1 / 11, 1 / 9, -1 / 7, 1 / 5, -1 / 3];

const series = (coefficients: readonly number[], z: number): number => {
  let sum = 0;
  for (const c of coefficients) sum = sum * z + c;
  return sum;
};

/** An angle of at most an eighth turn, with what its number lacks. */
type Small = { readonly r: number; readonly rest: number };

function sineOf({ r, rest }: Small): number {
  const z = r * r;
  return r + (r * z * series(SINE, z) + rest * (1 - z / 2));
}

function cosineOf({ r, rest }: Small): number {
  const z = r * r;
  const most = 1 - z / 2;
  return most + (1 - most - z / 2 + (z * z * series(COSINE, z) - r * rest));
}

/** Takes whole quarter turns off: how many, counted round, and what is left. */
function reduced(angle: number): Small & { readonly quarters: number } {
  const near = Math.abs(angle) < MOST_QUARTERS ? angle : angle % (4 * HALF_PI);
  const quarters = Math.round(near / HALF_PI);
  const first = near - quarters * QUARTER[0];
  const taken = quarters * QUARTER[1];
  const second = first - taken;
  const rest = first - second - taken - quarters * QUARTER[2];
  const r = second + rest;
  return { quarters: ((quarters % 4) + 4) % 4, r, rest: rest - (r - second) };
}

/** Sine of an angle in radians. */
export function sin(angle: number): number {
  // Keeps the sign of zero.
  if (angle === 0) return angle;
  const at = reduced(angle);
  const size = at.quarters % 2 === 0 ? sineOf(at) : cosineOf(at);
  return at.quarters < 2 ? size : -size;
}

/** Cosine of an angle in radians. */
export function cos(angle: number): number {
  const at = reduced(angle);
  const size = at.quarters % 2 === 0 ? cosineOf(at) : sineOf(at);
  return at.quarters === 0 || at.quarters === 3 ? size : -size;
}

/** Tangent of an angle in radians. */
export const tan = (angle: number): number => (angle === 0 ? angle : sin(angle) / cos(angle));

/** Arc tangents of 0, 1/4, 1/2, 3/4 and 1, each with what its number lacks. */
const KNOWN = [
  [0, 0],
  [0.24497866312686414, 1.0698755618734451e-17],
  [0.4636476090008061, 2.2698777452961687e-17],
  [0.6435011087932844, 1.5834785051444286e-17],
  [0.7853981633974483, 3.061616997868383e-17],
] as const;

/** The angle whose tangent is low/high, 0 ≤ low ≤ high: from the nearest known one on. */
function smallArc(low: number, high: number): Small {
  const step = Math.round((4 * low) / high);
  const c = step / 4;
  const t = (low - c * high) / (high + c * low);
  const z = t * t;
  const [r, rest] = KNOWN[step]!;
  return { r, rest: rest + (t + t * z * series(ARC, z)) };
}

/** A power of two that keeps sums and products of such lengths from running over, or out of places. */
const scaleFor = (length: number): number =>
  length > 2 ** 900 ? 2 ** -200 : length < 2 ** -900 ? 2 ** 200 : 1;

/** The angle of the direction (x, y), from -π to π, as Math.atan2 has it, with its signs of zero. */
export function atan2(y: number, x: number): number {
  const [a, b] = [Math.abs(y), Math.abs(x)];
  // What is zero, endless or no number: these answers are exact everywhere.
  if (!(a > 0 && b > 0 && a < Number.POSITIVE_INFINITY && b < Number.POSITIVE_INFINITY))
    return Math.atan2(y, x);
  const scale = scaleFor(Math.max(a, b));
  const { r, rest } = smallArc(Math.min(a, b) * scale, Math.max(a, b) * scale);
  const steep = a > b;
  const [acute, lack] = steep ? [HALF_PI - r, HALF_PI_REST - rest] : [r, rest];
  const angle = x > 0 ? acute + lack : 2 * HALF_PI - acute + (2 * HALF_PI_REST - lack);
  return y < 0 ? -angle : angle;
}

/** The angle of this cosine, 0 to π; no number beyond ±1. */
export const acos = (cosine: number): number =>
  Math.abs(cosine) <= 1 ? atan2(Math.sqrt((1 - cosine) * (1 + cosine)), cosine) : Number.NaN;

/** The angle of this sine, -π/2 to π/2; no number beyond ±1. */
export const asin = (sine: number): number =>
  Math.abs(sine) <= 1 ? atan2(sine, Math.sqrt((1 - sine) * (1 + sine))) : Number.NaN;
