import { MM_PER_INCH } from "../units/index.ts";

/** A published size and the measures it is sold for, in mm; neighbours overlap. */
export type HorseSize = {
  readonly name: string;
  readonly from: number;
  readonly to: number;
  /** Browband lengths sold with it. */
  readonly browband: readonly [shortest: number, longest: number];
};

/** The source of the sizes below. */
export const HORSE_SIZES_SOURCE = "americantrailgear.com, Measurements";

/** How the sizes were measured; compare them with no other measure. */
export const HORSE_SIZES_TAKEN =
  "bit to bit over the poll: from one mouth corner up the face, over the poll behind the ears, to the other mouth corner";

const size = (name: string, from: number, to: number, browband: readonly [number, number]): HorseSize => ({
  name,
  from: from * MM_PER_INCH,
  to: to * MM_PER_INCH,
  browband: [browband[0] * MM_PER_INCH, browband[1] * MM_PER_INCH],
});

/** Headstall sizes by what they measure over the poll. */
export const HORSE_SIZES: readonly HorseSize[] = [
  size("cob or small", 38, 41, [15, 15]),
  size("regular", 41, 44, [16, 17]),
  size("large or mule", 43, 46, [18, 18]),
];

/** Sums of inches come out a hair off; a size's end belongs to it. */
const END_SLACK_MM = 1e-6;

/**
 * The sizes that a headstall of this measure, bit ring to bit ring over the poll in mm, is sold as:
 * none, one, or two where their ranges overlap. A guide, for sizes differ between makers.
 */
export const sizesFor = (measure: number): readonly string[] =>
  HORSE_SIZES.filter((s) => measure >= s.from - END_SLACK_MM && measure <= s.to + END_SLACK_MM).map(
    (s) => s.name,
  );
