import type { Made } from "../../model/article.ts";
import type { Bench, WorkStep } from "../../model/bench.ts";
import { capital } from "../../model/words.ts";
import type { DocumentBlock } from "./document.ts";
import { namesIn, sayMinutes, sayTime } from "./words.ts";

// The order of work.

const DIE_CAUTION =
  "Die press: guards and two-hand control as local rules and the press's maker demand. Keep hands clear.";

/** What to take care of: as the article says, and of a die where one is pressed. */
export const careSection = (
  steps: readonly WorkStep[],
  made: Pick<Made, "cautions">,
): readonly DocumentBlock[] => {
  const items = [...made.cautions, ...(steps.some((s) => s.does === "cutByDie") ? [DIE_CAUTION] : [])];
  return items.length === 0
    ? []
    : [
        { kind: "heading", text: "Take care" },
        { kind: "list", items },
      ];
};

/** What the steps take together, and how many have no time. */
function sayTotal({ steps, minutes }: Pick<Bench, "steps" | "minutes">): string {
  const untimed = steps.filter((s) => s.minutes === undefined).length;
  if (untimed === steps.length) return "No step has a time: your shop file says how long work takes.";
  const rest =
    untimed === 0
      ? ""
      : `; ${untimed} of the ${steps.length} steps ${untimed === 1 ? "has" : "have"} no time`;
  return `Together ${sayTime(minutes)}${rest}.`;
}

/** Pieces of a step that its own sentence doesn't name. */
function unnamedIn({ says, pieces }: WorkStep, made: Pick<Made, "pieces">): readonly string[] {
  const words = says.toLowerCase();
  return pieces.filter((id) => {
    const name = made.pieces.find((p) => p.id === id)?.name ?? id;
    // Whole words: "backs" names no back.
    return !` ${words.replace(/[^\p{L}\p{N}-]+/gu, " ")} `.includes(
      ` ${name.toLowerCase().split(/[:,]/)[0]!} `,
    );
  });
}

/** The steps, numbered, each with its tool, setting, pieces that it doesn't name and minutes, and the sum of these. */
export function stepsSection(
  bench: Pick<Bench, "steps" | "minutes">,
  made: Pick<Made, "pieces">,
): readonly DocumentBlock[] {
  const heading: DocumentBlock = { kind: "heading", text: "Order of work" };
  if (bench.steps.length === 0) return [heading, { kind: "text", text: "None." }];
  const names = namesIn(made);
  const steps = bench.steps.map((s) => ({
    text: s.says,
    detail: [
      capital([s.tool, s.setting].filter((w) => w !== "").join(": ")),
      unnamedIn(s, made).length === 0 ? "" : `On: ${names(unnamedIn(s, made))}`,
    ]
      .filter((w) => w !== "")
      .join(". "),
    time: s.minutes === undefined ? "" : sayMinutes(s.minutes),
  }));
  return [heading, { kind: "steps", steps }, { kind: "text", text: sayTotal(bench) }];
}
