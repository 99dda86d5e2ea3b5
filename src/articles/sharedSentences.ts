import type { Condition, Sentence, Told } from "../model/sentence.ts";

// What every article's order says alike, and sentences that several articles say of their own names.

/** Names of one section. */
export const namesUnder = (path: string, ...names: readonly string[]): readonly string[] =>
  names.map((name) => `${path}.${name}`);

/** A trial fold is measured seldom; then it is set in the table. */
export const leatherRest = (path: string): readonly string[] =>
  namesUnder(path, "trial-bar", "trial-held-at", "trial-marks", "neutral");

export const buckleRest = (path: string): readonly string[] =>
  namesUnder(path, "tongue-breadth", "overhang", "hole-offset", "open");

export const keeperRest = (path: string): readonly string[] =>
  namesUnder(path, "ease-width", "ease-height", "lap", "skive-to");

/** What is said of a buckle, after its name. */
export const buckleText = (path: string): string =>
  `is {${path}.inside} wide inside, with a bar of {${path}.bar} and a tongue {${path}.tongue} thick`;

/** While the name has one of these values. */
export const when = (name: string, ...is: readonly string[]): Condition => ({ name, is });

const finish: readonly Sentence[] = [
  {
    text: "The edges are {finish.edges}; their corners are taken off with an edging tool first: {finish.edged}.",
  },
  {
    text: "Colour: {finish.dye}; thread: {finish.thread}; cut with a steel die instead of by hand: {finish.by-die}.",
  },
];

const price: readonly Sentence[] = [
  {
    text: "Number ordered: {price.quantity}, with {price.minutes} minutes of work besides what is reckoned; the customer brings the leather: {price.own-leather}.",
  },
  {
    text: "Shop file: {shop}; for this order alone, margin {price.margin}, deposit {price.deposit} and tax {price.tax}.",
  },
];

const printed: readonly Sentence[] = [
  {
    text: "Printed on {paper}, with {margin} left white at the edges and the sheets glued {overlap} over one another.",
  },
  {
    text: "Unit where none is written: {units}; straight straps drawn as two ends and a break: {ends-only}.",
  },
];

/** How it is finished, priced and printed, told of every article after its own. `for` stands in each article's first sentence. */
export const benchTold: Told = { sentences: [...finish, ...price, ...printed], rest: [] };

export const dieTold: Told = {
  sentences: [
    {
      text: "A steel die is bent of {die.rule} rule with its bevel on the {die.bevel}, and cuts true to {die.tolerance}; the press is rated for {die.press}.",
    },
  ],
  rest: [
    ...namesUnder("die", "rule-thickness", "rule-height", "spacing", "least-radius", "least-slot", "notches"),
    ...namesUnder("die", "least-tube", "board-margin", "currency"),
    ...namesUnder("die", "price-per-mm", "price-per-tube", "price-for-board"),
    ...namesUnder("die", "shear", "rubber-pressure", "rubber-strip", "small-tube", "small-tube-extra"),
    ...namesUnder("die", "close-rules", "close-rules-extra", "owner", "number", "revision", "date"),
  ],
};
