import type { Join, Made } from "../model/article.ts";
import type { Finding } from "../model/finding.ts";
import * as keeper from "../pieces/keeper.ts";
import * as strap from "../pieces/strap.ts";
import { printNumber } from "../units/index.ts";
import type { ArticleDefinition, Resolved } from "./definition.ts";
import { keeperJoin } from "./handing.ts";
import { strapAssembly } from "./strapAssembly.ts";
import { strapFit } from "./strapFit.ts";
import { strapFittings } from "./strapFittings.ts";
import {
  buckle,
  fixedKeeper,
  fixing,
  isBuckled,
  keeperLeather,
  leather,
  measures,
  ring,
  runningKeeper,
  stitching,
  strapSection,
} from "./strapSections.ts";
import { strapTold } from "./strapSentences.ts";

// One strap with any two ends: a bag's strap, a curb strap, a browband, a spur strap.

function make(done: Resolved): Made {
  const m = done.of(measures);
  const d = done.of(strapSection);
  const count = Math.round(m.count.value);
  const piece = strap.shape(d, { leather: "strap", count });
  const buckled = isBuckled(done);
  const keepers = [
    ...(m.keeper && buckled ? [fixedKeeper] : []),
    ...(m.runningKeeper && buckled ? [runningKeeper] : []),
  ];
  const pieces = [piece, ...keepers.map((s) => keeper.shape(done.of(s), { count, leather: "keeper" }))];
  const fit = strapFit(d);
  return {
    article: "strap",
    pieces,
    ...(fit ? { fit } : {}),
    assembly: strapAssembly(pieces),
    fittings: strapFittings(done, pieces),
    joins: [...(buckled ? buckleJoins(done) : []), ...keepers.map((s) => keeperJoin(s.path, done.of(s)))],
    findings: findings(done),
    sizes: [strap.strapCut(d, strap.strapEnds(d))],
    cautions: [
      "Strength figures are estimates for comparing designs. Have anything that bears a load checked by a qualified saddler.",
      "Cut away from your hand, on a firm board. Use dyes and glues with fresh air, as their makers say.",
    ],
  };
}

/** What a strap's measures leave open. */
function findings(done: Resolved): readonly Finding[] {
  const [d, l] = [done.of(strapSection), done.of(leather)];
  const billet = d.leftEnd === "billet" || d.rightEnd === "billet";
  const holes = Math.round(d.holes.value);
  const even: Finding = {
    rule: "middle-hole",
    severity: "caution",
    piece: "strap",
    place: "pieces.strap.holes",
    message: `the length is reckoned to the middle hole, and ${holes} holes have none: it lies half way between two`,
    value: `${holes} holes`,
    limit: "an odd number",
    mend: `write pieces.strap.holes: ${holes + 1}`,
    change: { dimension: "pieces.strap.holes", value: String(holes + 1) },
  };
  const round: Finding = {
    rule: "closed-round",
    severity: "note",
    piece: "strap",
    place: "pieces.strap.length",
    message: `closed round something (a neck, a rolled rug) it measures about ${printNumber(Math.PI * l.thickness.value, 1)} mm less inside than flat`,
    mend: "add that to the length if the measure was taken round the thing itself",
  };
  return [
    ...(billet && d.reckoned === "in use" && holes % 2 === 0 ? [even] : []),
    ...(billet && isBuckled(done) ? [round] : []),
  ];
}

function buckleJoins(done: Resolved): readonly Join[] {
  const [b, d] = [done.of(buckle), done.of(strapSection)];
  const side = d.leftEnd === "buckle" ? "left" : "right";
  return [
    {
      kind: "strap in buckle",
      piece: "strap",
      strapWidth: d.width.value,
      inside: b.inside.value,
      buckle: "buckle",
      dimension: "measures.width",
    },
    {
      kind: "tongue in slot",
      piece: "strap",
      cutout: `${side}.slot`,
      turnBack: side,
      tongueThickness: b.tongue.value,
      tongueBreadth: b.tongueBreadth.value,
      openAngle: b.open.value,
      dimension: "hardware.buckle.tongue",
    },
  ];
}

export const plainStrap: ArticleDefinition = {
  name: "strap",
  slug: "strap",
  means: "one strap with any two ends: billet, buckle, ring, loop round another strap, or plain",
  sections: [
    measures,
    leather,
    keeperLeather,
    buckle,
    ring,
    fixing,
    stitching,
    fixedKeeper,
    runningKeeper,
    strapSection,
  ],
  make,
  told: strapTold,
  measuring: [
    {
      measure: "length",
      how: "From where the buckle's bar will lie to the hole that will be used, along the strap's way.",
    },
    { measure: "width", how: "The inside width of the buckle, less a hair." },
  ],
  sample: {
    "measures.left-end": "buckle",
    "measures.right-end": "billet",
    "measures.width": "1 in",
    "leather.strap.thickness": "9 oz",
    "hardware.buckle.inside": "1 in",
    "pieces.strap.length": "36 in",
  },
};
