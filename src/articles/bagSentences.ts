import type { Condition, Sentence, Told } from "../model/sentence.ts";
import { closureRest, closureSentences } from "./bagClosureSentences.ts";
import { buckleRest, buckleText, keeperRest, leatherRest, namesUnder, when } from "./sharedSentences.ts";

// A bag's order, as it would stand in the order book.

const onShoulder = when("bag.carry", "shoulder strap");
const made = (...ways: readonly string[]): Condition => when("bag.made", ...ways);

const whole: readonly Sentence[] = [
  { text: "A bag for {for}, made to hold {measures.holds}." },
  {
    text: "Measured {measures.measured}, it is {measures.width} wide, {measures.height} high and {measures.depth} deep at its base.",
  },
  { text: "Made with: {bag.made}; top: {bag.opening}; carried by: {bag.carry}." },
  {
    text: "Pocket: {bag.pocket}; lined: {bag.lining}; patches behind fittings and straps' roots: {bag.patches}.",
  },
  {
    text: "The body is cut from {leather.body.thickness} leather, the gusset from {leather.gusset.thickness}, straps and handles from {leather.strap.thickness}.",
  },
];

const body: readonly Sentence[] = [
  {
    text: "At the top the front is {pieces.body.top-width} wide and its edge {pieces.body.top}; the gusset is {pieces.gusset.top-width} wide there.",
  },
  {
    text: "The middle of the top edge lies {pieces.body.dip} below its sides.",
    when: when("pieces.body.top", "dipped"),
  },
  {
    text: "The corners of the base are {pieces.body.corners}.",
    when: made("flanged gusset", "turned gusset"),
  },
  {
    text: "Each corner takes up {pieces.body.corner-radius} of either edge.",
    when: when("pieces.body.corners", "round", "clipped"),
    and: made("flanged gusset", "turned gusset"),
  },
  {
    text: "The body folds beside the base with a radius of {pieces.body.base-fold} inside.",
    when: made("side gussets", "end panels"),
  },
  {
    text: "The flange reaches {bag.flange} from the gusset's web to the finished edge.",
    when: made("flanged gusset", "side gussets"),
  },
  {
    text: "The gusset is damped and moulded round the corners: {bag.wet-moulded}.",
    when: made("flanged gusset"),
  },
  {
    text: "From a turned seam to the cut edge: {bag.allowance}.",
    when: made("turned gusset"),
  },
  {
    text: "The side gussets fold inward when the bag is shut: {pieces.gusset.inward-fold}.",
    when: made("side gussets"),
  },
];

const carried: readonly Sentence[] = [
  {
    text: "Straps or handles are {straps.width} wide.",
    when: when("bag.carry", "shoulder strap", "handles"),
  },
  {
    text: "The bag hangs {measures.shoulder-drop} below the top of the shoulder; how its strap is fixed: {bag.strap-fixed}, at places {straps.rings-apart} apart, {straps.fixed-below} below the gusset's top edge.",
    when: onShoulder,
  },
  {
    text: "The rings are {hardware.ring.inside} wide and {hardware.ring.height} high inside, of {hardware.ring.bar} wire; their tabs are {pieces.strap-tab.fixed}, {pieces.strap-tab.length} from the ring.",
    when: when("bag.strap-fixed", "ring tabs"),
    and: onShoulder,
  },
  {
    text: `The strap's buckle ${buckleText("hardware.buckle")}; its bar lies {pieces.buckle-strap.length} from where the strap meets the bag.`,
    when: onShoulder,
  },
  {
    text: "The billet has {pieces.billet-strap.holes} holes of {pieces.billet-strap.hole-size}, {pieces.billet-strap.hole-pitch} apart; its point is {pieces.billet-strap.point}, with {pieces.billet-strap.to-tip} from the first hole to the tip.",
    when: onShoulder,
  },
  {
    text: "A fixed keeper: {straps.keeper}; a running keeper: {straps.running-keeper}; keepers are cut from {leather.keeper.thickness} leather.",
    when: onShoulder,
  },
  {
    text: "A handle rises {measures.hand-drop} above the top edge; its ends are {pieces.handle.fixed}, {pieces.handle.apart} apart and {pieces.handle.fixed-below} below the edge.",
    when: when("bag.carry", "handles"),
  },
];

const inside: readonly Sentence[] = [
  {
    text: "The pocket is {pieces.pocket.width} wide and {pieces.pocket.height} high, its top {pieces.pocket.top}.",
    when: when("bag.pocket", "outside", "inside"),
  },
  {
    text: "The hem of the pocket is {pieces.pocket.hem} deep.",
    when: when("pieces.pocket.top", "hemmed"),
    and: when("bag.pocket", "outside", "inside"),
  },
  {
    text: "The lining is {leather.lining.thickness} thick, cut {pieces.lining.allowance} outside the edge of what it lines.",
    when: when("bag.lining", "yes"),
  },
];

const stitched: readonly Sentence[] = [
  {
    text: "Stitched at {stitching.pitch}, {stitching.back-stitches} stitches sewn back at each end; spacing: {stitching.mode}; marks: {stitching.marks}; stitch line in from the edge: {stitching.inset}.",
  },
  {
    text: "The round stitch holes are {stitching.hole-size} across.",
    when: when("stitching.marks", "round holes"),
  },
];

const strapRest: readonly string[] = [
  ...namesUnder("straps", "shoulder-radius", "rivets", "box-length", "end-corner"),
  ...buckleRest("hardware.buckle"),
  ...namesUnder("hardware.fixing", "kind", "barrel", "head", "spacing"),
  ...namesUnder("pieces.keeper", "breadth", "seam"),
  ...keeperRest("pieces.keeper"),
  ...namesUnder("pieces.running-keeper", "breadth", "seam"),
  ...keeperRest("pieces.running-keeper"),
  ...namesUnder("pieces.strap-tab", "left-turn-back", "crease"),
  ...namesUnder("pieces.buckle-strap", "feather", "left-turn-back", "right-turn-back", "crease"),
  ...namesUnder("pieces.billet-strap", "left-turn-back", "crease"),
  ...namesUnder("pieces.handle", "crease", "grip-radius"),
];

export const bagTold: Told = {
  sentences: [...whole, ...body, ...closureSentences, ...carried, ...inside, ...stitched],
  rest: [
    ...namesUnder("measures", "filled-depth"),
    ...["body", "gusset", "strap", "keeper"].flatMap((leather) => [
      `leather.${leather}.skive-to`,
      ...leatherRest(`leather.${leather}`),
    ]),
    ...strapRest,
    ...closureRest,
    ...namesUnder("pieces.body", "seam-start", "base-sag", "clip-round", "glue-width"),
    ...namesUnder("pieces.gusset", "flange-fold", "trim", "glue-width", "clip-spacing"),
    ...namesUnder("pieces.pocket", "rise", "corner-radius", "hem-fold", "seam-start"),
    ...namesUnder("leather.patch", "thickness"),
    ...namesUnder("pieces.patch", "border", "corner-radius"),
  ],
};
