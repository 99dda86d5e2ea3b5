import type { BitEndInput } from "../../src/trade/bitEnd.ts";
import type { BuckleEndInput, Fixing } from "../../src/trade/buckleEnd.ts";
import { type LoopEndInput, strapAsBar } from "../../src/trade/loopEnd.ts";
import type { Legs } from "../../src/trade/turnBack.ts";
import { given, radians } from "./quantities.ts";

// Strap ends for tests, from numbers by name, so that each can be changed by itself.

export const END_VALUES = {
  neutral: 0.5,
  front: 3.5,
  back: 2.1,
  wrap: 2.1,
  caught: 0,
  bar: 4,
  tongue: 3,
  breadth: 4,
  open: radians(60),
  overhang: 6,
  pitch: 3.4,
  hole: 5,
  head: 9,
  spacing: 14,
  keeper: 9,
  feather: 8,
  ring: 8,
} as const;
export type EndValues = Readonly<Record<keyof typeof END_VALUES, number>> & { readonly length?: number };

export const legsFrom = (v: EndValues): Legs => ({
  label: "end",
  neutral: given("neutral", v.neutral, "ratio"),
  front: given("front", v.front, "thickness"),
  back: given("back", v.back, "thickness"),
  wrap: given("wrap", v.wrap, "thickness"),
  caught: given("caught", v.caught, "thickness"),
});

export const fixingFrom = (v: EndValues, kind: Fixing["kind"]): Fixing =>
  kind === "stitched"
    ? { kind, pitch: given("pitch", v.pitch, "pitch") }
    : {
        kind,
        hole: given("hole", v.hole),
        head: given("head", v.head),
        spacing: given("spacing", v.spacing),
      };

/** A buckle end; with a keeper and of a given length when asked. */
export const buckleFrom = (
  v: EndValues,
  kind: Fixing["kind"],
  keeper: boolean | "next to the buckle" = true,
): BuckleEndInput => ({
  label: "end",
  bar: given("bar", v.bar),
  legs: legsFrom(v),
  tongue: {
    thickness: given("tongue", v.tongue),
    breadth: given("breadth", v.breadth),
    open: given("open", v.open, "angle"),
  },
  overhang: given("overhang", v.overhang),
  fixing: fixingFrom(v, kind),
  ...(keeper
    ? {
        keeper: {
          breadth: given("keeper", v.keeper),
          caught: given("keeper ends", 1, "thickness"),
          nextToBuckle: keeper === "next to the buckle",
        },
      }
    : {}),
  feather: given("feather", v.feather),
  ...(v.length === undefined ? {} : { length: given("length", v.length) }),
});

export const bitFrom = (v: EndValues): BitEndInput => ({
  label: "end",
  ring: given("ring", v.ring),
  legs: legsFrom(v),
  hole: given("hole", v.hole),
  head: given("head", v.head),
  spacing: given("spacing", v.spacing),
  ...(v.length === undefined ? {} : { length: given("length", v.length) }),
});

/** A loop round another strap of that width and thickness. */
export const loopFrom = (v: EndValues, strap: number, thickness: number): LoopEndInput => ({
  label: "end",
  around: strapAsBar(
    "loop",
    given("strap", strap),
    given("strapThickness", thickness, "thickness"),
    given("wrapLoop", 0.4 * thickness, "thickness"),
  ),
  legs: legsFrom(v),
  pitch: given("pitch", v.pitch, "pitch"),
  feather: given("feather", v.feather),
  ...(v.length === undefined ? {} : { length: given("length", v.length) }),
});
