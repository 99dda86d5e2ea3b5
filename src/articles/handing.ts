import type { Join } from "../model/article.ts";
import type { Value, Values } from "../model/dimension.ts";
import { leaf, named, type Quantity, sum, times } from "../model/quantity.ts";
import * as keeper from "../pieces/keeper.ts";
import { defaultInset } from "../trade/seam.ts";
import { type buckleTable, FIXING_ROOM_MM, type fixingTable, type stitchingTable } from "../trade/tables.ts";
import { defaultWrapThickness } from "../trade/turnBack.ts";

// What sections of an order hand to pieces, by the names that the pieces' tables know them by.

type Leather = { readonly thickness: Quantity; readonly neutral: Quantity };
type Handed = Readonly<Record<string, Value>>;

/** The thickest place of a leather sold as a range, else its thickness. */
export function thickestOf(leather: Leather, name: string): Quantity {
  const { thickness } = leather;
  if (!thickness.range) return thickness;
  const thick: Quantity = {
    value: thickness.range[1],
    kind: "thickness",
    parts: ["the thicker end of what was given as ", thickness],
    inputs: [thickness],
  };
  return named(`${name} thickest`, thick);
}

export const leatherOf = (leather: Leather, name: string): Handed => ({
  thickness: leather.thickness,
  thickest: thickestOf(leather, name),
  neutral: leather.neutral,
});

export const fixingsOf = (f: Omit<Values<typeof fixingTable>, "strapWidth">): Handed => ({
  fixing: f.kind,
  fixingHole: named("fixing hole", sum(f.barrel, FIXING_ROOM_MM)),
  head: f.head,
  fixingSpacing: f.spacing,
});

export const buckleOf = (b: Values<typeof buckleTable>): Handed => ({
  buckleBar: b.bar,
  tongue: b.tongue,
  tongueBreadth: b.tongueBreadth,
  tongueOpen: b.open,
  overhang: b.overhang,
});

export const stitchesOf = (s: Values<typeof stitchingTable>, strapWidth: Quantity): Handed => ({
  pitch: s.pitch,
  inset: s.inset ?? named("stitch inset", defaultInset(strapWidth)),
});

/** A fixed keeper holds strap and tail; a running one rests over the turn-back's back leg too. */
export function layersInKeeper(
  running: boolean,
  leather: Leather & { readonly skiveTo: Quantity | undefined },
  bar: Quantity,
): Quantity {
  const two = times(2, thickestOf(leather, "strap leather"));
  if (!running) return two;
  const backLeg = leather.skiveTo ?? defaultWrapThickness(leather.thickness, bar, leather.neutral);
  return sum(two, named("back leg's thickness", backLeg));
}

/** Keepers are small: their stitches lie nearer the edge. */
const KEEPER_INSET = leaf("keeper stitch inset", 2, "length", {
  kind: "default",
  source: "common practice, no source",
});

type KeeperPlace = {
  readonly running: boolean;
  readonly pitch: Quantity;
  readonly strapWidth: Quantity;
  /** Thickness of what it goes round. */
  readonly layers: Quantity;
  readonly leather: Leather;
};

/** What a keeper is handed: where it goes, and its own leather. */
export const keeperOf = ({ running, pitch, strapWidth, layers, leather }: KeeperPlace): Handed => ({
  pitch,
  inset: KEEPER_INSET,
  strapWidth,
  layers: named(running ? "layers in a running keeper" : "layers in a fixed keeper", layers, {
    kind: "length",
  }),
  running,
  neutral: leather.neutral,
  thickness: leather.thickness,
});

/** What a keeper asks of the stack it goes round. `path` is its section of the order. */
export const keeperJoin = (path: string, d: keeper.KeeperValues): Join => ({
  kind: "keeper round stack",
  piece: keeper.keeperId(d),
  cut: keeper.keeperCut(d).value,
  lap: d.seam === "lapped" ? d.lap.value : 0,
  width: d.strapWidth.value,
  height: d.layers.value,
  thickness: d.thickness.value,
  neutral: d.neutral.value,
  dimension: `${path}.ease-width`,
});
