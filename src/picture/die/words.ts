// What a die's drawing says in words, apart from its numbers.
import type { Die } from "../../die/die.ts";
import { ruleLengths } from "../../die/rulePaths.ts";
import { boundsOf } from "../../geometry/bounds.ts";
import type { Units } from "../../model/say.ts";
import { printNumber } from "../../units/index.ts";
import { sayLeather } from "../piece/say.ts";
import { bothUnits, sayBoth } from "./figures.ts";

/** A line of the list of facts: what it is about, and what is so. */
export type Fact = readonly [about: string, says: string];

const BEVELS = {
  centre: "ground on both sides (centre bevel); its cutting edge stands on the line as drawn",
  "waste side":
    "ground on the waste's side: the face towards the leather that is kept is upright and stands on the line as drawn",
  "leather side":
    "ground on the side of the leather that is kept: the face towards the waste is upright and stands on the line as drawn",
} as const;

/** `bevel both sides`, for the title block. */
export const BEVEL_SHORT = {
  centre: "both sides (centre)",
  "waste side": "waste side",
  "leather side": "leather side",
} as const;

export const sayRule = ({ settings }: Die, units: Units): string =>
  `${settings.rule}, ${sayBoth(settings.ruleThickness.value, units)} thick, ${sayBoth(settings.ruleHeight.value, units)} high`;

export const sayTolerance = ({ settings }: Die, units: Units): string =>
  `± ${sayBoth(settings.tolerance.value, units)}`;

/** How many dies make all pieces of this kind. */
export function sayDies({ piece, axis }: Die): string {
  if (piece.hand === "same") return "1";
  return axis ? "1, for left and right" : "2: a left and a right";
}

function sayHands({ piece, axis }: Die): string {
  const own = axis
    ? "What the die cuts is its own mirror image about the centre line."
    : "What the die cuts is not its own mirror image: do not turn it over.";
  if (piece.hand === "same") return `${own} All pieces are alike: 1 die.`;
  return axis
    ? `${own} Left and right are cut by the same die: 1 die.`
    : `${own} Left and right are a pair: a die for each side, each with its own sheets; these sheets are for the side in the title block.`;
}

function sayRules(die: Die, units: Units): string {
  const { rule, tubes } = ruleLengths(die.rules);
  const count = die.rules.filter(({ kind }) => kind === "tube").length;
  const bent = `${sayBoth(rule, units)} of rule`;
  return count === 0
    ? `${bent}, no tubes`
    : `${bent}, ${count} ${count === 1 ? "tube" : "tubes"} (${sayBoth(tubes, units)} round ${count === 1 ? "its edge" : "their edges"})`;
}

function sayReach({ rules }: Die, units: Units): string {
  const { minX, minY, maxX, maxY } = boundsOf(rules[0]!.path);
  return `x from ${bothUnits(minX, units)} to ${bothUnits(maxX, units)}, y from ${bothUnits(minY, units)} to ${bothUnits(maxY, units)}`;
}

/** All that is so for the whole die, in the order in which it is asked. */
export function factsOf(die: Die, units: Units, hand: string, side: string): readonly Fact[] {
  const { settings } = die;
  return [
    [
      "What to make",
      "A steel rule die for leather. Make what the tables say: they are the definition. Sizes in ( ) on the view follow from them and are there to check by.",
    ],
    [
      "Seen from",
      "The grain side of the leather, which lies up on the press. The die comes down on it: who looks at its cutting edges sees the mirror image of the view.",
    ],
    ["Side", [side, hand].filter((s) => s !== "").join("; ")],
    ["Left and right", sayHands(die)],
    [
      "In the die",
      "What is drawn in wide lines: the outline, and slots and holes marked “in the die” in the table of holes.",
    ],
    ["Not in the die", "What is drawn in narrow lines, and what the tables mark “by hand afterwards”."],
    ["Tolerance", `${sayTolerance(die, units)}, of the cut, from the tables.`],
    ["Rule", `${sayRule(die, units)}. It is ${BEVELS[settings.bevel]}.`],
    ["Rule in all", `${sayRules(die, units)}.`],
    [
      "Between rules",
      `At least ${sayBoth(settings.spacing.value, units)} clear, so that ejection rubber goes in.`,
    ],
    ...(die.rules.some(({ kind }) => kind === "tube")
      ? [["Round holes", "Tubes; the size is that of the hole, inside the cutting edge."] as const]
      : []),
    [
      "Leather",
      `${sayLeather(die.piece, units)}${die.piece.leather.thickest > die.piece.leather.thickness ? `, ${printNumber(die.piece.leather.thickest, 2)} mm at its thickest` : ""}.`,
    ],
    [
      "Yours to choose",
      "Board and its thickness, ejection rubber, where the rule is joined. Mark the die with its number and revision.",
    ],
    [
      "Datum",
      `x and y count from the two lines marked 0 on the view, x to the right, y up. The outline reaches ${sayReach(die, units)}. The DXF file has the same datum.`,
    ],
  ];
}
