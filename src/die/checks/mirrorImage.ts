import { dieRule } from "./dieRule.ts";

/** Whether one die does for left and right, looked at on what it cuts. */
export const mirrorImage = dieRule(
  "die-left-and-right",
  "a pair has a die for each side, or one that is its own mirror image",
  ({ axis, piece }) => {
    const pair = piece.hand === "pair";
    if (axis || !pair) return [];
    return [
      {
        severity: "caution" as const,
        place: "outline",
        message: `${piece.name} is a pair and what its die cuts is not its own mirror image: one die makes one side only.`,
        mend: "Order a left and a right die, or a pair on one board; or cut the other side with the hide turned flesh side up.",
      },
    ];
  },
);
