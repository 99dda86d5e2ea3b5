import { named, over, type Quantity } from "../model/quantity.ts";

/** No stitch lies nearer an edge than this, mm; common practice, no source. */
export const LEAST_INSET_MM = 1.5;

/**
 * Whole stitches on a run by `spread`: ⌊L/p⌋ or ⌈L/p⌉, whichever gives a pitch nearer the one asked.
 * L and p in mm; at least one stitch.
 */
export function spreadStitches(length: number, asked: number): number {
  const few = Math.max(1, Math.floor(length / asked + 1e-9));
  const many = few + 1;
  const off = (n: number): number => Math.abs(length / n - asked);
  return off(many) < off(few) - 1e-9 ? many : few;
}

/** Both results of `spread`, named: the count of stitches and the pitch they get. */
export function spread(
  label: string,
  run: Quantity,
  asked: Quantity,
): { readonly stitches: Quantity; readonly pitch: Quantity } {
  const n = spreadStitches(run.value, asked.value);
  const stitches = named(
    `${label} stitches`,
    {
      value: n,
      kind: "count",
      parts: [run, " ÷ ", asked, " to the nearest whole stitch"],
      inputs: [run, asked],
    },
    { kind: "count" },
  );
  return { stitches, pitch: named(`${label} pitch`, over(run, stitches), { kind: "pitch" }) };
}

/**
 * Distance of a stitch line from the edge when the order doesn't say, mm: 2 on straps under 1 in, else 3;
 * between the crease lines of 1/16 and 1/8 in of P. N. Hasluck, Harness Making (1904), pp. 49, 54.
 */
export function defaultInset(strapWidth: Quantity): Quantity {
  const inset = strapWidth.value < 25.4 - 1e-6 ? 2 : 3;
  return {
    value: inset,
    kind: "length",
    parts: [`${inset} mm for a strap ${inset === 2 ? "under" : "from"} 1 in, `, strapWidth],
    inputs: [strapWidth],
  };
}

/** Thread for a two-needle saddle stitch, mm: 2 (n + n_b) p + (2 (n + n_b) + 1) T + tails. */
export function saddleThread(
  stitches: number,
  backStitches: number,
  pitch: number,
  thickness: number,
  tails = 500,
): number {
  const n = stitches + backStitches;
  return 2 * n * pitch + (2 * n + 1) * thickness + tails;
}
