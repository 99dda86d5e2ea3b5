import type { Join, Made } from "../model/article.ts";
import { from } from "../model/dimension.ts";
import type { Finding } from "../model/finding.ts";
import { greatest, minus, named, type Quantity, sum, times } from "../model/quantity.ts";
import * as keeper from "../pieces/keeper.ts";
import * as strap from "../pieces/strap.ts";
import { buckleTable, fixingTable, leatherTable, stitchingTable } from "../trade/tables.ts";
import { defaultWrapThickness } from "../trade/turnBack.ts";
import { printNumber } from "../units/index.ts";
import { type ArticleDefinition, type Resolved, section } from "./definition.ts";
import { buckleOf, fixingsOf, KEEPER_INSET, leatherOf, stitchesOf, thickestOf } from "./handing.ts";

// One strap with any two ends: a bag's strap, a curb strap, a browband, a spur strap.

const COMMON = "common practice, no source";
const OUNCE = 25.4 / 64;

const measures = section({
  path: "measures",
  label: "",
  title: "What the strap is: its ends, its width, and how many",
  table: {
    leftEnd: {
      kind: "choice",
      choices: strap.STRAP_ENDS,
      default: "buckle",
      means: "the left end: a billet has holes and a point, a loop goes round another strap",
      source: COMMON,
    },
    rightEnd: {
      kind: "choice",
      choices: strap.STRAP_ENDS,
      default: "billet",
      means: "the right end",
      source: COMMON,
    },
    width: { kind: "length", least: 9, most: 76, means: "width of the strap", source: "measured" },
    count: { kind: "count", default: 1, least: 1, most: 50, means: "how many straps", source: COMMON },
    keeper: {
      kind: "flag",
      default: true,
      means: "a fixed keeper in the buckle's turn-back",
      source: COMMON,
    },
    runningKeeper: { kind: "flag", default: false, means: "a running keeper too", source: COMMON },
  },
});
const leather = section({
  path: "leather.strap",
  label: "strap leather",
  title: "Leather of the strap",
  table: leatherTable(9 * OUNCE),
});
const keeperLeather = section({
  path: "leather.keeper",
  label: "keeper leather",
  title: "Leather of the keepers",
  table: leatherTable(5 * OUNCE, 5),
});
const isBuckled = (done: Resolved): boolean => {
  const m = done.of(measures);
  return m.leftEnd === "buckle" || m.rightEnd === "buckle";
};

/** A strap without a buckle doesn't care which one the order names. */
const anySize = (value: number): Quantity => ({
  value,
  kind: "length",
  parts: ["a strap without a buckle"],
  inputs: [],
});
const ANY_BUCKLE = { least: anySize(9), most: anySize(100) };

const buckle = section({
  path: "hardware.buckle",
  label: "buckle",
  title: "The buckle, where an end has one",
  table: {
    ...buckleTable,
    strapWidth: {
      kind: "length",
      least: 6,
      most: 80,
      handed: true,
      means: "width of the strap",
      source: "measures",
    },
    buckled: { kind: "flag", default: true, handed: true, means: "an end has a buckle", source: "measures" },
    inside: {
      ...buckleTable.inside,
      default: from(["strapWidth"], (k) => k.q("strapWidth")),
      least: from(["strapWidth", "buckled"], (k) =>
        k.flag("buckled") ? greatest(9, minus(k.q("strapWidth"), 0.3)) : ANY_BUCKLE.least,
      ),
      most: from(["strapWidth", "buckled"], (k) =>
        k.flag("buckled") ? sum(k.q("strapWidth"), 3) : ANY_BUCKLE.most,
      ),
    },
  },
  handOver: (done) => ({ strapWidth: done.of(measures).width, buckled: isBuckled(done) }),
});
const ring = section({
  path: "hardware.ring",
  label: "ring",
  title: "The ring, where an end has one",
  table: {
    bar: {
      kind: "length",
      default: 5,
      least: 2,
      most: 20,
      means: "diameter of the ring's wire",
      source: COMMON,
    },
  },
});
const fixing = section({
  path: "hardware.fixing",
  label: "fixing",
  title: "What holds the turn-back at a ring",
  table: fixingTable,
  handOver: (done) => ({ strapWidth: done.of(measures).width }),
});
const stitching = section({ path: "stitching", label: "stitch", title: "Stitching", table: stitchingTable });

