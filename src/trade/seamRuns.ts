import { cornerTurns } from "../geometry/corners.ts";
import { pathLength } from "../geometry/length.ts";
import type { SeamEdge } from "../model/piece.ts";

// A seam's sides, cut into runs that meet: at corners of either side, and at the breaks that the sides name.

/** A turn sharper than this has a hole of its own (30°). */
const CORNER_RAD = Math.PI / 6;
/** Two ends of runs nearer than this are one: the tolerance within which mates must agree, mm. */
const ONE_PLACE_MM = 0.2;
const SLACK = 1e-9;

/**
 * One run on every side: lengths along each side's path. On a closed path `to` may lie beyond the path's
 * whole length, where the run goes over the path's start.
 */
export type SeamRun = {
  readonly name: string;
  readonly spans: readonly (readonly [from: number, to: number])[];
};

/** A place where runs end; `at` along each side, where that side knows it. */
type Station = { readonly name: string; readonly at: readonly (number | undefined)[] };
type Filled = { readonly name: string; readonly at: readonly number[] };

const onEvery = (s: Station): s is Filled => s.at.every((at) => at !== undefined);

/** The breaks that the sides name; one name on several sides is one station. */
function namedStations(sides: readonly SeamEdge[], lengths: readonly number[]): readonly Station[] {
  const stations = new Map<string, (number | undefined)[]>();
  sides.forEach(({ path, breaks }, i) => {
    for (const { at, name } of [...breaks].sort((a, b) => a.at - b.at)) {
      const total = lengths[i]!;
      // An open path's ends are ends of runs already; on a closed path the start comes round again.
      if (!path.closed && (at < ONE_PLACE_MM || at > total - ONE_PLACE_MM)) continue;
      const places = stations.get(name) ?? sides.map(() => undefined);
      places[i] ??= path.closed && at > total - ONE_PLACE_MM ? 0 : at;
      stations.set(name, places);
    }
  });
  return [...stations].map(([name, at]) => ({ name, at }));
}

/** Lengths along a side at which it turns sharper than 30°, away from the breaks it names there. */
function cornersOf({ path, breaks }: SeamEdge, length: number): readonly number[] {
  return cornerTurns(path)
    .filter(({ turn }) => Math.abs(turn) > CORNER_RAD + SLACK)
    .map(({ s }) => s)
    .filter((s) => breaks.every((b) => Math.abs(b.at - s) > ONE_PLACE_MM))
    .filter((s) => path.closed || (s > ONE_PLACE_MM && s < length - ONE_PLACE_MM));
}

/** The same place on another side: the same share of the run between the stations that every side knows. */
function carried(at: number, from: number, to: number, anchors: readonly Filled[]): number {
  const beyond = anchors.findIndex((a, i) => i > 0 && at <= a.at[from]!);
  const next = beyond > 0 ? beyond : anchors.length - 1;
  const [a, b] = [anchors[next - 1]!, anchors[next]!];
  const [a0, a1] = [a.at[from]!, b.at[from]!];
  const share = a1 > a0 ? (at - a0) / (a1 - a0) : 0;
  return a.at[to]! + share * (b.at[to]! - a.at[to]!);
}

/** Corners of different sides that lie within `near` of each other are one station. */
function cornerStations(
  sides: readonly SeamEdge[],
  lengths: readonly number[],
  anchors: readonly Filled[],
  near: number,
): readonly Station[] {
  const found: (number | undefined)[][] = [];
  sides.forEach((side, i) => {
    for (const s of cornersOf(side, lengths[i]!)) {
      const mate = found.find(
        (f) =>
          f[i] === undefined &&
          f.some((at, j) => at !== undefined && Math.abs(carried(at, j, i, anchors) - s) <= near),
      );
      if (mate) mate[i] = s;
      else found.push(sides.map((_, j) => (j === i ? s : undefined)));
    }
  });
  const onFirst = (f: readonly (number | undefined)[]): number => filled({ name: "", at: f }, anchors).at[0]!;
  return found
    .sort((a, b) => onFirst(a) - onFirst(b))
    .map((at, k): Station => ({ name: `corner ${k + 1}`, at }));
}

