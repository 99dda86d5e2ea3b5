import type { Condition, Sentence, Told } from "../model/sentence.ts";
import { buckleRest, keeperRest, leatherRest, namesUnder, when } from "./sharedSentences.ts";

// A strap's order, as it would stand in the order book.

/** Holds while either end is one of these. */
const anEnd = (...is: readonly string[]): { readonly when: Condition; readonly or: Condition } => ({
  when: when("measures.left-end", ...is),
  or: when("measures.right-end", ...is),
});

const whole: readonly Sentence[] = [
  { text: "A strap for {for}." },
  {
    text: "It is {measures.width} wide and {pieces.strap.length} long, reckoned {pieces.strap.reckoned}; how many alike: {measures.count}.",
  },
  { text: "Left end: {measures.left-end}; right end: {measures.right-end}." },
  {
    text: "Cut from {leather.strap.thickness} leather; one thickness for every fold, if wanted: {leather.strap.skive-to}.",
  },
];

const ends: readonly Sentence[] = [
  {
    text: "The buckle is {hardware.buckle.inside} wide inside, with a bar of {hardware.buckle.bar}.",
    ...anEnd("buckle"),
  },
  // A billet's holes and tail are made for the tongue and the keepers of the buckle it goes to, wherever that is.
  { text: "The buckle's tongue is {hardware.buckle.tongue} thick.", ...anEnd("buckle", "billet") },
  {
    text: "A fixed keeper in the buckle's turn-back: {measures.keeper}; a running keeper: {measures.running-keeper}; keepers are cut from {leather.keeper.thickness} leather.",
    ...anEnd("buckle", "billet"),
  },
  {
    text: "The fixed keeper is {pieces.keeper.breadth} broad, its ends {pieces.keeper.seam}.",
    ...anEnd("buckle"),
    and: when("measures.keeper", "yes"),
  },
  {
    text: "The running keeper is {pieces.running-keeper.breadth} broad, its ends {pieces.running-keeper.seam}.",
    ...anEnd("buckle", "billet"),
    and: when("measures.running-keeper", "yes"),
  },
  {
    text: "A billet has {pieces.strap.holes} holes of {pieces.strap.hole-size}, {pieces.strap.hole-pitch} apart.",
    ...anEnd("billet"),
  },
  {
    text: "Its point is {pieces.strap.point}, with {pieces.strap.to-tip} from the first hole to the tip.",
    ...anEnd("billet"),
  },
  { text: "The ring is of {hardware.ring.bar} wire.", ...anEnd("ring") },
  {
    text: "What holds the end: {hardware.fixing.kind}, {hardware.fixing.barrel} thick, {hardware.fixing.spacing} from one to the next.",
    ...anEnd("ring", "riveted"),
  },
  {
    text: "The loop goes round a strap {pieces.strap.around} wide and {pieces.strap.around-thickness} thick.",
    ...anEnd("loop"),
  },
];

const work: readonly Sentence[] = [
  { text: "Stitched at {stitching.pitch}; stitch line in from the edge: {stitching.inset}." },
  { text: "Crease from the edge: {pieces.strap.crease}." },
];

export const strapTold: Told = {
  sentences: [...whole, ...ends, ...work],
  rest: [
    ...leatherRest("leather.strap"),
    ...namesUnder("leather.keeper", "skive-to"),
    ...leatherRest("leather.keeper"),
    ...buckleRest("hardware.buckle"),
    ...namesUnder("hardware.fixing", "head"),
    ...keeperRest("pieces.keeper"),
    ...keeperRest("pieces.running-keeper"),
    ...namesUnder("pieces.strap", "feather", "left-turn-back", "right-turn-back"),
  ],
};
