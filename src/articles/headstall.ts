import type { ArticleDefinition } from "./definition.ts";
import { makeHeadstall } from "./headstallMake.ts";
import {
  allowances,
  bitRing,
  buckle,
  cheekSection,
  crownSection,
  earLeather,
  earSection,
  fixedKeeper,
  fixing,
  keeperLeather,
  measures,
  runningKeeper,
  stitching,
  strapLeather,
  straps,
} from "./headstallSections.ts";
import { headstallTold } from "./headstallSentences.ts";

// The one-ear headstall: crown, two cheeks (or one), an ear piece, keepers.

export const headstall: ArticleDefinition = {
  name: "one-ear headstall",
  slug: "one-ear-headstall",
  means: "a bridle's headpiece without noseband or browband, held by a loop round one ear",
  sections: [
    measures,
    strapLeather,
    earLeather,
    keeperLeather,
    buckle,
    bitRing,
    fixing,
    stitching,
    allowances,
    straps,
    fixedKeeper,
    cheekSection,
    runningKeeper,
    earSection,
    crownSection,
  ],
  make: (done) => makeHeadstall(done),
  told: headstallTold,
  measuring: [
    {
      measure: "over-poll",
      how: "Bit in. From where the cheek bears on one bit ring, up the cheek, over the poll behind the ears, down to the other ring. Tape snug. Twice, then once from the other side.",
    },
    {
      measure: "ear-base",
      how: "Round the base of the ear that goes through the loop, over the hair. Tape snug. Twice.",
    },
    {
      measure: "rise",
      how: "Only if over-poll ran from mouth corner to mouth corner: from there up to where the cheek bears on the ring. Both sides.",
    },
    {
      measure: "cheek",
      how: "From where the cheek bears on the ring up to where the buckle's bar is to lie, clear of the eye and the cheek bone. Both sides. In the order: pieces.cheek.effective-length.",
    },
    {
      measure: "ear-offset",
      how: "Straight across, from the middle of the poll to the middle of that ear's base. In the order: pieces.ear-piece.offset.",
    },
  ],
  sample: {
    for: "Juniper, bay mare, 15.1 hands",
    "measures.over-poll": "41 1/2 in",
    "measures.ear-base": "9 in",
    "leather.strap.thickness": "9 oz",
    "hardware.cheek-buckle.inside": "5/8 in",
    "hardware.cheek-buckle.bar": "4 mm",
    "hardware.bit-ring.bar": "8 mm",
    "pieces.cheek.body": "swelled",
    "pieces.crown.point": "english",
  },
};
