/** Nothing that is printed or cut is finer, mm. */
const SAME_MM = 0.005;
/** job.json keeps 6 decimals; halves of the last one round either way. */
const SAME_NUMBER = 2e-6;
/** Areas and volumes are large numbers: a share of them. */
const SAME_SHARE = 1e-6;

const IN_MM = ["length", "thickness", "pitch", "hands"];

/** Whether two values of one kind are the same to a maker. */
export function isSame(a: number, b: number, kind: string): boolean {
  const least = IN_MM.includes(kind) ? SAME_MM : SAME_NUMBER;
  return Math.abs(a - b) <= Math.max(least, SAME_SHARE * Math.abs(a));
}
