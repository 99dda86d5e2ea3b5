import type { Piece } from "../model/piece.ts";
import { named, sum, times } from "../model/quantity.ts";
import type * as patch from "../pieces/patch.ts";
import * as trig from "../units/trigonometry.ts";
import { hasRootPatch } from "./bagAnchors.ts";
import type { Placed } from "./bagStraps.ts";
import type { Resolved } from "./definition.ts";

// Patches behind the roots of handles, straps and tabs: what pulls on the leather pulls on the patch too.

/** A patch and what it lies behind. */
export type Behind = {
  readonly backed: patch.Backed;
  readonly piece: string;
  readonly count: number;
  /** Thickness of all that is fixed there besides the patch, mm. */
  readonly stack: number;
};

const NAMES: Readonly<Record<string, string>> = {
  handle: "Patch behind a handle's root",
  "strap-tab": "Patch behind a strap tab",
};

/** Places where straps are fixed, each once; one drawing serves all that are alike. */
export function behindRoots(
  done: Resolved,
  placed: readonly Placed[],
  made: readonly Piece[],
): readonly Behind[] {
  const patched = placed.filter((p) => hasRootPatch(done, p.anchor, p.piece));
  const places = patched.filter(
    (p, i) => patched.findIndex((o) => o.piece === p.piece && o.id === p.id) === i,
  );
  const kinds = [...new Set(places.map(kindOf))];
  return kinds.flatMap((kind) => {
    const alike = places.filter((p) => kindOf(p) === kind);
    const root = alike[0]!;
    const piece = made.find((p) => p.id === root.piece);
    if (!piece) return [];
    const count = alike.reduce((n, p) => n + (made.find((m) => m.id === p.piece)?.count ?? 1), 0);
    return [{ backed: backedBy(root, piece, kind), piece: root.piece, count, stack: stackOf(root, piece) }];
  });
}

/** Both parts of a strap are fixed alike. */
const kindOf = ({ anchor: { strap } }: Placed): string => (strap.piece in NAMES ? strap.piece : "strap");

const stackOf = ({ anchor }: Placed, piece: Piece): number => anchor.stack + piece.leather.thickness;

function backedBy(root: Placed, piece: Piece, kind: string): patch.Backed {
  const { end, input } = root.anchor.strap;
  const up = {
    value: root.anchor.needs.up,
    kind: "length",
    parts: ["leather above the first fixing"],
    inputs: [input.inset, input.hole, input.head],
  } as const;
  const middle = (end.reach.value - up.value) / 2;
  const holes = piece.holes.filter((h) => h.id.startsWith(`${root.id}.`));
  // The patch is sewn with the root; that both hold the same holes is a join of its own.
  const seams = piece.seams
    .filter((s) => s.id.startsWith(`${root.id}.`))
    .map(({ joins, ...s }) => ({ ...s, ...(joins === undefined ? {} : { note: "with the strap" }) }));
  return {
    id: `patch-${kind}`,
    name: NAMES[kind] ?? "Patch behind a strap's end",
    width: named(`${kind.replaceAll("-", " ")}'s width at its root`, times(1, input.width)),
    height: named(`${kind.replaceAll("-", " ")}'s root`, sum(end.reach, up), { kind: "length" }),
    at: [root.at[0] - middle * trig.cos(root.angle), root.at[1] - middle * trig.sin(root.angle)],
    angle: root.angle - Math.PI / 2,
    parts: { holes, seams },
  };
}
