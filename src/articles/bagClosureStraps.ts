import { type Path, type Point, rectanglePath, slotPath } from "../geometry/path.ts";
import type { FixedJoin, Join } from "../model/article.ts";
import type { Hole, Mark, Piece } from "../model/piece.ts";
import { minus, named, type Quantity } from "../model/quantity.ts";
import * as body from "../pieces/purseBody.ts";
import * as strap from "../pieces/strap.ts";
import { pointLength } from "../trade/points.ts";
import { bodySection, isWrapped } from "./bagBodySections.ts";
import {
  closureBillet,
  closureBuckle,
  closureDrops,
  closureTab,
  isBuckled,
} from "./bagClosureStrapSections.ts";
import { bag, bodyLeather, patchLeather, strapLeather } from "./bagSections.ts";
import { fixing } from "./bagStrapSections.ts";
import type { Resolved } from "./definition.ts";

// Strap and buckle that shut a bag: a tab riveted low on the front with the buckle at its upper end, and a
// billet riveted to the flap that hangs down through the buckle.

const BILLET = "closure-billet";
const TAB = "closure-tab";

export type ClosureStraps = {
  readonly pieces: readonly Piece[];
  readonly joins: readonly Join[];
  readonly sizes: readonly Quantity[];
};

const NONE: ClosureStraps = { pieces: [], joins: [], sizes: [] };

/** The two straps and what they ask of buckle, flap and front; nothing where another closure is ordered. */
export function makeClosureStraps(done: Resolved): ClosureStraps {
  if (!isBuckled(done)) return NONE;
  const { hole, bar, rivets } = closureDrops(done);
  const { closureHeight } = done.of(bodySection);
  const over = (what: string, drop: Quantity): Quantity =>
    named(`${what} over the bag's bottom`, minus(closureHeight, drop), { kind: "length" });
  return {
    pieces: [
      piece(done, TAB, "rivet the plain end to the front, the buckle upward"),
      piece(done, BILLET, "rivet the plain end on the flap's grain side, the point downward"),
    ],
    joins: [...fixedJoins(done), ...buckleJoins(done)],
    sizes: [hole, over("closure's bar", bar), over("tab's rivets", rivets)],
  };
}

const strapOf = (done: Resolved, id: string): strap.StrapValues =>
  done.of<typeof closureTab.table | typeof closureBillet.table>(id === TAB ? closureTab : closureBillet);

/** What its holes are for, as their names on a strap say. */
const useOf = (done: Resolved): "rivet" | "screw" => (done.of(fixing).kind === "rivet" ? "rivet" : "screw");

/** The closure's holes in flap and front, for what goes through them and the straps. */
export const asFixed = (done: Resolved, holes: readonly Hole[]): readonly Hole[] =>
  holes.map((h) => ({ ...h, use: useOf(done) }));

function piece(done: Resolved, id: typeof TAB | typeof BILLET, how: string): Piece {
  const d = strapOf(done, id);
  const made = strap.shape(d, {
    leather: "strap",
    count: 1,
    id,
    name: id === TAB ? "Closure tab" : "Closure billet",
  });
  return { ...made, notes: [...made.notes, `${how}: 2 ${useOf(done)}s, holes punched in both`] };
}

/** Thickness of what either strap is fixed to, with it. */
function stackOf(done: Resolved): number {
  const b = done.of(bag);
  const patch = b.patches ? done.of(patchLeather).thickness.value : 0;
  return done.of(bodyLeather).thickness.value + patch + done.of(strapLeather).thickness.value;
}

/** Hole 1 of a strap is the one nearest its fixed end; of flap and front the one at smaller y. */
function fixedJoins(done: Resolved): readonly FixedJoin[] {
  const use = useOf(done);
  const wrapped = isWrapped(done);
  const fixed = (
    name: string,
    id: string,
    side: string,
    on: string,
    holes: readonly string[],
  ): FixedJoin => ({
    kind: "fixed",
    name,
    by: done.of(fixing).kind,
    sides: [
      { piece: id, holes: [1, 2].map((n) => `${side}.${use}.${n}`) },
      { piece: on, holes },
    ],
    stack: stackOf(done),
    dimension: "hardware.fixing.spacing",
  });
  const onFlap = ["closure.flap.rivet.1", "closure.flap.rivet.2"];
  const onFront = ["closure.front.rivet.1", "closure.front.rivet.2"];
  return [
    fixed("closure billet to flap", BILLET, "left", wrapped ? "body" : "back", onFlap),
    // A front in one piece with the flap is drawn head down.
    fixed(
      "closure tab to front",
      TAB,
      "right",
      wrapped ? "body" : "front",
      wrapped ? [...onFront].reverse() : onFront,
    ),
  ];
}

function buckleJoins(done: Resolved): readonly Join[] {
  const [b, billet] = [done.of(closureBuckle), done.of(closureBillet)];
  const inBuckle = (id: string): Join => ({
    kind: "strap in buckle",
    piece: id,
    strapWidth: b.strapWidth.value,
    inside: b.inside.value,
    buckle: "closure's buckle",
    dimension: "hardware.closure-buckle.strap-width",
  });
  return [
    inBuckle(TAB),
    inBuckle(BILLET),
    {
      kind: "tongue in slot",
      piece: TAB,
      cutout: "left.slot",
      turnBack: "left",
      tongueThickness: b.tongue.value,
      tongueBreadth: b.tongueBreadth.value,
      openAngle: b.open.value,
      dimension: "hardware.closure-buckle.tongue",
    },
    {
      kind: "adjustment",
      side: "closure",
      piece: BILLET,
      holes: holesFromTip(done),
      keeperFar: 0,
      point: pointLength(billet.point, billet.width).value,
      swellAt: Number.POSITIVE_INFINITY,
      swellIs: "the cheek's swell",
      dimension: "pieces.closure-billet.holes",
      tipDimension: "pieces.closure-billet.to-tip",
      bodySection: "pieces.closure-tab",
      outsideFit: true,
    },
  ];
}

function holesFromTip(done: Resolved): readonly number[] {
  const { holes, holePitch, toTip } = done.of(closureBillet);
  return Array.from({ length: Math.round(holes.value) }, (_, i) => toTip.value + i * holePitch.value);
}

/** Where on the front the middle of the tab's rivets lies. */
export function tabPoint(done: Resolved): Point {
  const d = done.of(bodySection);
  return body.frontPoint(d, d.closureHeight.value - closureDrops(done).rivets.value);
}

/** On the front: where the tab lies, up to the buckle's bar, and where the flap's rivets come to lie over it. */
export function closureStrapMarks(done: Resolved): readonly Mark[] {
  if (!isBuckled(done)) return [];
  const d = done.of(bodySection);
  const { bar, tabEnd } = closureDrops(done);
  const { width, head, fixingSpacing } = done.of(closureTab);
  const at = (drop: number): Point => body.frontPoint(d, d.closureHeight.value - drop);
  const [a, b] = [at(bar.value)[1], at(tabEnd.value)[1]];
  const tab = rectanglePath([-width.value / 2, Math.min(a, b)], width.value, Math.abs(a - b));
  const rivets = slotPath(at(0), fixingSpacing.value + head.value, head.value, Math.PI / 2);
  const place = (id: string, path: Path, label: string): Mark => ({
    id: `closure.front.${id}`,
    kind: "place",
    path,
    label,
  });
  return [place("tab", tab, "closure tab, up to the bar"), place("flap", rivets, "flap's rivets come here")];
}
