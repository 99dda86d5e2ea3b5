import { sectionOf } from "../measure/dimensions.ts";
import { withoutNumbers } from "../measure/sound.ts";
import { rule } from "../rule.ts";

/** Every coordinate is a number; the other rules pass over a piece that fails here. */
export const numbersSound = rule("numbers-sound", "every place on a piece is a number", (job) =>
  job.pieces.flatMap((piece) =>
    withoutNumbers(piece).map((place) => ({
      severity: "error" as const,
      piece: piece.id,
      place,
      message: `The ${place} of ${piece.name} can't be drawn: its measures give no number. They contradict each other.`,
      value: "no number",
      limit: "a number",
      mend: `Look at the other errors first, then at the measures under ${sectionOf(piece)}: something is too short for what it must go round.`,
    })),
  ),
);
