import type { FixedJoin, Join } from "../model/article.ts";
import type { Fitting } from "../model/fitting.ts";
import type { Piece } from "../model/piece.ts";
import { printNumber } from "../units/index.ts";
import { closureOf, closureSection, isWrapped } from "./bagBodySections.ts";
import { closureBuckle } from "./bagClosureStrapSections.ts";
import { bag, bodyLeather, patchLeather } from "./bagSections.ts";
import { buckle, fixing, ring } from "./bagStrapSections.ts";
import type { Resolved } from "./definition.ts";
import { buckleIn, fixingDetails, plural, sayMm, staplesOf, turnBackFixings } from "./fittingParts.ts";

// What is bought for a bag: buckles and rings of its straps, its closure, every rivet and screw.

export function bagFittingsList(
  done: Resolved,
  made: { readonly pieces: readonly Piece[]; readonly joins: readonly Join[] },
): readonly Fitting[] {
  const { pieces, joins } = made;
  const own = pieces.filter((p) => !isPatch(p.id));
  const list = [
    ...buckles(done, own),
    ...rings(done, own),
    ...closureParts(done, own),
    ...turnBackFixings(own, done.of(fixing), (p) => `the ${p.name.toLowerCase()} at its ring`),
    ...joins.flatMap((j) => (j.kind === "fixed" ? throughJoin(done, j, own) : [])),
    ...staplesOf(own),
  ];
  const patches = pieces.filter((p) => isPatch(p.id));
  return list.map((f) => patches.reduce(withPatch, f));
}

const isPatch = (id: string): boolean => id.startsWith("patch-");

function buckles(done: Resolved, pieces: readonly Piece[]): readonly Fitting[] {
  return pieces.flatMap((p) => {
    if (p.id === "buckle-strap")
      return [buckleIn(p, "left", "buckle of the shoulder strap", done.of(buckle))];
    if (p.id !== "closure-tab") return [];
    const b = done.of(closureBuckle);
    const made = buckleIn(p, "left", "buckle of the closure", b);
    const frame = `frame ${sayMm(b.frameLength.value)} along the strap from the bar`;
    return [{ ...made, details: [...made.details, frame] }];
  });
}

/** A tab and a part of the shoulder strap hang in each ring. */
function rings(done: Resolved, pieces: readonly Piece[]): readonly Fitting[] {
  const tab = pieces.find((p) => p.id === "strap-tab");
  if (!tab) return [];
  const r = done.of(ring);
  const held = [
    { piece: tab.id, ids: ["left"] },
    { piece: "buckle-strap", ids: ["right"] },
    { piece: "billet-strap", ids: ["left"] },
  ];
  return [
    {
      kind: "ring",
      name: "ring of the shoulder strap",
      count: tab.count,
      size: r.inside.value,
      details: [`${sayMm(r.height.value)} high inside`, `wire ${sayMm(r.bar.value)}`],
      pieces: held.map((h) => h.piece),
      serves: held,
    },
  ];
}

/** Lines to the inch of a stud's cap; sizes.com, Buttons. */
const LINES_PER_MM = 40 / 25.4;

/** A stud, a snap or a lock: two halves, bought as one. */
function closureParts(done: Resolved, pieces: readonly Piece[]): readonly Fitting[] {
  const [kind, v] = [closureOf(done), done.of(closureSection)];
  const both = { name: `${kind} of the flap`, count: 1, ...closureServes(done, pieces) };
  switch (kind) {
    case "press stud": {
      const lines = printNumber(v.cap.value * LINES_PER_MM, 0);
      const holes = `holes of ${sayMm(v.capHole.value)} for the cap, ${sayMm(v.studHole.value)} for the stud`;
      const through = `through ${sayMm(leatherAt(done))} of leather`;
      return [{ ...both, kind, size: v.cap.value, details: [`cap of about line ${lines}`, holes, through] }];
    }
    case "magnetic snap": {
      const prongs = `prongs ${sayMm(v.prongSpacing.value)} apart, ${sayMm(v.prongBreadth.value)} broad`;
      return [{ ...both, kind, size: v.disc.value, details: [prongs] }];
    }
    case "turn lock": {
      const plate = `plate ${sayMm(v.plateLength.value)} by ${sayMm(v.plateWidth.value)}`;
      const button = `button's base ${sayMm(v.baseLength.value)} by ${sayMm(v.baseWidth.value)}, prongs ${sayMm(v.prongSpacing.value)} apart`;
      const opening = `opening ${sayMm(v.openingLength.value)} by ${sayMm(v.openingWidth.value)}`;
      return [{ ...both, kind, size: v.openingLength.value, details: [opening, plate, button] }];
    }
    default:
      return [];
  }
}

/** Leather that flap and front have at the closure, with the patch behind it; a lining is glued in later. */
const leatherAt = (done: Resolved): number =>
  done.of(bodyLeather).thickness.value + (done.of(bag).patches ? done.of(patchLeather).thickness.value : 0);

/** Holes, slits and opening of the closure on flap and front. */
function closureServes(done: Resolved, pieces: readonly Piece[]): Pick<Fitting, "pieces" | "serves"> {
  const on = isWrapped(done) ? ["body"] : ["back", "front"];
  const serves = pieces
    .filter((p) => on.includes(p.id))
    .map((p) => ({
      piece: p.id,
      ids: [...p.holes, ...p.cutouts]
        .map(({ id }) => id)
        .filter((id) => /^closure\.(flap|front)(\.|$)/.test(id)),
    }));
  return { pieces: serves.map((s) => s.piece), serves };
}

/** What goes through straps and what they are fixed to: one for each hole of each strap's end as often as it is cut. */
function throughJoin(done: Resolved, join: FixedJoin, pieces: readonly Piece[]): readonly Fitting[] {
  if (join.by === "stitch" || join.sides.some((s) => isPatch(s.piece))) return [];
  const f = done.of(fixing);
  const countOf = (id: string): number => pieces.find((p) => p.id === id)?.count ?? 0;
  const straps = join.sides.filter((s) => STRAPS.has(s.piece));
  const count = straps.reduce((n, s) => n + countOf(s.piece) * s.holes.length, 0);
  const ids = [...new Set(join.sides.map((s) => s.piece))];
  return [
    {
      kind: join.by,
      name: `${plural(join.by)}, ${join.name}`,
      count,
      details: fixingDetails(f),
      through: { shank: f.barrel.value, stack: join.stack },
      pieces: ids,
      serves: ids.map((piece) => ({
        piece,
        ids: join.sides.filter((s) => s.piece === piece).flatMap((s) => s.holes),
      })),
    },
  ];
}

/** Pieces that are fixed to others; the others carry their holes. */
const STRAPS = new Set([
  "handle",
  "strap-tab",
  "buckle-strap",
  "billet-strap",
  "closure-tab",
  "closure-billet",
]);

/** A patch has the holes of what it backs, by the same names: what goes through those goes through it too. */
function withPatch(fitting: Fitting, patch: Piece): Fitting {
  const parts = [...patch.holes, ...patch.cutouts].map(({ id }) => id);
  const ids = parts.filter((id) => fitting.serves.some((s) => !STRAPS.has(s.piece) && s.ids.includes(id)));
  if (ids.length === 0) return fitting;
  return {
    ...fitting,
    pieces: [...fitting.pieces, patch.id],
    serves: [...fitting.serves, { piece: patch.id, ids }],
  };
}
