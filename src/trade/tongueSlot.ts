import {
  cosine,
  greatest,
  minus,
  named,
  type Operand,
  over,
  type Quantity,
  root,
  roundedUp,
  sine,
  square,
  sum,
  times,
} from "../model/quantity.ts";

const SOURCE = "a buckle tongue swinging in its slot: geometry";

/** Slots are sold as punches in steps of this length, mm; common practice, no source. */
export const SLOT_STEP_MM = 1;

/** Room beside the tongue, and beyond its reach at the slot's ends, mm; common practice, no source. */
export const TONGUE_ROOM_MM = 1;

export type Tongue = {
  readonly label: string;
  readonly bar: Quantity;
  readonly wrap: Operand;
  readonly thickness: Quantity;
  readonly breadth: Quantity;
  /** The angle left between the opened tongue and the strap. */
  readonly open: Quantity;
};

export type TongueReach = {
  /** How far from the bar's centre the slot must be open along each leg. */
  readonly reach: Quantity;
  /** What the slot's round ends take off at the tongue's breadth. */
  readonly roundEnd: Quantity;
  readonly width: Quantity;
};

/** How far along the legs a buckle's tongue needs its slot open: its eye on the bar, and the opened tongue. */
export function tongueReach(t: Tongue): TongueReach {
  const eye = root(times(t.thickness, sum(t.bar, t.thickness)));
  const outer = sum(over(t.bar, 2), t.wrap);
  const swing = over(sum(times(outer, cosine(t.open)), over(t.thickness, 2)), sine(t.open));
  const width = named(`${t.label} slot width`, sum(t.breadth, TONGUE_ROOM_MM), {
    source: SOURCE,
    kind: "length",
  });
  return {
    reach: named(
      `${t.label} tongue reach`,
      greatest({ ...eye, kind: "length" }, { ...swing, kind: "length" }),
      { source: SOURCE, kind: "length" },
    ),
    roundEnd: named(
      `${t.label} round end`,
      over(minus(width, root(minus(square(width), square(t.breadth)))), 2),
      { source: SOURCE, kind: "length" },
    ),
    width,
  };
}

/** Slot length over all, mm: L = r θ + 2 (X + n) + 1, rounded up to the next slot punch. */
export function tongueSlotLength(
  label: string,
  radius: Quantity,
  wrapAngle: Quantity,
  r: TongueReach,
): Quantity {
  const open = sum(times(radius, wrapAngle), times(2, sum(r.reach, r.roundEnd)), TONGUE_ROOM_MM);
  return named(`${label} slot length`, roundedUp({ ...open, kind: "length" }, SLOT_STEP_MM), {
    source: SOURCE,
    kind: "length",
  });
}
