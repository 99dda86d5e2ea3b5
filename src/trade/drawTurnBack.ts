import { line, openPath, type Point, slotPath } from "../geometry/path.ts";
import type { Hole, TurnBack, Zone } from "../model/piece.ts";
import { least, named, type Quantity, sum, times } from "../model/quantity.ts";
import type { BitEnd } from "./bitEnd.ts";
import type { BuckleEnd, BuckleEndInput } from "./buckleEnd.ts";
import type { LoopEnd, LoopEndInput } from "./loopEnd.ts";
import {
  alongX,
  bandAcross,
  type EndFrame,
  foldAcross,
  NO_PARTS,
  type Parts,
  roundHole,
  together,
} from "./parts.ts";
import { stitchRow } from "./stitchRow.ts";
import { netSection, stitchedJoint, tearOut } from "./strength.ts";
import type { Developed, Legs } from "./turnBack.ts";

// Draws a worked turn-back on the flat strap.

/** A skive begins this far before the slot's end or the wrap; common practice, no source. */
const SKIVE_LEAD_MM = 5;

export type DrawnStrap = {
  readonly frame: EndFrame;
  readonly width: Quantity;
  readonly thickness: Quantity;
  readonly inset: number;
  /** Whether the back leg's holes are punched flat or after folding. */
  readonly backHoles: "punched flat" | "after folding";
};

/** Legs that part where they are first held. */
const heldAt = (clamp: Quantity) => ({ clamp: clamp.value, liftOff: clamp.value });

const round = (bar: Quantity): TurnBack["bar"] => ({ kind: "round", diameter: bar.value });

const numberIn = (o: Quantity | number): number => (typeof o === "number" ? o : o.value);

function turnBackData(
  s: DrawnStrap,
  legs: Legs,
  bar: TurnBack["bar"],
  held: { readonly clamp: number; readonly liftOff: number },
  d: Developed,
  mates: TurnBack["mates"],
): TurnBack {
  return {
    id: s.frame.id,
    fold: `${s.frame.id}.fold`,
    centre: s.frame.centre,
    direction: s.frame.direction,
    bar,
    neutral: numberIn(legs.neutral),
    frontThickness: numberIn(legs.front),
    backThickness: numberIn(legs.back),
    wrapThickness: numberIn(legs.wrap),
    caught: numberIn(legs.caught),
    ...held,
    mates,
    wrapHalf: d.holeToMate.value / 2 - d.straight.value - (held.clamp - held.liftOff),
  };
}

/** Skive from before the wrap to the end of the back leg, and the feathered end where there is one. */
function skives(s: DrawnStrap, legs: Legs, from: number, length: number, feather: number): readonly Zone[] {
  const wrap = numberIn(legs.wrap);
  const w = s.width.value;
  const { id } = s.frame;
  const thin: Zone = {
    id: `${id}.skive`,
    kind: "skive",
    outline: bandAcross(s.frame, -(length - feather), from + SKIVE_LEAD_MM, w),
    from: s.thickness.value,
    to: wrap,
    label: "skive",
  };
  const edge: Zone = {
    id: `${id}.feather`,
    kind: "skive",
    outline: bandAcross(s.frame, -length, -(length - feather), w),
    from: wrap,
    to: 0,
    label: "feather",
  };
  return [...(wrap < s.thickness.value - 1e-6 ? [thin] : []), ...(feather > 0 ? [edge] : [])];
}

/** A row of punched holes on both legs, on the strap's centre line, with their mates. */
function matedHoles(
  s: DrawnStrap,
  holeToMate: number,
  steps: readonly number[],
  size: number,
  use: string,
): { holes: readonly Hole[]; mates: TurnBack["mates"] } {
  const name = (leg: string, n: number): string => `${s.frame.id}.${use}.${leg}.${n + 1}`;
  const u = (step: number): number => holeToMate / 2 + step;
  const front = steps.map((step, n) => roundHole(name("front", n), [alongX(s.frame, u(step)), 0], size, use));
  if (s.backHoles === "after folding") return { holes: front, mates: [] };
  const back = steps.map((step, n) => roundHole(name("back", n), [alongX(s.frame, -u(step)), 0], size, use));
  return {
    holes: [...front, ...back],
    mates: steps.map((_, n) => [name("front", n), name("back", n)] as const),
  };
}

