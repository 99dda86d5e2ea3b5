import {
  arcCosine,
  arcTangent,
  cosine,
  greatest,
  least,
  minus,
  named,
  type Operand,
  over,
  type Quantity,
  root,
  sine,
  square,
  sum,
  times,
} from "../model/quantity.ts";

// A turn-back: strap folded round a bar or ring and fixed to itself. Geometry of a taut line round a
// circle; checked against hulls and forward folds by simulation (see fixtures/published/worked-cases.json).

const SOURCE = "taut line round a bar: geometry";

export type Legs = {
  /** What the steps' names begin with, e.g. "bit end". */
  readonly label: string;
  /** Where the neutral fibre lies, as a fraction of the thickness from the flesh side. */
  readonly neutral: Operand;
  readonly front: Operand;
  readonly back: Operand;
  readonly wrap: Operand;
  /** Thickness caught between the legs at the clamp. */
  readonly caught: Operand;
};

/** Half the distance between the legs' neutral fibres where they are held, mm. */
export const legGap = (l: Legs): Quantity =>
  named(`${l.label} half gap`, over(sum(times(l.neutral, sum(l.front, l.back)), l.caught), 2), {
    source: SOURCE,
    kind: "length",
  });

/** Radius of the neutral fibre round a round bar, mm: half the bar and the neutral part of the wrap. */
export const neutralRadius = (l: Legs, bar: Operand): Quantity =>
  named(`${l.label} neutral radius`, sum(over(bar, 2), times(l.neutral, l.wrap)), {
    source: SOURCE,
    kind: "length",
  });

/** Grain strain in the fold: (1 − k) t_w / r. */
export const grainStrain = (l: Legs, radius: Operand): Quantity =>
  named(`${l.label} grain strain`, over(times(minus(1, l.neutral), l.wrap), radius), {
    source: "bending of a strip: geometry",
    kind: "ratio",
  });

/** Least distance from the bar's centre at which the legs lie no steeper than `slope`, mm. */
export const liftOffForSlope = (l: Legs, radius: Quantity, gap: Quantity, slope: Quantity): Quantity =>
  named(`${l.label} least lift-off`, over(minus(radius, times(gap, cosine(slope))), sine(slope)), {
    source: SOURCE,
    kind: "length",
  });

/** A turn-back worked out: all lengths in mm, angles in radians. */
export type Developed = {
  readonly radius: Quantity;
  readonly gap: Quantity;
  readonly wrapAngle: Quantity;
  /** The straight part from the wrap to the lift-off. */
  readonly straight: Quantity;
  readonly slope: Quantity;
  readonly strain: Quantity;
  /** First hole to its mate, along the flat. */
  readonly holeToMate: Quantity;
};

/**
 * Develops a turn-back round a round bar. `clamp` is the bar's centre to the first hole, `liftOff`
 * to the place nearest the bar where the legs are held. D = 2 (c − c′) + 2 s₁ + r θ.
 * NaN in the results means that no taut fold exists (lift-off inside the wrap): a check reports it.
 */
export function developRoundBar(
  l: Legs,
  bar: Quantity,
  clamp: Quantity,
  liftOff: Quantity = clamp,
): Developed {
  const radius = neutralRadius(l, bar);
  const gap = legGap(l);
  const reach = named(`${l.label} reach`, root(sum(square(liftOff), square(gap))), {
    source: SOURCE,
    kind: "length",
  });
  const contact = named(
    `${l.label} contact angle`,
    sum(arcTangent(gap, liftOff), arcCosine(over(radius, reach))),
    { source: SOURCE, kind: "angle" },
  );
  const straight = named(`${l.label} straight part`, root(minus(square(reach), square(radius))), {
    source: SOURCE,
    kind: "length",
  });
  const wrapAngle = named(`${l.label} wrap angle`, minus(2 * Math.PI, times(2, contact)), {
    source: SOURCE,
    kind: "angle",
  });
  const slope = named(`${l.label} slope of the legs`, minus(Math.PI / 2, contact), {
    source: SOURCE,
    kind: "angle",
  });
  const folded = sum(times(2, straight), times(radius, wrapAngle));
  const developed = liftOff === clamp ? folded : sum(times(2, minus(clamp, liftOff)), folded);
  return {
    radius,
    gap,
    wrapAngle,
    straight,
    slope,
    strain: grainStrain(l, radius),
    holeToMate: named(`${l.label} hole to mate`, developed, { source: SOURCE, kind: "length" }),
  };
}

