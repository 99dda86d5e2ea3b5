import type { Finding } from "../model/finding.ts";
import type { Quantity } from "../model/quantity.ts";
import { printLength, printNumber } from "../units/index.ts";
import { bodySection, gussetSection, hasFlap, isFlanged, isTurned } from "./bagBodySections.ts";
import { bag, bodyLeather, gussetLeather, measures } from "./bagSections.ts";
import type { Resolved } from "./definition.ts";

// What a bag's order leaves open or sets against itself.

/** Leather over this, body and gusset together, can't well be stitched inside out and turned, mm; common practice, no source. */
const TURNS_MM = 3;
/** A flap reckoned this far off the gusset's width at the top is seen, mm; common practice, no source. */
const SEEN_MM = 8;

const mm = (v: number): string => printLength(v, "mm");

export const bagFindings = (done: Resolved): readonly Finding[] => [
  ...flapOverHandles(done),
  ...tooThickToTurn(done),
  ...filledAtTop(done),
  ...stitchedOnFold(done),
  ...leftAside(done),
];

/** A flap and a handle on the front can't both be: nothing is made of the handles. */
export const handlesUnderFlap = (done: Resolved): boolean =>
  done.of(bag).carry === "handles" && hasFlap(done);

function flapOverHandles(done: Resolved): readonly Finding[] {
  if (!handlesUnderFlap(done)) return [];
  return [
    {
      rule: "flap-over-handles",
      severity: "error",
      piece: "",
      place: "bag.carry",
      message: "the flap would close over the handle on the front",
      value: "flap and handles",
      limit: "one or the other",
      mend: "write bag.opening: open, or bag.carry: shoulder strap",
      change: { dimension: "bag.carry", value: "shoulder strap" },
    },
  ];
}

function tooThickToTurn(done: Resolved): readonly Finding[] {
  const thick = done.of(bodyLeather).thickness.value + done.of(gussetLeather).thickness.value;
  if (!isTurned(done) || thick <= TURNS_MM) return [];
  return [
    {
      rule: "turns-inside-out",
      severity: "caution",
      piece: "",
      place: "bag.made",
      message: `body and gusset are ${printNumber(thick, 1)} mm together; so thick they hardly turn inside out`,
      value: mm(thick),
      limit: `at most about ${mm(TURNS_MM)} (common practice, no source)`,
      mend: "use thinner leather (leather.body.thickness, leather.gusset.thickness), skive the seam, or write bag.made: flanged gusset",
    },
  ];
}

/** Stitches keep so much from a flange's fold, mm; common practice, no source. */
const BESIDE_FOLD_MM = 2;

function stitchedOnFold(done: Resolved): readonly Finding[] {
  const [inset, flange] = [done.of(bodySection).inset.value, done.of(bag).flange.value];
  if (!isFlanged(done) || flange - inset >= BESIDE_FOLD_MM - 1e-6) return [];
  return [
    {
      rule: "stitched-on-fold",
      severity: "error",
      piece: "gusset",
      place: "stitching.inset",
      message: `the stitches lie ${mm(inset)} from the edge, the flange's fold begins ${mm(flange)} from it: they would be sewn through the fold`,
      value: mm(flange - inset),
      limit: `at least ${mm(BESIDE_FOLD_MM)}`,
      mend: "make the flange wider (bag.flange) or set the stitches nearer the edge (stitching.inset)",
      change: { dimension: "bag.flange", value: mm(Math.ceil(10 * (inset + BESIDE_FOLD_MM)) / 10) },
    },
  ];
}

/** What was written and is not used says so: a choice that another one rules out. */
function leftAside(done: Resolved): readonly Finding[] {
  const [b, m] = [done.of(bag), done.of(measures)];
  const given = (q: Quantity | undefined): boolean => q?.origin?.kind === "given";
  const aside: readonly (readonly [is: boolean, key: string, why: string])[] = [
    [
      !hasFlap(done) && b.closure !== "press stud" && b.closure !== "none",
      "bag.closure",
      "an open bag has no flap to close",
    ],
    [!hasFlap(done) && given(m.filledDepth), "measures.filled-depth", "only a flap goes over the filled bag"],
    [
      b.carry !== "shoulder strap" && given(m.shoulderDrop),
      "measures.shoulder-drop",
      "the bag has no shoulder strap",
    ],
    [
      b.carry !== "shoulder strap" && b.strapFixed !== "ring tabs",
      "bag.strap-fixed",
      "the bag has no shoulder strap",
    ],
    [b.carry !== "handles" && given(m.handDrop), "measures.hand-drop", "the bag has no handles"],
    [!isTurned(done) && given(b.allowance), "bag.allowance", "nothing is turned"],
    [!isFlanged(done) && given(b.flange), "bag.flange", "nothing is flanged"],
    [
      b.made !== "turned gusset" && b.made !== "flanged gusset" && done.of(bodySection).corners !== "round",
      "pieces.body.corners",
      "a body that wraps round has no corners at its base",
    ],
  ];
  const moved: readonly (readonly [boolean, string, string])[] = [
    [
      b.pocket === "outside" && hasFlap(done),
      "bag.pocket",
      "the outside pocket lies on the back: the flap closes over the front",
    ],
  ];
  const note = (key: string, message: string): Finding => ({
    rule: "left-aside",
    severity: "caution",
    piece: "",
    place: key,
    message,
    mend: `take ${key} out of the order, or change what it depends on`,
  });
  return [
    ...aside.filter(([is]) => is).map(([, key, why]) => note(key, `${key} is not used: ${why}`)),
    ...moved
      .filter(([is]) => is)
      .map(([, key, why]) => ({
        ...note(key, why),
        severity: "note" as const,
        mend: "nothing to do if that is what you meant",
      })),
  ];
}

/** The flap is reckoned over the filled bag; a gusset that tapers makes it less deep at the top. */
function filledAtTop(done: Resolved): readonly Finding[] {
  const [d, g] = [done.of(bodySection), done.of(gussetSection)];
  const off = Math.abs(d.filledDepth.value - g.topWidth.value);
  if (!hasFlap(done) || done.of(measures).filledDepth || off <= SEEN_MM) return [];
  const value = mm(Math.max(10, g.topWidth.value));
  return [
    {
      rule: "filled-at-top",
      severity: "caution",
      piece: "",
      place: "measures.filled-depth",
      message: `the flap is reckoned for a bag ${mm(d.filledDepth.value)} deep at the top, the gusset is ${mm(g.topWidth.value)} wide there`,
      value: mm(d.filledDepth.value),
      limit: mm(g.topWidth.value),
      mend: `fill the bag, measure how deep it is at the top, and write it as measures.filled-depth (${value} for this gusset)`,
      change: { dimension: "measures.filled-depth", value },
    },
  ];
}
