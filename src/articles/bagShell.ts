import type { Join } from "../model/article.ts";
import type { Piece, SeamEdge } from "../model/piece.ts";
import * as endPanel from "../pieces/endPanel.ts";
import * as gusset from "../pieces/gusset.ts";
import * as body from "../pieces/purseBody.ts";
import * as sideGusset from "../pieces/sideGusset.ts";
import { type Laid, layMates, type MatesInput } from "../trade/mates.ts";
import type { Parts } from "../trade/parts.ts";
import { SLIT_LONGEST_MM } from "../trade/stitchRow.ts";
import { bodySection, gussetSection, isWrapped } from "./bagBodySections.ts";
import { bag, bodyLeather, gussetLeather, liningLeather, stitching } from "./bagSections.ts";
import type { Resolved } from "./definition.ts";
import { thickestOf } from "./handing.ts";

// The body and the gusset of a bag, and the seams between them.

/** What fittings add to each piece, by the piece's id. */
export type Extras = (piece: string) => Partial<Parts>;

export type Shell = {
  readonly pieces: readonly Piece[];
  readonly laid: readonly Laid[];
  readonly joins: readonly Join[];
};

/** How the order wants its stitches. */
export function stitchesAsked(
  done: Resolved,
): Pick<MatesInput, "pitch" | "mode" | "marks" | "markSize" | "backStitches" | "pitchDimension"> {
  const s = done.of(stitching);
  const back = Math.round(s.backStitches.value);
  return {
    pitch: s.pitch.value,
    mode: s.mode,
    marks: s.marks,
    markSize: s.marks === "round holes" ? s.holeSize.value : SLIT_LONGEST_MM,
    backStitches: [back, back],
    pitchDimension: "stitching.pitch",
  };
}

/** What the needle goes through at the seam of body and gusset, at its thickest. */
function seamStack(done: Resolved): number {
  const lining = done.of(bag).lining ? 2 * done.of(liningLeather).thickness.value : 0;
  return (
    thickestOf(done.of(bodyLeather), "body leather").value +
    thickestOf(done.of(gussetLeather), "gusset leather").value +
    lining
  );
}

const seamOf = (
  done: Resolved,
  name: string,
  sides: readonly SeamEdge[],
  more: Partial<MatesInput> = {},
): Laid =>
  layMates({
    name,
    sides,
    ...stitchesAsked(done),
    stack: seamStack(done),
    dimension: "measures.height",
    ...more,
  });

/** Front, back and the strip between them. */
function panelShell(done: Resolved, extras: Extras): Shell {
  const [d, g] = [done.of(bodySection), done.of(gussetSection)];
  const one = { leather: "body", count: 1 };
  const front = body.front(d, one, extras("front"));
  const back = body.back(d, one, extras("back"));
  const edges = body.edges(d);
  const length = front.sizes.find((q) => q.name === "front seam length");
  const sides = { ...edges, ...(length ? { length } : {}) };
  const strip = gusset.shape(g, { leather: "gusset", count: 1 }, sides, extras("gusset"));
  const laid = [
    seamOf(done, "front to gusset", [edges.front, strip.edges.front], LEANING),
    seamOf(done, "back to gusset", [edges.back, strip.edges.back], LEANING),
  ];
  const gathered = laid.map((l, i) => ({
    body: i === 0 ? "front" : "back",
    seams: l.sides[0]?.seams.map((s) => s.id) ?? [],
  }));
  return { pieces: [front, back, strip.piece], laid, joins: gusset.gathers(g, gathered) };
}

/** Slits of the gusset lean the other way, so that they lie over the body's when both are joined. */
const LEANING = { slants: [1, -1] } as const;

/** A body that wraps round, and two ends that are cut alike: one drawing, two seams in one. */
function wrappedShell(done: Resolved, extras: Extras): Shell {
  const [d, g] = [done.of(bodySection), done.of(gussetSection)];
  const wrap = body.wrap(d, { leather: "body", count: 1 }, extras("body"));
  const { left, right } = body.wrapEdges(d);
  const two = { leather: "gusset", count: 2 };
  if (done.of(bag).made === "side gussets") {
    const side = sideGusset.shape(g, two, extras("side-gusset"));
    const laid = seamOf(done, "body to side gussets", [left, right, side.edge], { unstitched: BENDS });
    return { pieces: [wrap, asPair(done, side.piece)], laid: [laid], joins: sideGusset.inwardFolds(g) };
  }
  const end = endPanel.shape(g, two, extras("end-panel"));
  const bends = Object.fromEntries(
    Object.entries(end.bends).map(([name, { angle, radii }]) => [
      name,
      { angle, radii: [radii[0], radii[0], radii[1]] },
    ]),
  );
  const laid = seamOf(done, "body to end panels", [left, right, end.edge], {
    bends,
    dimension: "pieces.body.base-fold",
  });
  return { pieces: [wrap, asPair(done, end.piece)], laid: [laid], joins: [] };
}

/** An iron's left-over lies at the back end of each run: the other end of the bag is this one turned over. */
const asPair = (done: Resolved, piece: Piece): Piece =>
  done.of(stitching).mode === "iron" ? { ...piece, hand: "pair" } : piece;

/** The notched corners of a side gusset's foot have no stitches. */
const BENDS = ["front bend start to front bend end", "back bend start to back bend end"];

export const makeShell = (done: Resolved, extras: Extras): Shell =>
  isWrapped(done) ? wrappedShell(done, extras) : panelShell(done, extras);
