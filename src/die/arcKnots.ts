// A first guess at the arcs along a curve: the best so many, each through two of its places, not yet smooth.
import type { Link, Sample } from "./arcChain.ts";

/** Places at which an arc of the guess may end. */
const PLACES = 36;

/** Where a circle's equation hardly changes, its value says little of a distance. */
const LEAST_SLOPE = 1e-3;

type Piece = Link & { readonly stray: number };

/**
 * The arc through the samples i and j nearest to those between. On the chord's frame a circle through both
 * ends satisfies y = g (x (c − x) − y²); g by least squares, the curvature is −2g ÷ √(1 + c²g²).
 */
function through(samples: readonly Sample[], i: number, j: number): Piece {
  const [a, b] = [samples[i]!, samples[j]!];
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const chord = Math.sqrt(dx * dx + dy * dy);
  const length = b.s - a.s;
  if (chord === 0) return { curvature: 0, length, stray: Infinity };
  const bulge = (x: number, y: number): number => x * (chord - x) - y * y;
  // Loops over the samples, without lists in between: this is asked for every pair of places.
  const along = (k: number): number => ((samples[k]!.x - a.x) * dx + (samples[k]!.y - a.y) * dy) / chord;
  const aside = (k: number): number => ((samples[k]!.y - a.y) * dx - (samples[k]!.x - a.x) * dy) / chord;
  let [top, bottom] = [0, 0];
  for (let k = i + 1; k < j; k++) {
    const y = aside(k);
    const q = bulge(along(k), y);
    top += q * y;
    bottom += q * q;
  }
  const g = bottom > 0 ? top / bottom : 0;
  let stray = 0;
  for (let k = i + 1; k < j; k++) {
    const [x, y] = [along(k), aside(k)];
    const slope = Math.sqrt((g * (chord - 2 * x)) ** 2 + (1 + 2 * g * y) ** 2);
    stray = Math.max(stray, Math.abs(y - g * bulge(x, y)) / Math.max(slope, LEAST_SLOPE));
  }
  return { curvature: (-2 * g) / Math.sqrt(1 + chord * chord * g * g), length, stray };
}

export type Guess = { readonly links: readonly Link[]; readonly stray: number };

/** For 1, 2, … `most` arcs: those of the least sum of squared strays, by dynamic programming over the places. */
export function guesses(samples: readonly Sample[], most: number): readonly Guess[] {
  const count = Math.min(PLACES, samples.length - 1);
  const places = Array.from({ length: count + 1 }, (_, i) => Math.round((i * (samples.length - 1)) / count));
  const pieces = places.map((from, i) =>
    places.map((to, j) => (j > i ? through(samples, from, to) : undefined)),
  );
  const weight = (i: number, j: number): number => pieces[i]![j]!.stray ** 2;
  let sums = places.map((_, j) => (j === 0 ? 0 : weight(0, j)));
  const before: number[][] = [places.map(() => 0)];
  const found: Guess[] = [];
  for (let arcs = 1; arcs <= Math.min(most, count); arcs++) {
    if (arcs > 1) {
      const old = sums;
      const from = places.map(() => 0);
      sums = places.map((_, j) => {
        let best = Infinity;
        for (let i = arcs - 1; i < j; i++) {
          const sum = old[i]! + weight(i, j);
          if (sum < best) [best, from[j]] = [sum, i];
        }
        return best;
      });
      before.push(from);
    }
    found.push(traced(pieces, before, count));
  }
  return found;
}

function traced(
  pieces: readonly (readonly (Piece | undefined)[])[],
  before: readonly (readonly number[])[],
  count: number,
): Guess {
  const chain: Piece[] = [];
  for (let [j, k] = [count, before.length - 1]; k >= 0; k--) {
    const i = before[k]![j]!;
    chain.unshift(pieces[i]![j]!);
    j = i;
  }
  return { links: chain, stray: Math.max(...chain.map(({ stray }) => stray)) };
}
