/** Powers of ten from a table: engines differ in the last bit of a computed power. */
const POWERS = [1, 10, 100, 1000, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9] as const;

/**
 * Lifts a value that lies on a rounding tie safely over it. Odd sixteenths of an inch lie exactly on a
 * tie of 0.001 mm, and the last bit of a sum would otherwise decide which way they go.
 */
const TIE_LIFT = 1e-6;

/**
 * Rounds to a number of decimals, 0 to 9, a tie going up, the same in every engine. Never gives -0.
 * A number too large to have that many decimals is given back as it is.
 * Throws when the number is not finite or the decimals are not in the table: that is our own fault.
 */
export function roundTo(x: number, decimals: number): number {
  const power = POWERS[decimals];
  if (power === undefined)
    throw new Error(`roundTo: decimals must be a whole number from 0 to 9, not ${decimals}`);
  if (!Number.isFinite(x)) throw new Error(`roundTo: cannot round ${x}; it must be finite`);
  const scaled = x * power;
  if (Math.abs(scaled) >= Number.MAX_SAFE_INTEGER) return x;
  return Math.round(scaled + TIE_LIFT) / power + 0; // adding 0 turns -0 into 0
}

/**
 * Rounds a length to 0.001 mm, the one place where lengths are rounded on their way to a drawing,
 * so that the same order gives the same bytes in every engine.
 */
export const roundMm = (mm: number): number => roundTo(mm, 3);
