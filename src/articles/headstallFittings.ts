import type { Fitting } from "../model/fitting.ts";
import type { Piece } from "../model/piece.ts";
import type { Resolved } from "./definition.ts";
import { buckleIn, sayMm, staplesOf, tipsOf, turnBackFixings } from "./fittingParts.ts";
import { bitRing, buckle, fixing, straps } from "./headstallSections.ts";

// What is bought for a one-ear headstall, and the bit that the customer brings.

const where = (piece: Piece, turnBack: string): string =>
  piece.id === "cheek" ? `the cheek's ${turnBack} end` : `the off cheek's ${turnBack} end`;

export function headstallFittings(done: Resolved, pieces: readonly Piece[]): readonly Fitting[] {
  const cheeks = pieces.filter((p) => p.id === "cheek");
  return [
    ...cheeks.map((p) => buckleIn(p, "buckle", "cheek buckle", done.of(buckle))),
    bitOf(done, pieces),
    ...turnBackFixings(pieces, done.of(fixing), where),
    ...tipsOf(pieces, done.of(straps).width.value),
    ...staplesOf(pieces),
  ];
}

/** One bit, whose two rings hang in the cheeks' lower ends. */
function bitOf(done: Resolved, pieces: readonly Piece[]): Fitting {
  const held = pieces.filter((p) => p.turnBacks.some((t) => t.id === "bit"));
  return {
    kind: "bit",
    name: "bit",
    count: 1,
    details: [`its rings' wire ${sayMm(done.of(bitRing).bar.value)} where the cheeks bear`],
    brought: true,
    pieces: held.map((p) => p.id),
    serves: held.map((p) => ({ piece: p.id, ids: ["bit"] })),
  };
}
