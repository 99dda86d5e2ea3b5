// What a die's drawing says in words, apart from its numbers.
import type { Die } from "../../die/die.ts";
import type { Price } from "../../die/price.ts";
import { ruleLengths } from "../../die/rulePaths.ts";
import { boundsOf } from "../../geometry/bounds.ts";
import type { Units } from "../../model/say.ts";
import { printNumber } from "../../units/index.ts";
import { sayMoney } from "../../units/money.ts";
import { sayLeather } from "../piece/say.ts";
import type { DieTitle } from "./dieTitle.ts";
import { bothUnits, sayBoth } from "./figures.ts";
import { innerRows } from "./innerWords.ts";

/** To be written on. */
const BLANK = "_".repeat(16);

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

/** Of sizes and of places; `say` writes a length with its unit. */
export function sayTolerance({ settings }: Die, say: (mm: number) => string): string {
  const by = say(settings.tolerance.value);
  return `± ${by} on sizes; edges and centres within ${by} of the tables' places`;
}

/** The same for the title block. */
export const toleranceShort = ({ settings }: Die, units: Units): string => {
  const by = sayBoth(settings.tolerance.value, units);
  return `sizes ± ${by}, places within ${by}`;
};

/** `strap leather, 12.5 oz (4.96 mm), up to 5.16 mm`. */
export function sayLeatherUpTo({ piece }: Die, units: Units): string {
  const { thickness, thickest } = piece.leather;
  const most = printNumber(thickest, 2);
  const more = most !== printNumber(thickness, 2) && thickest > thickness;
  return `${sayLeather(piece, units)}${more ? `, up to ${most} mm` : ""}`;
}

/** On every sheet of a drawing that only defines the two of a nested die; nothing on one of a die to make. */
export const sayDefinesOnly = ({ board }: DieTitle): string | undefined =>
  board === undefined
    ? undefined
    : `Definition only: do not make this die. It defines each of the two on one board; make the board of drawing ${board} instead.`;

/** How many dies make all pieces of this kind, as ordered. */
export function sayDies({ piece, axis }: Die, { board, instead }: DieTitle): string {
  if (board !== undefined) return "0: definition only, do not make";
  if (instead)
    return piece.hand === "pair" && !axis ? "1 board: a left and a right" : "1 board, no single dies";
  if (piece.hand === "same") return "1";
  return axis ? "1, for left and right" : "2: a left and a right";
}

function sayHands({ piece, axis }: Die, { board }: DieTitle): string {
  const own = axis
    ? "What the die cuts is its own mirror image about the centre line."
    : "What the die cuts is not its own mirror image: do not turn it over.";
  if (board !== undefined) return own;
  if (piece.hand === "same")
    return `${own} ${piece.count === 1 ? "There is one piece" : "All pieces are alike"}: 1 die.`;
  return axis
    ? `${own} Left and right are cut by the same die: 1 die.`
    : `${own} Left and right are a pair: a die for each side, each with its own sheets; these sheets are for the side in the title block.`;
}

/** Length of rule and tubes of so many on one board. */
export function sayRules(die: Die, units: Units, dies = 1): string {
  const of = ruleLengths(die.rules);
  const [rule, tubes] = [dies * of.rule, dies * of.tubes];
  const count = dies * die.rules.filter(({ kind }) => kind === "tube").length;
  const bent = `${sayBoth(rule, units)} of rule`;
  return count === 0
    ? `${bent}, no tubes`
    : `${bent}, ${count} ${count === 1 ? "tube" : "tubes"} (${sayBoth(tubes, units)} round ${count === 1 ? "its edge" : "their edges"})`;
}

function sayReach({ rules }: Die, units: Units): string {
  const { minX, minY, maxX, maxY } = boundsOf(rules[0]!.path);
  return `x from ${bothUnits(minX, units)} to ${bothUnits(maxX, units)}, y from ${bothUnits(minY, units)} to ${bothUnits(maxY, units)}`;
}

/** The side in words that need no template beside them; the view of a right is the right's already. */
export function saySide(side: string): string {
  const one = /^(left|right): template/.exec(side);
  return one ? `${one[1]}, as this view shows it` : side;
}

