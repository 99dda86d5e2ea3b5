import type { Finding } from "../model/finding.ts";
import { printLength, printNumber } from "../units/index.ts";
import { bodySection, gussetSection, hasFlap, isTurned } from "./bagBodySections.ts";
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
