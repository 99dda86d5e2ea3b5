import { dieRule } from "./dieRule.ts";

/** A die cuts notches as slits; who sees the edge of the finished article sees them. */
export const notchesShow = dieRule(
  "die-notches-show",
  "the die cuts no slits in an edge that shows",
  ({ features, piece }) => {
    const cut = features.filter(({ kind, made }) => kind === "notch" && made === "in the die");
    if (cut.length === 0) return [];
    const one = cut.length === 1;
    return [
      {
        severity: "caution" as const,
        place: cut.map(({ id }) => id).join(", "),
        at: cut[0]!.at,
        message: `The die cuts ${one ? "a notch" : `${cut.length} notches`} of ${piece.name} as ${one ? "a slit" : "slits"} in the edge: in an edge that shows ${one ? "it stays" : "they stay"} visible.`,
        mend: `Where that edge shows, have ${one ? "it" : "them"} marked on the flesh side instead (die.notches: by hand).`,
      },
    ];
  },
);
