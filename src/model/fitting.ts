/** Kinds of bought parts, in the trade's words; a shop keeps its prices by them. */
export const FITTING_KINDS = [
  "buckle",
  "ring",
  "dee",
  "binding screw",
  "rivet",
  "press stud",
  "magnetic snap",
  "turn lock",
  "staple",
  "strap tip",
  "bit",
] as const;
export type FittingKind = (typeof FITTING_KINDS)[number];

/** A bought part that an article needs. Lengths mm. */
export type Fitting = {
  readonly kind: FittingKind;
  /** What it is here, e.g. "cheek buckle", "screws of the bit end". */
  readonly name: string;
  readonly count: number;
  /** The size it is bought by: a buckle's or ring's inside width, a stud's cap. */
  readonly size?: number;
  /** More to know when it is bought, in words: "bar 4 mm, tongue 3 mm". */
  readonly details: readonly string[];
  /** Of screws and rivets: their shank's diameter, and the leather they go through, pressed together. */
  readonly through?: { readonly shank: number; readonly stack: number };
  /** The customer brings it, e.g. the bit: it is listed and not priced. */
  readonly brought?: true;
  /** Pieces it is fixed to. */
  readonly pieces: readonly string[];
  /**
   * What it serves in its pieces, each once: holes it goes through, turn-backs that go round it, slits its
   * prongs go through; by piece and id.
   */
  readonly serves: readonly { readonly piece: string; readonly ids: readonly string[] }[];
};
