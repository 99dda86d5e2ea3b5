import { capital } from "../../model/words.ts";
import type { DieFeature } from "../feature.ts";
import { dieRule } from "./dieRule.ts";

const HOLES: readonly string[] = ["slot", "opening", "round hole"];

/** Holes of one kind and size carry one letter: "A" of "A12". */
const sizeLetter = ({ letter = "" }: DieFeature): string => letter.replace(/\d+$/, "");

/** Those of one letter together, in order. */
function bySize(features: readonly DieFeature[]): readonly (readonly DieFeature[])[] {
  const letters = [...new Set(features.map(sizeLetter))];
  return letters.map((letter) => features.filter((f) => sizeLetter(f) === letter));
}

/** "Slot A1", "A1 to A4, 4 slots,". */
function which(some: readonly DieFeature[]): string {
  const [{ kind, letter }, last] = [some[0]!, some.at(-1)!];
  if (some.length === 1) return capital(`${kind} ${letter}`);
  return `${letter} ${some.length === 2 ? "and" : "to"} ${last.letter}, ${some.length} ${kind}s,`;
}

/** Slots too narrow for the rule and holes too small for a tube are cut by hand: said, so that nobody looks for them. */
export const leftForHand = dieRule(
  "die-left-for-hand",
  "slots are wide enough for the rule and holes large enough for a tube",
  ({ features, piece }) =>
    bySize(features.filter(({ kind, made }) => made === "by hand afterwards" && HOLES.includes(kind))).map(
      (some) => ({
        severity: "note" as const,
        place: some.map(({ id }) => id).join(", "),
        at: some[0]!.at,
        message: `${which(some)} of ${piece.name} ${some.length === 1 ? "is" : "are"} not in the die: ${some[0]!.why}.`,
        mend: `Cut by hand afterwards, make it larger on the piece (pieces.${piece.id}), or change ${some[0]!.kind === "round hole" ? "die.least-tube" : "die.least-slot"} if the die maker does better.`,
      }),
    ),
);
