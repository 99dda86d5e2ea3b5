import { countOf, type Draft, type WorkInput } from "./draft.ts";

// Damping, right before what is done damp: leather dries while other work is done.

/** Said of all that is folded damp: nothing is glued, riveted or sewn while it is. */
export const LET_DRY = "let it dry in that shape";

/** Each step with the damping that it needs before it; that waits for all that the step waits for. */
export const withDamping = (steps: readonly Draft[], input: WorkInput): readonly Draft[] =>
  steps.flatMap((step): readonly Draft[] => {
    const [id] = step.pieces;
    const piece = input.made.pieces.find((p) => p.id === id);
    if (step.damp === undefined || !piece) return [step];
    const damping: Draft = {
      id: `damp.${step.id}`,
      phase: step.phase,
      does: "case",
      says: step.damp,
      pieces: [piece.id],
      tool: "sponge and water",
      setting: "",
      amount: countOf(piece, input),
      after: step.after,
      serves: [],
      rightBefore: step.id,
    };
    return [damping, { ...step, after: [...step.after, damping.id] }];
  });
