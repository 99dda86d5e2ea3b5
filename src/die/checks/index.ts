// Every rule on a die, in the order a die maker would look.
import type { Finding } from "../../model/finding.ts";
import type { Units } from "../../model/say.ts";
import type { Die } from "../die.ts";
import { arcsFit } from "./arcsFit.ts";
import { bendRadius } from "./bendRadius.ts";
import type { DieRule } from "./dieRule.ts";
import { leftForHand } from "./leftForHand.ts";
import { mirrorImage } from "./mirrorImage.ts";
import { notchesShow } from "./notchesShow.ts";
import { pressEnough } from "./pressEnough.ts";
import { priced } from "./priced.ts";
import { ruleSpacing, tubeSpacing } from "./ruleSpacing.ts";
import { thickLeather } from "./thickLeather.ts";

export type { DieRule } from "./dieRule.ts";

export const DIE_RULES: readonly DieRule[] = [
  arcsFit,
  bendRadius,
  ruleSpacing,
  tubeSpacing,
  thickLeather,
  leftForHand,
  notchesShow,
  mirrorImage,
  pressEnough,
  priced,
];

const RANK = { error: 0, caution: 1, note: 2 } as const;

/** What the rules find in a die: errors first, then in the rules' order. */
export const checkDie = (die: Die, units: Units): readonly Finding[] =>
  [...DIE_RULES.flatMap((rule) => rule.check(die, units))].sort(
    (a, b) => RANK[a.severity] - RANK[b.severity],
  );

/** To be printed with every die and every press load. */
export const PRESS_CAUTIONS: readonly string[] = [
  "Press guarding and two-hand control as local rules and the press's maker demand; they come before this sheet.",
  "The press load is an estimate: begin with little force, and never put a hand under a die that is under load.",
];