/** What the order's prices cover, and what they leave out. */
export function sayPriceOf({ rules }: Die, price: Price | undefined): string | undefined {
  if (!price || price.lines.length === 0) return undefined;
  const parts = { rule: "the rule", tubes: "the tubes", board: "the board with its rubber" } as const;
  const within = price.lines.map(({ what }) => what);
  const list = (all: readonly (keyof typeof parts)[], and: string): string =>
    all.map((what) => parts[what]).join(and);
  const without = (["rule", "tubes", "board"] as const).filter(
    (what) => !within.includes(what) && (what !== "tubes" || rules.some(({ kind }) => kind === "tube")),
  );
  const rest = without.length === 0 ? "" : `, without ${list(without, " and ")}`;
  return `${sayMoney(price.minor, price.currency)} for ${list(within, " and ")}${within.length === 1 ? " alone" : ""}${rest}, by the prices that we know. Yours count: please quote.`;
}

/** Who made the die asks: written by hand where the drawing has no owner. */
const ASK_WHOM = `Whom to ask: write here ${BLANK}${BLANK}`;

/** Nothing where the drawing says whose it is. */
export const sayWhomToAsk = ({ owner }: DieTitle): string | undefined =>
  owner.trim() === "" ? ASK_WHOM : undefined;

export const BOARD = `Yours to choose. Which, and how thick? Please write it here: material ${BLANK} thickness ${BLANK} mm`;
export const RUBBER = `Yours to choose. Which, and how high? Please write it here: kind ${BLANK} height ${BLANK} mm`;
export const JOINTS =
  "Where the rule is joined is yours to choose. Mark the die with its number and revision.";

/** Of a single die that is made: what it costs and what its maker chooses. */
function makingRows(die: Die): readonly Fact[] {
  const estimate = sayPriceOf(die, die.price);
  return [
    ...(estimate === undefined ? [] : [["Estimated price", estimate] as const]),
    ["Board", BOARD],
    ["Rubber", RUBBER],
    ["Joints, marking", JOINTS],
  ];
}

const hasNotches = ({ rules }: Die): boolean => rules.some(({ kind }) => kind === "notch");

/** What is inside the wide lines; notches only where the die has any. */
const sayInDie = (die: Die): string =>
  `What is drawn in wide lines: the outline, and ${hasNotches(die) ? "slots, holes and notches" : "slots and holes"} marked “in the die” in the table of holes.`;

const sayBetween = (die: Die, units: Units): string =>
  `At least ${sayBoth(die.settings.spacing.value, units)} clear, so that ejection rubber goes in${hasNotches(die) ? "; except where a notch’s rule stands on the outline’s" : ""}.`;

/** All that is so for the whole die, in the order in which it is asked. */
export function factsOf(die: Die, units: Units, title: DieTitle): readonly Fact[] {
  const { settings } = die;
  const { side, hand } = title;
  const definesOnly = sayDefinesOnly(title);
  const whom = sayWhomToAsk(title);
  return [
    ...(definesOnly === undefined ? [] : [["Ordered", definesOnly] as const]),
    ...(whom === undefined ? [] : [["Questions", whom] as const]),
    [
      "What to make",
      "A steel rule die for leather. Make what the tables say: they are the definition. Sizes in ( ) on the view follow from them and are there to check by.",
    ],
    [
      "Seen from",
      "The grain side of the leather, which lies up on the press. The die comes down on it: who looks at its cutting edges sees the mirror image of the view.",
    ],
    ["Side", `${saySide(side)}${hand === "" ? "" : `; pieces to be cut: ${hand}`}.`],
    ["Left and right", sayHands(die, title)],
    ["In the die", sayInDie(die)],
    ["Not in the die", "What is drawn in narrow lines, and what the tables mark “by hand afterwards”."],
    ["Tolerance", `${sayTolerance(die, (mm) => sayBoth(mm, units))}.`],
    ["Rule", `${sayRule(die, units)}. It is ${BEVELS[settings.bevel]}.`],
    ["Rule in all", `${sayRules(die, units)}.`],
    ["Between rules", sayBetween(die, units)],
    ...innerRows(die, units),
    ["Leather", `${sayLeatherUpTo(die, units)}.`],
    ...(definesOnly === undefined ? makingRows(die) : []),
    [
      "Datum",
      `x and y count from the two lines marked 0 on the view, x to the right, y up. The outline reaches ${sayReach(die, units)}. The DXF file has the same datum.`,
    ],
  ];
}
