// How long the shank of a screw or rivet must be for the leather that it goes through.

/** A barrel this much shorter than what it goes through pinches it, mm; common practice, no source. */
export const PINCH_MM = { least: 0.3, most: 0.8 } as const;

/**
 * What a solid rivet's shank has beyond the leather, in its own diameters. Least: enough to be hammered over,
 * or to take a burr; common practice, no source. Most: jmodela.coffeecup.com/rivets.html: the material and about
 * 1.5 shanks, so a 1/4 in rivet is 3/8 in longer than what it goes through.
 */
export const RIVET_BEYOND_SHANKS = { least: 1, most: 1.5 } as const;

export type ShankRange = { readonly from: number; readonly to: number };

/**
 * Lengths of shank that do, mm. `stack` is all that it goes through, one layer on the other, mm; `shank` its
 * diameter, mm. A binding screw's barrel is shorter than the stack, so that it pinches; a rivet's is longer.
 */
export const shankRange = (kind: "binding screw" | "rivet", shank: number, stack: number): ShankRange =>
  kind === "rivet"
    ? {
        from: stack + RIVET_BEYOND_SHANKS.least * shank,
        to: stack + RIVET_BEYOND_SHANKS.most * shank,
      }
    : { from: stack - PINCH_MM.most, to: stack - PINCH_MM.least };
