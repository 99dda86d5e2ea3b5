import type { Fitting } from "../model/fitting.ts";
import type { Piece } from "../model/piece.ts";
import type { Resolved } from "./definition.ts";
import {
  buckleIn,
  fixingDetails,
  kindFor,
  plural,
  sayMm,
  staplesOf,
  turnBackFixings,
} from "./fittingParts.ts";
import { buckle, fixing, leather, measures, ring } from "./strapSections.ts";

// What is bought for a strap by itself, by its two ends.

const SIDES = ["left", "right"] as const;
type Side = (typeof SIDES)[number];

export function strapFittings(done: Resolved, pieces: readonly Piece[]): readonly Fitting[] {
  const piece = pieces.find((p) => p.id === "strap");
  if (!piece) throw new Error("strapFittings: no strap");
  return [
    ...SIDES.flatMap((side) => endFittings(done, piece, side)),
    ...turnBackFixings([piece], done.of(fixing), (_, side) => `the ${side} end`),
    ...staplesOf(pieces),
  ];
}

function endFittings(done: Resolved, piece: Piece, side: Side): readonly Fitting[] {
  const m = done.of(measures);
  switch (side === "left" ? m.leftEnd : m.rightEnd) {
    case "buckle":
      return [buckleIn(piece, side, `buckle of the ${side} end`, done.of(buckle))];
    case "ring":
      return [ringOf(done, piece, side)];
    case "riveted":
      return rivetsOf(done, piece, side);
    default:
      return [];
  }
}

/** The ring lets the strap's width lie flat in it. */
const ringOf = (done: Resolved, piece: Piece, side: Side): Fitting => ({
  kind: "ring",
  name: `ring of the ${side} end`,
  count: piece.count,
  size: done.of(measures).width.value,
  details: [`wire ${sayMm(done.of(ring).bar.value)}`, "none where it is part of a bit or a bag"],
  pieces: [piece.id],
  serves: [{ piece: piece.id, ids: [side] }],
});

/** How long they are depends on what the strap is fixed to, which the order doesn't know. */
function rivetsOf(done: Resolved, piece: Piece, side: Side): readonly Fitting[] {
  const holes = piece.holes.filter(
    (h) => ["rivet", "screw"].includes(h.use) && h.id.startsWith(`${side}.${h.use}.`),
  );
  const [first] = holes;
  if (!first) return [];
  const kind = kindFor(first.use);
  const f = done.of(fixing);
  return [
    {
      kind,
      name: `${plural(kind)} of the ${side} end`,
      count: piece.count * holes.length,
      details: [
        `shank ${sayMm(f.barrel.value)}`,
        ...fixingDetails(f),
        `length for ${sayMm(done.of(leather).thickness.value)} of strap and what it is fixed to`,
      ],
      pieces: [piece.id],
      serves: [{ piece: piece.id, ids: holes.map((h) => h.id) }],
    },
  ];
}
