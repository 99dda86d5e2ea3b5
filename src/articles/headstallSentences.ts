import type { Sentence, Told } from "../model/sentence.ts";
import { buckleRest, buckleText, keeperRest, leatherRest, namesUnder, when } from "./sharedSentences.ts";

// A one-ear headstall's order, as it would stand in the order book.

const horse: readonly Sentence[] = [
  { text: "A one-ear headstall for {for}." },
  {
    text: "Over the poll it measures {measures.over-poll}, from one {measures.measured-from} to the other; the ear is {measures.ear-base} round its base.",
  },
  {
    text: "From the mouth corner up to where the cheek bears on the ring: {measures.rise} on each side.",
    when: when("measures.measured-from", "mouth corner"),
  },
];

const leather: readonly Sentence[] = [
  {
    text: "The crown and cheeks are cut from {leather.strap.thickness} leather, the ear piece from {leather.ear.thickness} and the keepers from {leather.keeper.thickness}.",
  },
  {
    text: "The straps are skived to {pieces.cheek.skive-at-buckle} round the buckle's bar and {pieces.cheek.skive-at-bit} round the bit ring; one thickness for every fold, if wanted: {leather.strap.skive-to}.",
  },
];

const crown: readonly Sentence[] = [
  {
    text: `The straps are {straps.width} wide, buckled on {straps.buckles}; each buckle ${buckleText("hardware.cheek-buckle")}.`,
  },
  {
    text: "Each buckled end of the crown has {straps.holes} holes of {straps.hole-size}, {straps.pitch} apart; the holes must reach from {straps.cover-from} to {straps.cover-to}.",
  },
  {
    text: "Its point is {pieces.crown.point}, {pieces.crown.point-length} long, with {pieces.crown.to-tip} from the first hole to the tip; a metal tip: {pieces.crown.tip}.",
  },
  {
    text: "The tip's nail goes through a hole of {pieces.crown.tip-nail}.",
    when: when("pieces.crown.tip", "yes"),
  },
];

const cheeks: readonly Sentence[] = [
  {
    text: "The cheeks are {pieces.cheek.body}, {pieces.cheek.effective-length} from the bit ring to the buckle's bar and {pieces.cheek.bit-width} wide at the bit.",
  },
  { text: "Their shape begins {pieces.cheek.swell-from} from the buckle's bar." },
  {
    text: "At their widest they measure {pieces.cheek.widest}.",
    when: when("pieces.cheek.body", "swelled", "scalloped"),
  },
  {
    text: "Scallops along each edge: {pieces.cheek.scallops}.",
    when: when("pieces.cheek.body", "scalloped"),
  },
  {
    text: "Turn-back at the buckle: {pieces.cheek.top-fixing}; at the bit: {hardware.fixing.kind}, round a ring of {hardware.bit-ring.bar} wire.",
  },
];

const keepers: readonly Sentence[] = [
  {
    text: "The fixed keeper lies {pieces.cheek.keeper-place}; it is {pieces.keeper.breadth} broad, its ends {pieces.keeper.seam}.",
  },
  { text: "A running keeper beside each fixed one: {straps.running-keepers}." },
  {
    text: "The running keeper is {pieces.running-keeper.breadth} broad, its ends {pieces.running-keeper.seam}.",
    when: when("straps.running-keepers", "yes"),
  },
];

const earPiece: readonly Sentence[] = [
  {
    text: "The ear piece is {pieces.ear-piece.shape}-shaped and goes round the horse's {pieces.ear-piece.ear} ear, its middle {pieces.ear-piece.offset} from the middle of the poll.",
  },
  {
    text: "It is {pieces.ear-piece.ease} roomier than the ear, and its leather {pieces.ear-piece.band} wide round it.",
  },
  {
    text: "The band goes {pieces.ear-piece.spread} round the ear.",
    when: when("pieces.ear-piece.shape", "band"),
  },
  {
    text: "The oval is {pieces.ear-piece.slenderness} times as long as it is wide.",
    when: when("pieces.ear-piece.shape", "oval"),
  },
];

const work: readonly Sentence[] = [
  { text: "Stitched at {stitching.pitch}; stitch line in from the edge: {stitching.inset}." },
  {
    text: "Creases from the edge: crown {pieces.crown.crease}, cheeks {pieces.cheek.crease}; room for tooling on the cheeks: {pieces.cheek.tooling}.",
  },
  {
    text: "The tooling keeps {pieces.cheek.tooling-border} from the edge; one stamp is this long: {pieces.cheek.stamp}.",
    when: when("pieces.cheek.tooling", "yes"),
  },
  {
    text: "Finishing the edges takes {allowances.edge-finishing} off the width; the rough-cut line runs {allowances.rough-cut} outside.",
  },
];

export const headstallTold: Told = {
  sentences: [...horse, ...leather, ...crown, ...cheeks, ...keepers, ...earPiece, ...work],
  rest: [
    ...leatherRest("leather.strap"),
    ...namesUnder("leather.ear", "skive-to"),
    ...leatherRest("leather.ear"),
    ...namesUnder("leather.keeper", "skive-to"),
    ...leatherRest("leather.keeper"),
    ...buckleRest("hardware.cheek-buckle"),
    ...namesUnder("hardware.fixing", "barrel", "head", "spacing"),
    ...namesUnder("allowances", "stretch", "casing-shrinkage"),
    ...keeperRest("pieces.keeper"),
    ...keeperRest("pieces.running-keeper"),
    ...namesUnder("pieces.cheek", "feather", "buckle-turn-back", "bit-turn-back", "widest-at", "back-holes"),
    ...namesUnder("pieces.ear-piece", "weave"),
  ],
};