/** Two rows of awl marks on the front leg; the awl goes through both legs when they are folded. */
function legStitches(
  s: DrawnStrap,
  developed: Developed,
  run: number,
  stitches: number,
  asked: number,
): Pick<Parts, "holes" | "seams"> {
  const u0 = developed.holeToMate.value / 2;
  const y = s.width.value / 2 - s.inset;
  const rows = (["upper", "lower"] as const).map((side) => {
    const at = (u: number): Point => [alongX(s.frame, u), side === "upper" ? y : -y];
    return stitchRow({
      id: `${s.frame.id}.stitch.${side}`,
      path: openPath(at(u0), [line(at(u0 + run))]),
      asked,
      stitches,
      inset: s.inset,
      turnBack: s.frame.id,
      note: "prick the front leg only; the awl goes through both",
    });
  });
  return { holes: rows.flatMap((r) => r.holes), seams: rows.map((r) => r.seam) };
}

/** A buckle turn-back on the flat: slot, fold, fixings, keeper's place, skives, weakest sections. */
export function drawBuckleEnd(s: DrawnStrap, i: BuckleEndInput, e: BuckleEnd): Parts {
  const { frame } = s;
  const slot = {
    id: `${frame.id}.slot`,
    use: "tongue slot",
    outline: slotPath([frame.centre, 0], e.slotLength.value, e.reach.width.value),
    length: e.slotLength.value,
    width: e.reach.width.value,
  };
  const use = "screw";
  const mated =
    i.fixing.kind === "screws"
      ? matedHoles(s, e.developed.holeToMate.value, [0, e.run.value], i.fixing.hole.value, use)
      : { holes: [], mates: [] };
  const feather = i.fixing.kind === "stitched" ? Math.max(0, e.beyond.value - e.run.value) : 0;
  const keeper: readonly Zone[] =
    e.keeperNear && e.keeperFar
      ? [
          {
            id: `${frame.id}.keeper`,
            kind: "keeper",
            outline: bandAcross(
              frame,
              e.keeperNear.value + e.takeUp.value,
              e.keeperFar.value + e.takeUp.value,
              s.width.value,
            ),
            label: "fixed keeper",
          },
        ]
      : [];
  return together(
    {
      holes: mated.holes,
      cutouts: [slot],
      folds: [foldAcross(frame, s.width.value, "fold round the buckle bar; damp before folding")],
      turnBacks: [
        turnBackData(
          s,
          { ...i.legs, caught: e.caught },
          round(i.bar),
          { clamp: e.clamp.value, liftOff: e.liftOff.value },
          e.developed,
          mated.mates,
        ),
      ],
      zones: [...skives(s, i.legs, e.slotLength.value / 2, e.length.value, feather), ...keeper],
    },
    i.fixing.kind === "stitched"
      ? legStitches(s, e.developed, e.run.value, e.stitches.value, i.fixing.pitch.value)
      : NO_PARTS,
    { sections: buckleSections(s, i, e) },
  );
}

function buckleSections(s: DrawnStrap, i: BuckleEndInput, e: BuckleEnd): Parts["sections"] {
  const where = i.label;
  const slot = {
    name: `${where}: beside the tongue slot`,
    estimate: bothLegs(
      `${where} slot section`,
      netSection(`${where} one leg at the slot`, s.width, e.reach.width, i.legs.wrap),
    ),
  };
  const joint =
    i.fixing.kind === "stitched"
      ? stitchedJoint(`${where} stitched joint`, times(2, e.stitches), i.legs.back)
      : bothLegs(
          `${where} screw section`,
          netSection(`${where} back leg at a screw`, s.width, i.fixing.hole, i.legs.back),
        );
  return [
    slot,
    {
      name: `${where}: ${i.fixing.kind === "stitched" ? "stitched joint" : "first screw hole"}`,
      estimate: joint,
    },
  ];
}

