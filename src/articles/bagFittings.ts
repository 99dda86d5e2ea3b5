import type { Point } from "../geometry/path.ts";
import type { Closure, FixedJoin, Join } from "../model/article.ts";
import type { Piece, SeamEdge } from "../model/piece.ts";
import { named, type Quantity, sum } from "../model/quantity.ts";
import * as lining from "../pieces/lining.ts";
import * as patch from "../pieces/patch.ts";
import * as pocket from "../pieces/pocket.ts";
import * as body from "../pieces/purseBody.ts";
import { closureParts, closureSizes, patchSize, type Tucked } from "../trade/closure.ts";
import { type Laid, layMates } from "../trade/mates.ts";
import { type Parts, together } from "../trade/parts.ts";
import {
  bodySection,
  closureOf,
  closureSection,
  hasFlap,
  isWrapped,
  liningSection,
  patchSection,
  pocketOn,
  pocketSection,
} from "./bagBodySections.ts";
import { isBuckled } from "./bagClosureStrapSections.ts";
import { asFixed, closureStrapMarks, tabPoint } from "./bagClosureStraps.ts";
import { type Behind, behindRoots } from "./bagRoots.ts";
import { bag, bodyLeather, gussetLeather, liningLeather, patchLeather, strapLeather } from "./bagSections.ts";
import { stitchesAsked } from "./bagShell.ts";
import type { Placed } from "./bagStraps.ts";
import type { Resolved } from "./definition.ts";
import { thickestOf } from "./handing.ts";

// What a bag has besides its body, gusset and straps: the closure's halves, a pocket, patches, linings.

const frontPiece = (done: Resolved): string => (isWrapped(done) ? "body" : "front");
const backPiece = (done: Resolved): string => (isWrapped(done) ? "body" : "back");

/** The two halves of the closure: where each lies. A strap's tab is riveted lower down than the flap's rivets come. */
type Halves = { readonly flap: Point; readonly front: Point };
function halvesOf(done: Resolved): Halves {
  const d = done.of(bodySection);
  const front = isBuckled(done) ? tabPoint(done) : body.frontPoint(d, d.closureHeight.value);
  return { flap: body.flapPoint(d, d.closureHeight), front };
}

/** A lined flap has a lined tongue. */
function tongueThickness(done: Resolved): Quantity {
  const { thickness } = done.of(bodyLeather);
  if (!done.of(bag).lining) return thickness;
  return named("tongue's thickness with its lining", sum(thickness, done.of(liningLeather).thickness));
}

const tucked = (done: Resolved): Tucked | undefined =>
  closureOf(done) === "tuck-in tongue"
    ? { width: done.of(bodySection).tongueWidth, thickness: tongueThickness(done) }
    : undefined;

/** Holes, slits and marks of the closure's own parts on one side. */
function partsOf(done: Resolved, side: "flap" | "front"): Partial<Parts> {
  const at = halvesOf(done)[side];
  const [kind, id] = [closureOf(done), `closure.${side}`];
  const parts = closureParts(kind, done.of(closureSection), side, at, id, tucked(done));
  return isBuckled(done) ? { ...parts, holes: asFixed(done, parts.holes ?? []) } : parts;
}

/** The same, and marks of what is fixed there. */
export const closureOn = (done: Resolved, side: "flap" | "front"): Partial<Parts> =>
  together(partsOf(done, side), side === "front" ? { marks: closureStrapMarks(done) } : {});

/** What must meet when the flap is closed over the filled bag; without a closure, where its end comes to lie. */
export function closureJoins(done: Resolved): readonly Closure[] {
  if (!hasFlap(done)) return [];
  const d = done.of(bodySection);
  const kind = closureOf(done);
  const halves = halvesOf(done);
  const lines = body.baseLines(d);
  const end = body.flapEndPoint(d);
  const open = kind === "none";
  const reach = body.flapFold(d).reach.value + d.bulge.value;
  return [
    {
      kind: "closure",
      what: kind,
      flap: { piece: backPiece(done), at: open ? end : halves.flap, baseLine: lines.flap },
      // Where the flap's half comes to lie: with a strap and buckle a mark, else the front's half.
      front: {
        piece: frontPiece(done),
        at: body.frontPoint(d, open ? d.flapEnd.value : d.closureHeight.value),
        baseLine: lines.front,
      },
      reach,
      reachEmpty: Math.min(reach, emptyReach(done)),
      flapEnd: end[1],
      dimension: open ? "pieces.body.flap-end" : "pieces.body.closure-height",
    },
  ];
}

/** From the back's inner face to the front's outer face with nothing in it; firm ends don't fold. */
function emptyReach(done: Resolved): number {
  const gusset = done.of(gussetLeather).thickness.value;
  return done.of(bag).made === "end panels"
    ? Number.POSITIVE_INFINITY
    : 2 * gusset + done.of(bodySection).thickness.value;
}

