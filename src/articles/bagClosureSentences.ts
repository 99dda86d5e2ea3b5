import type { Condition, Sentence } from "../model/sentence.ts";
import { buckleRest, buckleText, namesUnder, when } from "./sharedSentences.ts";

// What a bag's order says of its flap and of what holds it shut.

const flap = when("bag.opening", "flap");
/** Told of these closures, where there is a flap to close. */
const shutBy = (...closures: readonly string[]): { readonly when: Condition; readonly and: Condition } => ({
  when: when("bag.closure", ...closures),
  and: flap,
});

const flapSentences: readonly Sentence[] = [
  {
    text: "The flap ends {pieces.body.flap-end} above the bag's bottom, its edge {pieces.body.flap-edge}; what holds it shut: {bag.closure}.",
    when: flap,
  },
  {
    text: "The shaped part of the flap is {pieces.body.flap-shape} deep.",
    when: when("pieces.body.flap-edge", "round", "pointed", "bell"),
    or: when("bag.closure", "tuck-in tongue"),
    and: flap,
  },
  {
    text: "The closure's middle lies {pieces.body.closure-height} above the bag's bottom.",
    ...shutBy("press stud", "magnetic snap", "turn lock", "strap and buckle", "tuck-in tongue"),
  },
];

const hardware: readonly Sentence[] = [
  {
    text: "The stud's cap is {hardware.closure.cap} across; it needs a hole of {hardware.closure.cap-hole} in the flap and of {hardware.closure.stud-hole} in the front.",
    ...shutBy("press stud"),
  },
  { text: "The snap's discs are {hardware.closure.disc} across.", ...shutBy("magnetic snap") },
  {
    text: "The lock's opening is {hardware.closure.opening-length} by {hardware.closure.opening-width}, its plate {hardware.closure.plate-length} by {hardware.closure.plate-width}, its button's base {hardware.closure.base-length} by {hardware.closure.base-width}.",
    ...shutBy("turn lock"),
  },
  {
    text: "The prongs are {hardware.closure.prong-breadth} broad and {hardware.closure.prong-thickness} thick, {hardware.closure.prong-spacing} apart.",
    ...shutBy("magnetic snap", "turn lock"),
  },
  {
    text: "The tongue is {pieces.body.tongue-width} wide, and {hardware.closure.tuck} of it goes through its slot.",
    ...shutBy("tuck-in tongue"),
  },
];

const strapAndBuckle: readonly Sentence[] = [
  {
    text: `The closure's strap is {hardware.closure-buckle.strap-width} wide; its buckle ${buckleText("hardware.closure-buckle")}, and its frame reaches {hardware.closure-buckle.frame-length} from the bar.`,
    ...shutBy("strap and buckle"),
  },
  {
    text: "The tab on the front is {pieces.closure-tab.length} from the bar to its nearer rivet; the billet on the flap is {pieces.closure-billet.length} from its lower rivet to the middle hole.",
    ...shutBy("strap and buckle"),
  },
  {
    text: "The closure's billet has {pieces.closure-billet.holes} holes of {pieces.closure-billet.hole-size}, {pieces.closure-billet.hole-pitch} apart; its point is {pieces.closure-billet.point}, with {pieces.closure-billet.to-tip} from the first hole to the tip.",
    ...shutBy("strap and buckle"),
  },
];

export const closureSentences: readonly Sentence[] = [...flapSentences, ...hardware, ...strapAndBuckle];

export const closureRest: readonly string[] = [
  ...namesUnder("hardware.closure", "slot-room"),
  ...buckleRest("hardware.closure-buckle"),
  ...namesUnder("pieces.closure-tab", "feather", "left-turn-back", "crease"),
  ...namesUnder("pieces.closure-billet", "crease"),
  ...namesUnder("pieces.body", "flap-corner", "bulge", "back-fold", "front-fold"),
];
