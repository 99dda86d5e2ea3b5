import { dieRule, saySize } from "./dieRule.ts";
import { ruleName } from "./ruleName.ts";

/** What a die's drawing promises, mm. */
const PROMISED_MM = 0.05;

/** The arcs that the rule is bent to lie on the piece's own lines. */
export const arcsFit = dieRule(
  "die-arcs-fit",
  "the rule's arcs lie within 0.05 mm of the piece's lines",
  (die, units) =>
    die.rules
      .filter(({ error }) => error > PROMISED_MM)
      .map(({ id, path, error }) => ({
        severity: "error" as const,
        place: id,
        at: path.start,
        message: `The arcs of ${ruleName(die, id)} on ${die.piece.name} stray ${saySize(error, units)} from the piece: it turns back on itself somewhere, and no rule can follow.`,
        value: saySize(error, units),
        limit: `up to ${saySize(PROMISED_MM, units)}`,
        mend: `Make that curve gentler on the piece (pieces.${die.piece.id}).`,
      })),
);