/** A tucked tongue goes through its slot in the front. */
export function tuckJoins(done: Resolved): readonly Join[] {
  const tongue = tucked(done);
  if (!tongue) return [];
  return [
    {
      kind: "strap in slot",
      piece: frontPiece(done),
      cutout: "closure.front",
      strapWidth: tongue.width.value,
      strapThickness: tongue.thickness.value,
      dimension: "pieces.body.tongue-width",
    },
  ];
}

/** The closure's sizes as a maker asks for them. */
export const closureSizesOf = (done: Resolved): readonly Quantity[] =>
  closureSizes(closureOf(done), done.of(closureSection), tucked(done));

export type PocketMade = { readonly piece: Piece; readonly laid: Laid; readonly on: string };

/** The pocket's edge and mark on its panel. */
export function pocketOnPanel(done: Resolved): { readonly edge: SeamEdge; readonly parts: Partial<Parts> } {
  const d = done.of(pocketSection);
  const on = pocketOn(done);
  const wrapped = isWrapped(done);
  const turn = wrapped && on === "front" ? Math.PI : 0;
  const base = pocket.pocketBase(d).value;
  const at: Point = [0, turn === 0 ? base : -base];
  return {
    edge: pocket.edgeOn(d, wrapped ? "body" : on, at, turn),
    parts: pocket.marksOn(d, at, turn),
  };
}

/** The pocket and its seam; undefined where the bag has none. */
export function makePocket(done: Resolved): PocketMade | undefined {
  if (done.of(bag).pocket === "none") return undefined;
  const { piece, edge } = pocket.shape(done.of(pocketSection), { leather: "body", count: 1 });
  const on = pocketOnPanel(done).edge;
  const laid = layMates({
    name: `pocket to ${on.piece}`,
    sides: [edge, on],
    ...stitchesAsked(done),
    // An inside pocket lies on the other face.
    ...(done.of(bag).pocket === "inside" ? { slants: [1, -1] as const } : {}),
    stack: 2 * thickestOf(done.of(bodyLeather), "body leather").value,
    dimension: "pieces.pocket.height",
  });
  return { piece, laid, on: on.piece };
}

/** A lining behind every part of body and gusset. */
export function makeLinings(done: Resolved, of: readonly Piece[]): readonly Piece[] {
  if (!done.of(bag).lining) return [];
  const d = done.of(liningSection);
  return of.map((p) => lining.shape(d, { leather: "lining", count: p.count }, p, `lining-${p.id}`));
}

export type Patches = { readonly pieces: readonly Piece[]; readonly joins: readonly FixedJoin[] };

/** Patches behind the closure's halves and behind the roots of handles. */
export function makePatches(done: Resolved, placed: readonly Placed[], made: readonly Piece[]): Patches {
  if (!done.of(bag).patches) return { pieces: [], joins: [] };
  const behind = [...behindClosure(done), ...behindRoots(done, placed, made)];
  const d = done.of(patchSection);
  const pieces = behind.map((b) => patch.shape(d, { leather: "patch", count: b.count }, b.backed));
  const thickness = done.of(patchLeather).thickness.value;
  const joins = behind.flatMap(({ backed, piece, stack }): readonly FixedJoin[] => {
    const all = backed.parts.holes ?? [];
    const holes = all.map((h) => h.id);
    if (holes.length === 0) return [];
    const sides = [piece, backed.id].map((id) => ({ piece: id, holes }));
    const by = all.some((h) => h.use === "stitch") ? "stitch" : "rivet";
    return [
      {
        kind: "fixed",
        name: backed.name,
        by,
        sides,
        stack: thickness + stack,
        dimension: "pieces.patch.border",
      },
    ];
  });
  return { pieces, joins };
}

function behindClosure(done: Resolved): readonly Behind[] {
  const kind = closureOf(done);
  return (["flap", "front"] as const).flatMap((side): readonly Behind[] => {
    const size = patchSize(kind, done.of(closureSection), side, tucked(done));
    const parts = partsOf(done, side);
    if (!size || (side === "flap" && kind === "tuck-in tongue")) return [];
    const backed: patch.Backed = {
      id: `patch-closure-${side}`,
      name: `Patch behind the ${kind} on the ${side}`,
      ...size,
      at: halvesOf(done)[side],
      parts,
    };
    const strap = isBuckled(done) ? done.of(strapLeather).thickness.value : 0;
    const stack = strap + done.of(bodyLeather).thickness.value;
    return [{ backed, piece: side === "flap" ? backPiece(done) : frontPiece(done), count: 1, stack }];
  });
}
