// How a bag's front and back are joined.

export const MADE = ["flanged gusset", "turned gusset", "side gussets", "end panels"] as const;
export type Made = (typeof MADE)[number];

/** True when the body is one piece round front, base and back, with an end on either side. */
export const wrapsRound = (made: Made): boolean => made === "side gussets" || made === "end panels";
