import type { Bend } from "../../src/model/piece.ts";

// Bent leather in section. The neutral fibre is walked from a start where the leather lies level, grain side
// up; straight stretches keep their direction, in a bend of known radius the way is an arc.

export type Vec = readonly [number, number];
export type FlatBend = { readonly centre: number; readonly bend: Bend };

/** A place on the bent leather: its two faces, the way it runs there, and where its grain side looks. */
export type Bent = { readonly flesh: Vec; readonly grain: Vec; readonly way: Vec; readonly out: Vec };

const neutralRadius = ({ inner, thickness, neutral, inside }: Bend): number =>
  inner + (inside === "flesh" ? neutral : 1 - neutral) * thickness;

/** On the flat a bend takes as much as its neutral fibre has in it. */
export const flatHalf = (b: Bend): number => (b.angle * neutralRadius(b)) / 2;

/** The leather's place `s` mm from the start; `leather` where there is no bend to tell it. */
export function walk(
  bends: readonly FlatBend[],
  s: number,
  leather: { readonly thickness: number; readonly neutral: number },
): Bent {
  // Walked backward it is the mirror image.
  if (s < 0) {
    const b = walk(
      bends.map((f) => ({ ...f, centre: -f.centre })),
      -s,
      leather,
    );
    const over = ([p, q]: Vec): Vec => [-p, q];
    const [p, q] = b.way;
    return { flesh: over(b.flesh), grain: over(b.grain), out: over(b.out), way: [p, -q] };
  }
  let [p, q, turn, at] = [0, 0, 0, 0];
  const on = (to: number): void => {
    const by = Math.max(0, Math.min(to, s) - at);
    p += by * Math.cos(turn);
    q += by * Math.sin(turn);
    at += by;
  };
  for (const { centre, bend } of bends.filter((f) => f.centre > 0).sort((a, b) => a.centre - b.centre)) {
    const half = flatHalf(bend);
    on(centre - half);
    if (s <= centre - half) break;
    const radius = neutralRadius(bend);
    const angle = Math.min(bend.angle, (s - at) / radius) * (bend.inside === "flesh" ? -1 : 1);
    // The chord of an arc lies half its turn off the way it began with.
    const chord = 2 * radius * Math.sin(Math.abs(angle) / 2);
    p += chord * Math.cos(turn + angle / 2);
    q += chord * Math.sin(turn + angle / 2);
    turn += angle;
    at = Math.min(s, centre + half);
  }
  on(s);
  const out: Vec = [-Math.sin(turn), Math.cos(turn)];
  const face = (d: number): Vec => [p + d * out[0], q + d * out[1]];
  const { thickness, neutral } = leather;
  return {
    flesh: face(-neutral * thickness),
    grain: face((1 - neutral) * thickness),
    way: [Math.cos(turn), Math.sin(turn)],
    out,
  };
}