/** A fixed keeper holds strap and tail; a running one rests over the turn-back's back leg too. */
function layersIn(running: boolean, done: Resolved): Quantity {
  const l = done.of(leather);
  const two = times(2, thickestOf(l, "strap leather"));
  if (!running) return named("layers in a fixed keeper", two, { kind: "length" });
  const backLeg = named(
    "back leg's thickness",
    l.skiveTo ?? defaultWrapThickness(l.thickness, done.of(buckle).bar, l.neutral),
  );
  return named("layers in a running keeper", sum(two, backLeg), { kind: "length" });
}

const keeperHandOver = (running: boolean) => (done: Resolved) => ({
  pitch: done.of(stitching).pitch,
  inset: KEEPER_INSET,
  strapWidth: done.of(measures).width,
  layers: layersIn(running, done),
  running,
  neutral: done.of(keeperLeather).neutral,
  thickness: done.of(keeperLeather).thickness,
});

const fixedKeeper = section({
  path: "pieces.keeper",
  label: "fixed keeper",
  title: "The fixed keeper",
  table: keeper.dimensions,
  handOver: keeperHandOver(false),
});
const runningKeeper = section({
  path: "pieces.running-keeper",
  label: "running keeper",
  title: "The running keeper",
  table: keeper.dimensions,
  handOver: keeperHandOver(true),
});

/** From the bar to a keeper's far edge, as far as is known before the strap is worked, mm. */
const keeperFar = (done: Resolved): Quantity => {
  const m = done.of(measures);
  const about = times(1.2, m.width);
  const both = m.runningKeeper ? sum(about, done.of(runningKeeper).breadth, 4) : about;
  return named("last keeper from the bar", m.keeper || m.runningKeeper ? both : times(0, m.width));
};

const strapSection = section({
  path: "pieces.strap",
  label: "strap",
  title: "The strap",
  table: strap.dimensions,
  handOver: (done) => {
    const [l, m] = [done.of(leather), done.of(measures)];
    return {
      leftEnd: m.leftEnd,
      rightEnd: m.rightEnd,
      ...stitchesOf(done.of(stitching), m.width),
      ...leatherOf(l, "strap leather"),
      skiveTo: l.skiveTo,
      width: m.width,
      ...buckleOf(done.of(buckle)),
      ring: done.of(ring).bar,
      ...fixingsOf(done.of(fixing)),
      keeperBreadth: m.keeper ? done.of(fixedKeeper).breadth : undefined,
      keeperCaught: m.keeper ? keeper.caughtThickness(done.of(fixedKeeper)) : undefined,
      keeperFar: keeperFar(done),
    };
  },
});

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
  return {
    article: "strap",
    pieces: [piece, ...keepers.map((s) => keeper.shape(done.of(s), { count, leather: "keeper" }))],
    joins: [...(buckled ? buckleJoins(done) : []), ...keepers.map((s) => keeperJoin(done, s))],
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

function keeperJoin(done: Resolved, s: typeof fixedKeeper): Join {
  const d = done.of(s);
  return {
    kind: "keeper round stack",
    piece: d.running ? "keeper-running" : "keeper-fixed",
    cut: keeper.keeperCut(d).value,
    lap: d.seam === "lapped" ? d.lap.value : 0,
    width: d.strapWidth.value,
    height: d.layers.value,
    thickness: d.thickness.value,
    neutral: d.neutral.value,
    dimension: `${s.path}.ease-width`,
  };
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
