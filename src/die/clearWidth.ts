// How wide a closed outline is at its widest: twice the radius of the largest circle inside it.
import { signedArea } from "../geometry/area.ts";
import { boundsOf } from "../geometry/bounds.ts";
import { pathLength } from "../geometry/length.ts";
import { offsetPath } from "../geometry/offset.ts";
import type { Path } from "../geometry/path.ts";
import { remembered } from "../geometry/remember.ts";

/** The width is found this near, mm: a twentieth of a die's tolerance. */
const FOUND_MM = 0.01;

/**
 * Width of the closed path inside, in mm, within 0.01: a slot's width, a circle's diameter. Halving between
 * what an offset inwards leaves and where it leaves nothing. First guess: area ÷ half the length, which is
 * below the width of any slot with round ends.
 */
export const clearWidth = remembered((path: Path): number => {
  const inward = signedArea(path) > 0 ? 1 : -1;
  const leaves = (half: number): boolean => offsetPath(path, inward * half).length > 0;
  const { minX, minY, maxX, maxY } = boundsOf(path);
  let high = Math.min(maxX - minX, maxY - minY) / 2;
  let low = Math.min(high, Math.abs(signedArea(path)) / pathLength(path));
  if (!leaves(low)) low = 0;
  while (2 * (high - low) > FOUND_MM / 2) {
    const middle = (low + high) / 2;
    if (leaves(middle)) low = middle;
    else high = middle;
  }
  return low + high;
});