function filled(station: Station, anchors: readonly Filled[]): Filled {
  const known = station.at.findIndex((at) => at !== undefined);
  const at = station.at.map((own, i) => own ?? carried(station.at[known]!, known, i, anchors));
  return { name: station.name, at };
}

/** Stations in order along the first side; those that another side has in another order are named and left out. */
function inSequence(
  stations: readonly Filled[],
  lengths: readonly number[],
): { readonly kept: readonly Filled[]; readonly clashes: readonly string[] } {
  const kept: Filled[] = [];
  const clashes: string[] = [];
  for (const s of [...stations].sort((a, b) => a.at[0]! - b.at[0]!)) {
    const before = kept.at(-1);
    const steps = s.at.map((at, i) => at - (before?.at[i] ?? 0));
    if (before && steps.every((step) => Math.abs(step) <= ONE_PLACE_MM)) continue;
    const beyond = s.at.some((at, i) => at > lengths[i]! + SLACK);
    if (beyond || steps.some((step) => step < -SLACK)) clashes.push(s.name);
    else kept.push(s);
  }
  return { kept, clashes };
}

/** Runs of an open seam, from its start over the stations to its end. */
function openRuns(stations: readonly Filled[], lengths: readonly number[]): readonly SeamRun[] {
  const ends = [{ name: "start", at: lengths.map(() => 0) }, ...stations, { name: "end", at: lengths }];
  const runs = ends.slice(1).map(
    (to, k): SeamRun => ({
      name: `${ends[k]!.name} to ${to.name}`,
      spans: lengths.map((_, i) => [ends[k]!.at[i]!, to.at[i]!]),
    }),
  );
  return runs.length === 1 ? [{ ...runs[0]!, name: "edge" }] : runs;
}

/** Runs of a closed seam, from its first station round to it again. */
function closedRuns(stations: readonly Filled[], lengths: readonly number[]): readonly SeamRun[] {
  if (stations.length === 0) return [{ name: "edge", spans: lengths.map((l) => [0, l]) }];
  const runs = stations.map((from, k): SeamRun => {
    const to = stations[k + 1] ?? stations[0]!;
    const round = k + 1 === stations.length;
    return {
      name: `${from.name} to ${to.name}`,
      spans: lengths.map((l, i) => [from.at[i]!, to.at[i]! + (round ? l : 0)]),
    };
  });
  return runs.length === 1 ? [{ ...runs[0]!, name: "edge" }] : runs;
}

/**
 * The runs of a seam, the same on all sides: cut at corners sharper than 30° of any side ("corner 1" …) and
 * at the sides' breaks. Breaks of one name meet; what one side alone has is carried to the others by its
 * share of the length between the places that all sides know. `near`: corners of two sides that lie no
 * further apart meet, mm. `clashes` names breaks that the sides have in different orders; no run ends there.
 */
export function seamRuns(
  sides: readonly SeamEdge[],
  near: number,
): { readonly runs: readonly SeamRun[]; readonly clashes: readonly string[] } {
  const lengths = sides.map(({ path }) => pathLength(path));
  const named = namedStations(sides, lengths);
  const common = inSequence(named.filter(onEvery), lengths);
  const anchors: readonly Filled[] = [
    { name: "start", at: lengths.map(() => 0) },
    ...common.kept,
    { name: "end", at: lengths },
  ];
  const others = [...named.filter((s) => !onEvery(s)), ...cornerStations(sides, lengths, anchors, near)].map(
    (s) => filled(s, anchors),
  );
  const { kept, clashes } = inSequence([...common.kept, ...others], lengths);
  const closed = sides[0]?.path.closed ?? false;
  return {
    runs: closed ? closedRuns(kept, lengths) : openRuns(kept, lengths),
    clashes: [...common.clashes, ...clashes],
  };
}
