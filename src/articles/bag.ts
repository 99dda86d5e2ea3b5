import { bodySection, gussetSection, liningSection, patchSection, pocketSection } from "./bagBodySections.ts";
import { closureSections } from "./bagClosureStrapSections.ts";
import { makeBag } from "./bagMake.ts";
import {
  bodyLeather,
  gussetLeather,
  keeperLeather,
  liningLeather,
  bag as made,
  measures,
  patchLeather,
  stitching,
  strapLeather,
} from "./bagSections.ts";
import { bagTold } from "./bagSentences.ts";
import { strapSections } from "./bagStraps.ts";
import type { ArticleDefinition } from "./definition.ts";

/** The sections in the order they are resolved; their meaning stands in each. */
export const bag: ArticleDefinition = {
  name: "bag",
  slug: "bag",
  means: "a bag: a flap purse or an open-top tote, with its gusset, strap or handles, pocket and lining",
  sections: [
    measures,
    made,
    bodyLeather,
    gussetLeather,
    strapLeather,
    keeperLeather,
    liningLeather,
    patchLeather,
    stitching,
    ...strapSections,
    ...closureSections,
    bodySection,
    gussetSection,
    pocketSection,
    liningSection,
    patchSection,
  ],
  make: makeBag,
  told: bagTold,
  measuring: [
    {
      measure: "width",
      how: "Side to side at the base. Outside: edge to edge; inside: what must lie in it.",
    },
    { measure: "height", how: "From the base to the top edge of the front." },
    { measure: "depth", how: "Front to back at the base." },
    {
      measure: "filled-depth",
      how: "Inside, front to back at the top, with the bag filled: the flap goes over it.",
    },
    {
      measure: "shoulder-drop",
      how: "From the top of the shoulder straight down to where the bag's top edge shall hang.",
    },
    { measure: "hand-drop", how: "From the bag's top edge up to the inside of the handle." },
  ],
  sample: {
    "measures.measured": "outside",
    "measures.width": "8 in",
    "measures.height": "6 1/4 in",
    "measures.depth": "2 1/4 in",
    "measures.shoulder-drop": "21 in",
    "leather.body.thickness": "5 oz",
    "leather.gusset.thickness": "4 oz",
    "bag.opening": "flap",
    "bag.closure": "press stud",
  },
};
