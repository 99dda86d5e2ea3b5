import { MM_PER_INCH, MM_PER_OUNCE, printAngle, printLengthShort, printNumber } from "../units/index.ts";
import type { QuantityKind } from "./quantity.ts";
import { sayHands, type Units } from "./say.ts";

/** Differences below this are the arithmetic's, not the maker's: a bound met is not a bound crossed. */
export const BOUND_SLACK = 1e-6;

/** A bound said further off than this share of itself tells another range. */
const NEAR_SHARE = 0.03;
/** A fraction of an inch, or tenths of an ounce, are worth so much when a value is to be written. */
const HANDY_SHARE = 0.125;

/** A way to write a value: whole steps of so much, in words; `handy` ones may lie further off. */
type Way = { readonly step: number; readonly say: (v: number) => string; readonly handy?: true };

const mm = (step: number, decimals: number): Way => ({ step, say: (v) => `${printNumber(v, decimals)} mm` });
const FINE_MM = [mm(0.01, 2), mm(0.001, 3)];
const INCH_32: Way = { step: MM_PER_INCH / 32, say: (v) => printLengthShort(v, "in"), handy: true };
const OUNCE_10: Way = {
  step: MM_PER_OUNCE / 10,
  say: (v) => `${printNumber(v / MM_PER_OUNCE, 1)} oz`,
  handy: true,
};
const plain = (step: number, decimals: number): Way => ({ step, say: (v) => printNumber(v, decimals) });
const DEGREE = Math.PI / 180;

/** Ways to write a value in an order, the handiest first. */
function waysFor(kind: QuantityKind | "hands", units: Units): readonly Way[] {
  switch (kind) {
    case "length":
      return units === "in"
        ? [INCH_32, mm(0.1, 1), ...FINE_MM]
        : units === "cm"
          ? [{ step: 0.1, say: (v) => printLengthShort(v, "cm") }, ...FINE_MM]
          : [mm(0.1, 1), ...FINE_MM];
    case "hands":
      return [{ step: MM_PER_INCH, say: sayHands }];
    case "thickness":
      return units === "in" ? [OUNCE_10, ...FINE_MM] : FINE_MM;
    case "pitch":
      return FINE_MM;
    case "angle":
      return [
        { step: DEGREE / 10, say: printAngle },
        { step: DEGREE / 10_000, say: (v) => `${printNumber(v / DEGREE, 4)}°` },
      ];
    case "count":
      return [plain(1, 0)];
    default:
      return [plain(1e-4, 4), plain(1e-6, 6)];
  }
}

/** What a value may be: at least, at most; either may be infinite. */
export type Bounds = { readonly least: number; readonly most: number };

/** Whether a value lies within its bounds, for all that arithmetic can tell. */
export const within = (v: number, b: Bounds): boolean =>
  v >= b.least - BOUND_SLACK && v <= b.most + BOUND_SLACK;

/** A bound in whole steps, rounded towards the inside. */
function inSteps(side: keyof Bounds, bounds: Bounds, step: number): number {
  const steps = bounds[side] / step;
  const whole = side === "least" ? Math.ceil(steps - BOUND_SLACK) : Math.floor(steps + BOUND_SLACK);
  return whole * step + 0; // adding 0 turns -0 into 0
}

/** The bound in the first way that lies inside and near enough; `shareOf` is how far off a way may be. */
function inWords(
  side: keyof Bounds,
  bounds: Bounds,
  ways: readonly Way[],
  shareOf: (w: Way) => number,
): string {
  const fits = (w: Way): boolean => {
    const value = inSteps(side, bounds, w.step);
    const off = Math.abs(value - bounds[side]);
    return within(value, bounds) && off <= shareOf(w) * Math.abs(bounds[side]) + BOUND_SLACK;
  };
  const way = ways.find(fits) ?? ways.at(-1)!;
  return way.say(inSteps(side, bounds, way.step));
}

/**
 * A bound as it can be written in an order, in one unit. It is rounded towards the inside, so that what
 * is written passes: 12.72 mm as least is 17/32 in, not 1/2. Where that would be too coarse it is written
 * finer: 0.05 mm, not 1/32 in.
 */
export const writtenBound = (
  side: keyof Bounds,
  bounds: Bounds,
  kind: QuantityKind | "hands",
  units: Units,
): string => inWords(side, bounds, waysFor(kind, units), ({ handy }) => (handy ? HANDY_SHARE : NEAR_SHARE));

const INCH_UNITS = /(in|oz)$/;

/**
 * The same for a message, inside as well: inches or ounces with the millimetres beside them; the
 * millimetres first where a mark of the rule is not near enough to stand for the bound.
 */
export function saidBound(
  side: keyof Bounds,
  bounds: Bounds,
  kind: QuantityKind | "hands",
  units: Units,
): string {
  const said = inWords(side, bounds, waysFor(kind, units), () => NEAR_SHARE);
  if (units !== "in") return said;
  if (INCH_UNITS.test(said)) return `${said} (${writtenBound(side, bounds, kind, "mm")})`;
  const written = writtenBound(side, bounds, kind, units);
  return INCH_UNITS.test(written) ? `${said} (${written})` : said;
}

/** Steps of round sizes, the roundest first. */
function roundSteps(kind: QuantityKind | "hands", units: Units): readonly number[] {
  switch (kind) {
    case "length":
      return units === "in" ? [MM_PER_INCH, MM_PER_INCH / 8] : [10, 1];
    case "thickness":
      return [units === "in" ? MM_PER_OUNCE : 0.5];
    case "pitch":
      return [0.5];
    case "angle":
      return [5 * DEGREE, DEGREE];
    case "ratio":
      return [0.1, 0.01];
    default:
      return [];
  }
}

/** A round size near the middle of a range, as it can be written in an order; undefined when an end is open. */
export function writtenMiddle(
  bounds: Bounds,
  kind: QuantityKind | "hands",
  units: Units,
): string | undefined {
  const middle = (bounds.least + bounds.most) / 2;
  if (!Number.isFinite(middle)) return undefined;
  const [first, ...finer] = waysFor(kind, units);
  const ways = [...roundSteps(kind, units).map((step) => ({ ...first!, step })), first!, ...finer];
  const rounded = ({ step }: Way): number => Math.round(middle / step) * step + 0;
  const way = ways.find((w) => within(rounded(w), bounds));
  return way?.say(rounded(way));
}