export type BitEndDrawing = {
  readonly legs: Legs;
  readonly ring: Quantity;
  readonly hole: Quantity;
  readonly use: "screw" | "rivet";
  readonly label: string;
  /** What it is folded round, in words; "bit ring" unless said. */
  readonly around?: string;
};

/** A bit turn-back on the flat: fold, two mated holes a leg, skive, weakest sections. */
export function drawBitEnd(s: DrawnStrap, i: BitEndDrawing, e: BitEnd): Parts {
  const mated = matedHoles(s, e.developed.holeToMate.value, [0, e.spacing.value], i.hole.value, i.use);
  const wrapHalf = (e.developed.radius.value * e.developed.wrapAngle.value) / 2;
  const front = netSection(`${i.label} front leg at a ${i.use}`, s.width, i.hole, i.legs.front);
  const net = netSection(`${i.label} back leg at a ${i.use}`, s.width, i.hole, i.legs.back);
  return together({
    holes: mated.holes,
    folds: [
      foldAcross(s.frame, s.width.value, `fold round the ${i.around ?? "bit ring"}; damp before folding`),
    ],
    turnBacks: [turnBackData(s, i.legs, round(i.ring), heldAt(e.clamp), e.developed, mated.mates)],
    zones: skives(s, i.legs, wrapHalf, e.length.value, 0),
    sections: [
      { name: `${i.label}: front leg at a ${i.use} hole`, estimate: front },
      {
        name: `${i.label}: back leg at a ${i.use} hole`,
        estimate: bothLegs(`${i.label} back leg section`, net),
      },
      { name: `${i.label}: both ${i.use}s tear out`, estimate: bothTearOut(i, e, net) },
    ],
  });
}

/** Each leg of a turn-back bears half of the pull, so what one leg holds counts twice. */
const bothLegs = (name: string, oneLeg: Quantity): Quantity =>
  named(name, times(2, oneLeg), { source: "the pull shared by both legs", kind: "force" });

/** The back leg's two holes tear out together. */
function bothTearOut(i: BitEndDrawing, e: BitEnd, net: Quantity): Quantity {
  const last = tearOut(`${i.label} last tear-out`, e.toEnd, i.hole, i.legs.back, net);
  const first = tearOut(`${i.label} first tear-out`, e.spacing, times(2, i.hole), i.legs.back, net);
  return bothLegs(`${i.label} tear-out`, least(sum(last, first), net));
}

/** A loop round another strap on the flat: fold, stitches, skives. */
export function drawLoopEnd(s: DrawnStrap, i: LoopEndInput, e: LoopEnd): Parts {
  const { along, through, corner } = i.around;
  const bar = { kind: "flat", along: along.value, through: through.value, corner: corner.value } as const;
  const wrapHalf = e.developed.holeToMate.value / 2 - e.developed.straight.value;
  return together(
    {
      folds: [foldAcross(s.frame, s.width.value, "fold round the strap; damp before folding")],
      turnBacks: [turnBackData(s, i.legs, bar, heldAt(e.clamp), e.developed, [])],
      zones: skives(s, i.legs, wrapHalf, e.length.value, Math.max(0, e.beyond.value - e.run.value)),
      sections: [
        {
          name: `${i.label}: stitched joint`,
          estimate: stitchedJoint(`${i.label} stitched joint`, times(2, e.stitches), i.legs.back),
        },
      ],
    },
    legStitches(s, e.developed, e.run.value, e.stitches.value, i.pitch.value),
  );
}

/** How far a punched mate moves when the leather's neutral fibre lies 0.1 off, mm. */
export function mateDrift(develop: (neutral: number) => Developed, neutral: number): number {
  const at = (k: number): number => develop(k).holeToMate.value;
  return Math.max(Math.abs(at(neutral + 0.1) - at(neutral)), Math.abs(at(neutral - 0.1) - at(neutral)));
}
