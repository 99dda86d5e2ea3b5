// Which lines and arcs of a smooth run are kept, and where arcs are fitted between them: fewest in all.
import { type CubicCurve, type Curve, partOf } from "../geometry/curve.ts";
import {
  type Beside,
  type Bridged,
  cutPlain,
  type Free,
  fewest,
  type Gap,
  lengthOfCurves,
  type Plain,
  strayBetween,
} from "./arcFewest.ts";
import { framedGap } from "./arcFrame.ts";
import { arcsAlong } from "./arcRun.ts";

export type SmoothRun = {
  readonly curves: readonly Curve[];
  /** How it starts and ends; a closed run that was cut in the middle of a line or arc keeps that: `fixed`. */
  readonly start: Free;
  readonly end: Free;
};

export type Fitted = { readonly curves: readonly Plain[]; readonly error: number };

/** Arcs that one stretch may need. */
const MOST = 26;
/** Lines and arcs of the piece in a row that may go up in fitted arcs; each no longer than the curves there. */
const ABSORBED = 3;
/** A kept line or arc may be made longer or shorter by no more than this share of the stretch beside it. */
const SLIDE_SHARE = 0.6;
const CLOSER = 0.85;
const ROUNDS = 12;

const isPlain = (curve: Curve | undefined): curve is Plain => curve !== undefined && curve.kind !== "cubic";

/** The last or first part of a kept curve, as long as the stretch beside it lets it slide. */
function partBeside(curve: Plain, whole: boolean, last: boolean, stretch: number): Plain {
  const share = Math.min(whole ? 1 : 0.5, (SLIDE_SHARE * stretch) / lengthOfCurves([curve]));
  return (last ? partOf(curve, 1 - share, 1) : partOf(curve, 0, share)) as Plain;
}

/** The stretch between the curves numbered a and b, themselves kept; −1 and the run's length are its ends. */
function gapBetween({ curves, start, end }: SmoothRun, a: number, b: number): Gap {
  const own = curves.slice(a + 1, b);
  const length = lengthOfCurves(own);
  const [before, after] = [curves[a], curves[b]];
  return {
    curves: own,
    before: isPlain(before) ? partBeside(before, a === 0, true, length) : start,
    after: isPlain(after) ? partBeside(after, b === curves.length - 1, false, length) : end,
  };
}

/** Biarcs through places of the curve: for what no chain of free arcs follows. */
function byBiarcs({ before, curves, after }: Gap, tolerance: number): Bridged {
  const plain = (beside: Beside): readonly Plain[] => (typeof beside === "string" ? [] : [beside]);
  let asked = tolerance;
  for (let round = 0; ; round++) {
    const found = arcsAlong(curves as readonly CubicCurve[], asked) as readonly Plain[];
    const error = strayBetween(curves, found);
    if (error <= tolerance || round === ROUNDS)
      return { curves: [...plain(before), ...found, ...plain(after)], error };
    asked *= CLOSER;
  }
}

type Plan = {
  readonly count: number;
  readonly kept: readonly number[];
  readonly bridges: readonly (Bridged | undefined)[];
};

/** Arcs that a bridge adds to what is kept beside it. */
function added({ before, after }: Gap, { curves }: Bridged): number {
  return curves.length - [before, after].filter((beside) => typeof beside !== "string").length;
}

const better = (a: Plan, b: Plan | undefined): boolean =>
  !b || a.count < b.count || (a.count === b.count && a.kept.length > b.kept.length);

/**
 * Dynamic programming over the lines and arcs that may be kept: up to each, the fewest lines and arcs. First all
 * are kept; then stretches that take some in are tried, as long as they can still save one.
 */
function planned(run: SmoothRun, tolerance: number): Plan {
  const { curves } = run;
  const stops = [...curves.flatMap((c, i) => (isPlain(c) ? [i] : [])), curves.length];
  const plans = new Map<number, Plan>([[-1, { count: 0, kept: [], bridges: [] }]]);
  const forced = (i: number): boolean =>
    (i === 0 && run.start !== "corner") || (i === curves.length - 1 && run.end !== "corner");
  stops.forEach((stop, at) => {
    const here = stop < curves.length ? 1 : 0;
    for (let back = at - 1; back >= Math.max(-1, at - 1 - ABSORBED); back--) {
      if (stops.slice(back + 1, at).some(forced)) break;
      const from = stops[back] ?? -1;
      const before = plans.get(from)!;
      const best = plans.get(stop);
      const bridge = bridgeOf(
        run,
        from,
        stop,
        tolerance,
        best ? best.count - before.count - here - 1 : undefined,
      );
      if (bridge === undefined) continue;
      const gap = gapBetween(run, from, stop);
      const plan: Plan = {
        count: before.count + here + (bridge === "none" ? 0 : added(gap, bridge)),
        kept: here ? [...before.kept, stop] : before.kept,
        bridges: [...before.bridges, bridge === "none" ? undefined : bridge],
      };
      if (better(plan, best)) plans.set(stop, plan);
    }
  });
  return plans.get(curves.length)!;
}

/** `most`: how many arcs would still save one; without it, as many as it takes. */
function bridgeOf(
  run: SmoothRun,
  a: number,
  b: number,
  tolerance: number,
  most?: number,
): Bridged | "none" | undefined {
  const own = run.curves.slice(a + 1, b);
  if (own.length === 0) return "none";
  const bends = lengthOfCurves(own.filter(({ kind }) => kind === "cubic"));
  if (bends === 0 || (most !== undefined && most < 1)) return undefined;
  if (own.some((c) => isPlain(c) && lengthOfCurves([c]) > bends)) return undefined;
  const gap = gapBetween(run, a, b);
  const found = framedGap(gap, (seen) => fewest(seen, tolerance, Math.min(most ?? MOST, MOST)));
  return found ?? (most === undefined ? byBiarcs(gap, tolerance) : undefined);
}

/** The plan's lines and arcs in order: each kept one from where the bridge before ends to where the next begins. */
function laidOut(run: SmoothRun, { kept, bridges }: Plan): Fitted {
  const curves: Plain[] = [];
  let error = 0;
  bridges.forEach((bridge, i) => {
    const [before, after] = [i > 0 ? run.curves[kept[i - 1]!] : undefined, run.curves[kept[i] ?? -1]];
    let own = bridge?.curves ?? [];
    error = Math.max(error, bridge?.error ?? 0);
    if (bridge && isPlain(before)) {
      const last = curves.pop()!;
      curves.push(cutPlain(last, last.p0, own[0]!.p1));
      own = own.slice(1);
    }
    const rest = bridge && isPlain(after) ? own.at(-1)! : undefined;
    if (rest) own = own.slice(0, -1);
    curves.push(...own);
    if (isPlain(after)) curves.push(rest ? cutPlain(after, rest.p0, after.p1) : after);
  });
  return { curves, error };
}

/** Lines and arcs along a smooth run, as few as are found within the tolerance. */
export function fittedRun(run: SmoothRun, tolerance: number): Fitted {
  if (run.curves.every(isPlain)) return { curves: run.curves, error: 0 };
  return laidOut(run, planned(run, tolerance));
}
