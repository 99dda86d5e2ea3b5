import type { Made } from "../model/article.ts";
import type { WorkStep } from "../model/bench.ts";
import type { Values } from "../model/dimension.ts";
import type { Piece } from "../model/piece.ts";
import { sayValue, type Units } from "../model/say.ts";
import type { Shop } from "../model/shop.ts";
import type { finishTable } from "../trade/benchTables.ts";
import { printNumber } from "../units/index.ts";
import type { Phase } from "./phases.ts";

// A step of the work before it has its place among the others.

/** What steps are derived from. */
export type WorkInput = {
  readonly made: Made;
  readonly shop: Shop;
  readonly finish: Values<typeof finishTable>;
  /** How many articles are ordered. */
  readonly quantity: number;
  /** What lengths and thicknesses are said in. */
  readonly units: Units;
};

/** What a step does away with: a part of a piece, by its kind and id, or a fitting by its name. */
export type Served =
  | "outline"
  | "hole"
  | "slot"
  | "seam"
  | "fold"
  | "turn-back"
  | "zone"
  | "mark"
  | "fitting";
export const served = (kind: Served, piece: string, ...ids: readonly string[]): readonly string[] =>
  ids.map((id) => JSON.stringify([kind, piece, id]));

export type Draft = Omit<WorkStep, "minutes"> & {
  readonly phase: Phase;
  /** Everything that is done with it, each by one step alone. */
  readonly serves: readonly string[];
  /** The step that it is done right before, with nothing between. */
  readonly rightBefore?: string;
  /** How its first piece is damped right before it; what is done dry has none. */
  readonly damp?: string;
};

/** How often a piece is there in the whole order. */
export const countOf = (piece: Piece, { quantity }: WorkInput): number => piece.count * quantity;

/** Pieces that lie hidden when it is done: their edges are left as they are cut. */
export const isPatch = (p: Piece): boolean => p.id.startsWith("patch-");
export const isLining = (p: Piece): boolean => p.id.startsWith("lining-");
export const isKeeper = (p: Piece): boolean => p.id.startsWith("keeper-");

/** Things by a key, in the order in which each key is met first. */
export function grouped<T>(list: readonly T[], keyOf: (t: T) => string): readonly (readonly T[])[] {
  const groups = new Map<string, T[]>();
  for (const t of list) {
    const group = groups.get(keyOf(t));
    if (group) group.push(t);
    else groups.set(keyOf(t), [t]);
  }
  return [...groups.values()];
}

export const unique = <T>(list: readonly T[]): readonly T[] => [...new Set(list)];
export const sumOf = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);

/** Lengths as elsewhere on the sheet: "1/8 in (3.2 mm)", "3.2 mm". */
export const sayLength = (n: number, { units }: Pick<WorkInput, "units">): string =>
  sayValue(n, "length", units);
/** "8 oz (3.18 mm)", "3.18 mm" */
export const sayThickness = (n: number, { units }: Pick<WorkInput, "units">): string =>
  sayValue(n, "thickness", units);

/** "3.5 mm": sizes of tools and holes, like the templates in mm whatever the units. */
export const mm = (n: number): string => `${printNumber(n, 1)} mm`;

/** "front", "front and back", "front, back and gusset" */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;

/** Names of pieces in a sentence, each once: "ear piece" of "Ear piece, right ear". */
export const namesOf = (pieces: readonly Piece[]): string =>
  listed(unique(pieces.map((p) => p.name.toLowerCase().split(/[:,]/)[0]!)));

export const idsOf = (pieces: readonly Piece[]): readonly string[] => unique(pieces.map((p) => p.id));
