import type { Made } from "../model/article.ts";
import type { ThreadList, ThreadRow } from "../model/bench.ts";
import type { Shop, ThreadRate } from "../model/shop.ts";
import { saddleThread } from "../trade/seam.ts";
import type { Sewing, Stretch } from "./sewing.ts";
import { sewingsOf } from "./sewings.ts";
import { threadAdvice } from "./threadAdvice.ts";

// Thread for everything that is sewn with two needles.

/**
 * The thread list: a row for each seam, each turn-back's rows and each keeper. `times` and the total are for
 * `quantity` articles; a row's other figures are for one sewing. Lengths mm.
 *
 * A stretch that is sewn without a break takes 2 (n + n_b) p + (2 (n + n_b) + 1) T (see `saddleThread`). It is
 * sewn with as few lengths of thread, none longer than the shop's needleful, as do: each has the shop's tail at
 * both its ends, and each after the first begins in the hole where the last ended, which is T more. Sewing back
 * where one thread follows another is not reckoned.
 */
export function threadList(made: Made, shop: Shop, quantity: number): ThreadList {
  const sewings = sewingsOf(made);
  const rows = sewings.map((s) => rowOf(s, shop.thread, quantity));
  return {
    rows,
    total: rows.reduce((sum, r) => sum + r.times * r.length, 0),
    stitches: rows.reduce((sum, r) => sum + r.times * r.stitches, 0),
    advice: threadAdvice(made, sewings, shop),
  };
}

function rowOf(s: Sewing, rate: ThreadRate, quantity: number): ThreadRow {
  const threads = s.stretches.map((stretch) => threadOf(s, stretch, rate));
  const sum = (of: readonly number[]): number => of.reduce((a, b) => a + b, 0);
  return {
    seam: s.name,
    pieces: [...new Set(s.lines.map((l) => l.piece))],
    times: s.times * quantity,
    stitches: sum(s.stretches.map((r) => r.stitches)),
    backStitches: sum(s.stretches.map((r) => r.backStitches)),
    pitch: s.pitch,
    stack: s.stack,
    length: sum(threads.map((t) => t.length)),
    needlefuls: sum(threads.map((t) => t.needlefuls)),
  };
}

/** The arithmetic's tolerance, mm: a seam as long as a needleful is sewn with one. */
const SLACK_MM = 1e-6;

/** Thread for one stretch, and in how many lengths. */
function threadOf(
  { pitch, stack }: Sewing,
  { stitches, backStitches }: Stretch,
  rate: ThreadRate,
): { readonly length: number; readonly needlefuls: number } {
  const tails = 2 * rate.tail;
  const inSeam = saddleThread(stitches, backStitches, pitch, stack, 0) - stack;
  // A needleful that is all tails still makes a stitch: it can't be sewn with less.
  const each = Math.max(rate.needleful - tails - stack, 2 * (pitch + stack), SLACK_MM);
  const needlefuls = Math.max(1, Math.ceil((inSeam - SLACK_MM) / each));
  return { length: inSeam + needlefuls * (tails + stack), needlefuls };
}