/** A flat bar: `along` the strap, `through` it, with rounded corners; mm. */
export type FlatBar = { readonly along: Quantity; readonly through: Quantity; readonly corner: Quantity };

/** Develops a turn-back round a flat bar; the same meaning as for a round one. */
export function developFlatBar(l: Legs, bar: FlatBar, clamp: Quantity, liftOff: Quantity = clamp): Developed {
  const a = minus(over(bar.along, 2), bar.corner);
  const b = minus(over(bar.through, 2), bar.corner);
  const radius = named(`${l.label} neutral radius`, sum(bar.corner, times(l.neutral, l.wrap)), {
    source: SOURCE,
    kind: "length",
  });
  const gap = legGap(l);
  // Legs held closer than the bar's outer faces leave it at its near corners, wider ones at its far corners.
  const near = gap.value <= b.value + radius.value;
  const dx = named(`${l.label} corner to lift-off`, near ? minus(liftOff, a) : sum(liftOff, a), {
    source: SOURCE,
    kind: "length",
  });
  const dy = named(`${l.label} corner to leg`, minus(gap, b), { source: SOURCE, kind: "length" });
  const reach = named(`${l.label} reach`, root(sum(square(dx), square(dy))), {
    source: SOURCE,
    kind: "length",
  });
  const contact = named(`${l.label} contact angle`, sum(arcTangent(dy, dx), arcCosine(over(radius, reach))), {
    source: SOURCE,
    kind: "angle",
  });
  const straight = named(`${l.label} straight part`, root(minus(square(reach), square(radius))), {
    source: SOURCE,
    kind: "length",
  });
  const wrapAngle = named(`${l.label} wrap angle`, minus(2 * Math.PI, times(2, contact)), {
    source: SOURCE,
    kind: "angle",
  });
  const faces = near ? sum(times(4, a), times(2, b)) : times(2, b);
  const shift = liftOff === clamp ? [] : [times(2, minus(clamp, liftOff))];
  return {
    radius,
    gap,
    wrapAngle,
    straight,
    slope: named(`${l.label} slope of the legs`, minus(Math.PI / 2, contact), {
      source: SOURCE,
      kind: "angle",
    }),
    strain: grainStrain(l, radius),
    holeToMate: named(
      `${l.label} hole to mate`,
      sum(...shift, times(2, straight), times(radius, wrapAngle), faces),
      { source: SOURCE, kind: "length" },
    ),
  };
}

/** Grain strain: over the first the leather may crack, over the second it does; common practice, no source. */
export const EASY_STRAIN = 0.35;
export const LARGEST_STRAIN = 0.5;

/** No leather for straps is thicker, mm. */
const THICKEST_MM = 8;

/** The thickness whose fold round a bar strains the grain by `strain`, mm: from ε = (1 − k) t_w ÷ (d/2 + k t_w). */
export function foldOfStrain(strain: number, bar: Quantity, neutral: Quantity): Quantity {
  const share = minus(1, times(1 + strain, neutral));
  // With the neutral fibre near the grain no thickness is too much.
  if (share.value < strain / 10)
    return { value: THICKEST_MM, kind: "thickness", parts: ["any, at ", neutral], inputs: [neutral] };
  return { ...over(times(strain / 2, bar), share), kind: "thickness" };
}

/** The thickest fold round a bar that the grain bears, mm. */
export const thickestFold = (bar: Quantity, neutral: Quantity): Quantity =>
  foldOfStrain(LARGEST_STRAIN, bar, neutral);

/**
 * Thickness left in a fold when the order doesn't say: 0.6 of the leather, no more than bends easily round
 * the bar (0.54 of it where the neutral fibre lies in the middle), never under 1.2 mm; leather under 2.5 mm
 * is left as it is where the fold bears it. Common practice, no source.
 */
export function defaultWrapThickness(leather: Quantity, bar: Quantity, neutral: Quantity): Quantity {
  const bears = thickestFold(bar, neutral);
  if (leather.value < 2.5 && leather.value <= bears.value) return leather;
  const thin = least(times(0.6, leather), foldOfStrain(EASY_STRAIN, bar, neutral));
  return { ...least(greatest(thin, 1.2), leather, bears), kind: "thickness" };
}
