import { boundsOf } from "../geometry/bounds.ts";
import type { Point } from "../geometry/path.ts";
import * as endPanel from "../pieces/endPanel.ts";
import * as gusset from "../pieces/gusset.ts";
import * as body from "../pieces/purseBody.ts";
import * as sideGusset from "../pieces/sideGusset.ts";
import {
  bodySection,
  gussetSection,
  isFlanged,
  isWrapped,
  patchSection,
  seamInset,
  strapsOnBack,
} from "./bagBodySections.ts";
import { bag, bodyLeather, gussetLeather, patchLeather } from "./bagSections.ts";
import type { Anchor, Placed } from "./bagStraps.ts";
import type { Resolved } from "./definition.ts";

// Where on a bag's pieces its straps, tabs and handles are fixed.

const UP = Math.PI / 2;
/** A strap at the side of the back stays this far from the seam, mm; common practice, no source. */
const BESIDE_SEAM_MM = 4;

/** What a seam that is not flanged takes of a gusset's width on each side, mm. */
const SEAM_TAKES_MM = 4;

/** Flat width of the gusset at its top, between its folds or its seams. */
function webOf(done: Resolved): number {
  const d = done.of(gussetSection);
  const side = isFlanged(done) ? d.thickness.value + d.flangeFold.value : SEAM_TAKES_MM;
  return d.topWidth.value - 2 * side;
}

const GUSSETS = ["gusset", "side-gusset", "end-panel"];

/** True when a patch lies behind a strap's root: on body and gusset, where the gusset is wide enough for it. */
export function hasRootPatch(done: Resolved, anchor: Anchor, piece: string): boolean {
  if (!done.of(bag).patches || anchor.how === "through a slot") return false;
  const width = anchor.strap.input.width.value + 2 * done.of(patchSection).border.value;
  return !GUSSETS.includes(piece) || width <= webOf(done);
}

/** Thickness of what a strap is fixed to, with its patch; a lining is glued in later, over it. */
function thicknessOf(done: Resolved, anchor: Anchor, piece: string): number {
  const leather = done.of(GUSSETS.includes(piece) ? gussetLeather : bodyLeather).thickness.value;
  return leather + (hasRootPatch(done, anchor, piece) ? done.of(patchLeather).thickness.value : 0);
}

type Place = { readonly piece: string; readonly id: string; readonly at: Point; readonly angle: number };

/** On the strip its two ends; on ends that are cut twice the one top. */
function onGusset(done: Resolved, a: Anchor): Place {
  const d = done.of(gussetSection);
  if (!isWrapped(done)) {
    const { piece } = gusset.shape(d, { leather: "gusset", count: 1 }, body.edges(done.of(bodySection)));
    const { minX, maxX } = boundsOf(piece.outline);
    return a.place === "start"
      ? { piece: "gusset", id: "start", at: [minX + a.below, 0], angle: Math.PI }
      : { piece: "gusset", id: "end", at: [maxX - a.below, 0], angle: 0 };
  }
  const order = { leather: "gusset", count: 2 };
  const { piece } =
    done.of(bag).made === "side gussets" ? sideGusset.shape(d, order) : endPanel.shape(d, order);
  const top = Math.max(...piece.corners.filter((c) => /top/.test(c.name)).map((c) => c.at[1]));
  return { piece: piece.id, id: "strap", at: [0, top - a.below], angle: UP };
}

/** Beside the seam at the back's two sides, seen from outside. */
function onSidesOfBack(done: Resolved, a: Anchor): Place {
  const d = done.of(bodySection);
  const clear = seamInset(done).value + (isFlanged(done) ? d.flange.value : 0) + BESIDE_SEAM_MM;
  const x = d.width.value / 2 - clear - a.needs.width / 2;
  const y =
    body.baseLines(d).flap +
    d.height.value -
    Math.max(a.below, d.seamStart.value + BESIDE_SEAM_MM + a.needs.up);
  return {
    piece: "body",
    id: a.place === "start" ? "strap.left" : "strap.right",
    at: [a.place === "start" ? -x : x, y],
    angle: UP,
  };
}

/** On the front or the back, a handle's end under the top edge. */
function onPanel(done: Resolved, a: Anchor): Place {
  const d = done.of(bodySection);
  const dip = d.top === "dipped" && !(a.on === "back" && d.opening === "flap") ? d.dip.value : 0;
  const height = d.height.value - dip - a.below;
  const wrapped = isWrapped(done);
  const id = `handle.${a.place}`;
  if (a.on === "front") {
    const at = body.frontPoint(d, height, a.x);
    return {
      piece: wrapped ? "body" : "front",
      id: wrapped ? `front.${id}` : id,
      at,
      angle: wrapped ? -UP : UP,
    };
  }
  const at: Point = [a.x, (wrapped ? body.baseLines(d).flap : 0) + height];
  return { piece: wrapped ? "body" : "back", id: wrapped ? `back.${id}` : id, at, angle: UP };
}

/** Every strap's fixed end with its place on the bag. */
export const placeAnchors = (done: Resolved, anchors: readonly Anchor[]): readonly Placed[] =>
  anchors.map((anchor): Placed => {
    const place =
      anchor.on !== "gusset"
        ? onPanel(done, anchor)
        : strapsOnBack(done)
          ? onSidesOfBack(done, anchor)
          : onGusset(done, anchor);
    return { anchor, ...place, thickness: thicknessOf(done, anchor, place.piece) };
  });
