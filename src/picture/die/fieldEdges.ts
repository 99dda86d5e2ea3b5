// The edges of fields for the bench (skived, glued, tooled, trimmed) as a machine may have them: a field reaches
// to the outline, and an edge that lies on the outline would be taken for a second cut.
import type { DieFeature, FeatureKind } from "../../die/feature.ts";
import { containsPoint } from "../../geometry/contains.ts";
import { distanceToPath } from "../../geometry/distance.ts";
import { pathLength, pointAt, subPath } from "../../geometry/length.ts";
import type { Path } from "../../geometry/path.ts";

/** A field's edge this near the outline lies on it: what a die's drawing promises, a fifth of its tolerance. */
export const COINCIDES_MM = 0.05;
/** Stations along a field's edge at which it is asked where it lies; between two of them the change is halved. */
const STEP_MM = 0.5;
const HALVINGS = 24;
/** A shorter stretch is no edge, and a shorter gap no end of one: a field's edge only crosses another line there. */
const SHORT_MM = 1;

const FIELDS: readonly FeatureKind[] = ["skive", "glue", "tooling", "trim"];

type Run = readonly [from: number, to: number];

/** Where, between two lengths of which one alone is free, that changes. */
function changeBetween(free: (s: number) => boolean, from: number, to: number): number {
  const before = free(from);
  let [low, high] = [from, to];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (free(middle) === before) low = middle;
    else high = middle;
  }
  return before ? low : high;
}

/** The free stretches of a closed path; undefined when all of it is free. */
function freeRuns(free: (s: number) => boolean, total: number): readonly Run[] | undefined {
  const count = Math.ceil(total / STEP_MM);
  const station = (i: number): number => (total * i) / count;
  const states = Array.from({ length: count }, (_, i) => free(station(i)));
  const first = states.indexOf(false);
  if (first < 0) return undefined;
  const runs: Run[] = [];
  let from = 0;
  for (let i = first; i < first + count; i++) {
    const [now, next] = [states[i % count]!, states[(i + 1) % count]!];
    if (now === next) continue;
    const change = changeBetween(free, station(i), station(i + 1));
    if (next) from = change;
    else runs.push([from, change]);
  }
  return runs;
}

function joined(runs: readonly Run[]): readonly Run[] {
  const done: Run[] = [];
  for (const run of runs) {
    const last = done.at(-1);
    if (last && run[0] - last[1] < SHORT_MM) done[done.length - 1] = [last[0], run[1]];
    else done.push(run);
  }
  return done.filter(([from, to]) => to - from >= SHORT_MM);
}

/**
 * What of a field's closed edge lies inside the closed outline and not on it, nor on a line that is drawn
 * already, within COINCIDES_MM: open lines, in the field's own direction. All of it, closed, when nothing of it
 * does; nothing when the field is the whole piece.
 */
export function fieldEdges(field: Path, outline: Path, drawn: readonly Path[] = []): readonly Path[] {
  const free = (s: number): boolean => {
    const point = pointAt(field, s);
    return (
      [outline, ...drawn].every((path) => distanceToPath(point, path) > COINCIDES_MM) &&
      containsPoint(outline, point)
    );
  };
  const runs = freeRuns(free, pathLength(field));
  return runs ? joined(runs).map(([from, to]) => subPath(field, from, to)) : [field];
}

/** The features with fields as their inner edges, each edge once for each kind; all else as it is. */
export function withFieldEdges(features: readonly DieFeature[]): readonly DieFeature[] {
  const outline = features.find(({ kind }) => kind === "outline")!.paths[0]!;
  const drawn = new Map<FeatureKind, readonly Path[]>();
  return features.map((feature) => {
    const { kind } = feature;
    if (!FIELDS.includes(kind)) return feature;
    const before = drawn.get(kind) ?? [];
    const paths = feature.paths.flatMap((path) => fieldEdges(path, outline, before));
    drawn.set(kind, [...before, ...paths]);
    return { ...feature, paths };
  });
}
