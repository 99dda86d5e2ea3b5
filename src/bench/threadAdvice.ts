import type { Made } from "../model/article.ts";
import type { ThreadList } from "../model/bench.ts";
import type { Shop } from "../model/shop.ts";
import { CORDS_STANDING, NEEDLE_STANDING, type Sewn, sewnWith } from "../trade/facts/needles.ts";
import { threadFacts } from "../trade/facts/threads.ts";
import { printNumber } from "../units/index.ts";
import type { Sewing } from "./sewing.ts";

// Habits: which thread, needles and awl, each with where that comes from.

type Advice = ThreadList["advice"];

/** Thread, needles and awl for what is sewn, fine work first; where more than one serves, for which seams. */
export function threadAdvice(made: Made, sewings: readonly Sewing[], shop: Shop): Advice {
  if (sewings.length === 0) return [];
  const groups = new Map<number, { readonly with: Sewn; readonly sewings: readonly Sewing[] }>();
  for (const s of sewings) {
    const sewn = sewnWith(s.pitch, s.stack);
    groups.set(sewn.cords, { with: sewn, sewings: [...(groups.get(sewn.cords)?.sewings ?? []), s] });
  }
  const sorted = [...groups.values()].sort((a, b) => a.with.cords - b.with.cords);
  const kinds = sorted.map((g) => ({ ...g, for: sorted.length > 1 ? forWords(g.sewings) : "" }));
  return [
    ...(shop.thread.name === "" ? [] : [{ what: "your thread", says: shop.thread.name, source: shop.file }]),
    ...kinds.map((k) => threadLine(k.with.cords, k.for)),
    ...kinds.map((k) => ({
      what: "needles",
      says: `two blunt harness needles, about No. ${k.with.needle}${k.for}`,
      source: NEEDLE_STANDING,
    })),
    ...awlLine(made, sewings),
  ];
}

const forWords = (sewings: readonly Sewing[]): string => `, for ${sewings.map((s) => s.name).join("; ")}`;

/** Cords by stitch and leather, with the number of machine thread that is as heavy. */
function threadLine(cords: number, forWhat: string): Advice[number] {
  const row = threadFacts.rows.find((r) => r.cells[0] === cords);
  const number = row ? `, as heavy as machine thread of about No. ${row.cells[1]}` : "";
  const source = row ? `${CORDS_STANDING}; the number: ${row.source}` : CORDS_STANDING;
  return { what: "thread", says: `linen of ${cords} cords${number}${forWhat}`, source };
}

/** An awl whose slits are as long as they are drawn, and that reaches through the thickest seam. */
function awlLine(made: Made, sewings: readonly Sewing[]): Advice {
  const slits = made.pieces.flatMap((p) => p.holes.filter((h) => h.kind === "awl").map((h) => h.size));
  if (slits.length === 0) return [];
  const mm = (n: number): string => printNumber(n, 1);
  const [least, most] = [Math.min(...slits), Math.max(...slits)].map(mm);
  const long = least === most ? `${most} mm` : `${least} to ${most} mm`;
  const stack = Math.max(...sewings.map((s) => s.stack));
  const says = `diamond awl that makes slits ${long} long, as drawn, through up to ${mm(stack)} mm of leather`;
  return [{ what: "awl", says, source: CORDS_STANDING }];
}
