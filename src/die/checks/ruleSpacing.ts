import type { Units } from "../../model/say.ts";
import { capital } from "../../model/words.ts";
import type { Die } from "../die.ts";
import { type Gap, narrowGaps } from "../gaps.ts";
import { type DieRule, dieRule, saySize } from "./dieRule.ts";
import { ruleName } from "./ruleName.ts";

/** Steel that touches steel can't be set at all. */
const isError = ({ clear }: Gap): boolean => clear <= 0;

function words(gap: Gap, die: Die): string {
  const [a, b] = [ruleName(die, gap.a), ruleName(die, gap.b)];
  const where = gap.a === gap.b ? `Two sides of ${a}` : `${capital(a)} and ${b}`;
  const between = gap.across === "leather" ? "leather" : "waste";
  return `${where} on ${die.piece.name} stand close, with ${between} between them`;
}

const remark = (gap: Gap, die: Die, units: Units) => {
  const least = die.settings.spacing.value;
  const say = (mm: number): string => saySize(mm, units);
  const left = isError(gap) ? "the rules would run into each other" : `${say(gap.clear)} is left clear`;
  return {
    severity: isError(gap) ? ("error" as const) : ("caution" as const),
    place: gap.a === gap.b ? gap.a : `${gap.a} and ${gap.b}`,
    at: gap.at,
    message: `${words(gap, die)}: ${say(gap.distance)} from edge to edge, and ${left} between the steel. Ejection rubber needs ${say(least)}.`,
    value: say(Math.max(gap.clear, 0)),
    limit: `at least ${say(least)}`,
    mend: `Move them apart on the piece (pieces.${die.piece.id}), leave one to be made by hand (die.least-slot, die.least-tube), or ask the die maker what spacing is possible and say so in die.spacing.`,
  };
};

const spacing = (name: string, means: string, tube: boolean): DieRule =>
  dieRule(name, means, (die, units) =>
    narrowGaps(die.rules, die.settings)
      .filter((gap) => gap.tube === tube)
      .map((gap) => remark(gap, die, units)),
  );

/** Narrow necks of leather and narrow gaps in the waste, between rules. */
export const ruleSpacing = spacing(
  "die-rule-spacing",
  "rules leave room for ejection rubber between them",
  false,
);

/** Tubes keep the same distance from rules and from one another. */
export const tubeSpacing = spacing(
  "die-tube-spacing",
  "tubes leave room for ejection rubber round them",
  true,
);
