import type { Values } from "../model/dimension.ts";
import type { Fitting, FittingKind } from "../model/fitting.ts";
import type { Hole, Piece, TurnBack } from "../model/piece.ts";
import type { buckleTable, fixingTable } from "../trade/tables.ts";
import { printNumber } from "../units/index.ts";

// Fittings that every article may have: buckles, what holds a turn-back together, staples of keepers, tips.

export type BuckleValues = Pick<Values<typeof buckleTable>, "inside" | "bar" | "tongue" | "tongueBreadth">;
export type FixingValues = Pick<Values<typeof fixingTable>, "barrel" | "head">;

/** "4.5 mm", for the words of a fitting. */
export const sayMm = (mm: number): string => `${printNumber(mm, 1)} mm`;

export const buckleDetails = (b: BuckleValues): readonly string[] => [
  `bar ${sayMm(b.bar.value)}`,
  `tongue ${sayMm(b.tongue.value)} thick, ${sayMm(b.tongueBreadth.value)} broad at its eye`,
];

/** The buckles in the turn-backs named `turnBack` of one piece: one for each time the piece is cut. */
export const buckleIn = (piece: Piece, turnBack: string, name: string, b: BuckleValues): Fitting => ({
  kind: "buckle",
  name,
  count: piece.count,
  size: b.inside.value,
  details: buckleDetails(b),
  pieces: [piece.id],
  serves: [{ piece: piece.id, ids: [turnBack, `${turnBack}.slot`] }],
});

/** A hole's use says what goes through it. */
export const kindFor = (use: string): "binding screw" | "rivet" =>
  use === "rivet" ? "rivet" : "binding screw";

const isFixing = ({ use }: Hole): boolean => use === "screw" || use === "rivet";

export const fixingDetails = (f: FixingValues): readonly string[] => [`head ${sayMm(f.head.value)}`];

/** A folded end's screws or rivets, through both its legs and what is caught between them; none where it is sewn. */
function fixingsIn(piece: Piece, t: TurnBack, f: FixingValues, where: string): readonly Fitting[] {
  const holes = piece.holes.filter((h) => isFixing(h) && h.id.startsWith(`${t.id}.${h.use}.`));
  // The back leg's holes are not drawn where they are punched after folding.
  const front = holes.filter((h) => h.id.startsWith(`${t.id}.${h.use}.front.`));
  const [first] = front;
  if (!first) return [];
  const kind = kindFor(first.use);
  return [
    {
      kind,
      name: `${plural(kind)} of ${where}`,
      count: piece.count * front.length,
      details: fixingDetails(f),
      through: { shank: f.barrel.value, stack: t.frontThickness + t.backThickness + t.caught },
      pieces: [piece.id],
      serves: [{ piece: piece.id, ids: holes.map((h) => h.id) }],
    },
  ];
}

/** Screws or rivets of all turn-backs; `where` says in words which end of a piece one is. */
export const turnBackFixings = (
  pieces: readonly Piece[],
  f: FixingValues,
  where: (piece: Piece, turnBack: string) => string,
): readonly Fitting[] =>
  pieces.flatMap((p) => p.turnBacks.flatMap((t) => fixingsIn(p, t, f, where(p, t.id))));

/** "binding screws" */
export const plural = (kind: FittingKind): string => `${kind}s`;

/** Keepers with butted ends are held by a staple whose two legs go through two holes. */
export const staplesOf = (pieces: readonly Piece[]): readonly Fitting[] =>
  pieces.flatMap((p): readonly Fitting[] => {
    const holes = p.holes.filter((h) => h.use === "staple");
    const [first] = holes;
    if (!first) return [];
    return [
      {
        kind: "staple",
        name: `staple of the ${p.name.toLowerCase()}`,
        count: p.count,
        details: [`its legs go through holes of ${sayMm(first.size)}`],
        pieces: [p.id],
        serves: [{ piece: p.id, ids: holes.map((h) => h.id) }],
      },
    ];
  });

/** Metal tips of straps, each held by a nail; bought by the strap's width. */
export const tipsOf = (pieces: readonly Piece[], width: number): readonly Fitting[] =>
  pieces.flatMap((p): readonly Fitting[] => {
    const holes = p.holes.filter((h) => h.use === "nail");
    const [first] = holes;
    if (!first) return [];
    return [
      {
        kind: "strap tip",
        name: `tip of the ${p.name.toLowerCase()}`,
        count: p.count * holes.length,
        size: width,
        details: [`with its nail, for a hole of ${sayMm(first.size)}`],
        pieces: [p.id],
        serves: [{ piece: p.id, ids: holes.map((h) => h.id) }],
      },
    ];
  });
