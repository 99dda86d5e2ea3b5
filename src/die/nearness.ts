// Where rules run near one another: points along all rules, and for each the nearest that is not just further
// along the same rule.
import { pathLength, pointAt } from "../geometry/length.ts";
import type { Point } from "../geometry/path.ts";
import { apart } from "../geometry/vector.ts";
import type { RulePath } from "./rulePaths.ts";

/** A point of a rule: the rule's number, the length along it, and the stretch that it stands for. */
export type Sample = {
  readonly rule: number;
  readonly s: number;
  readonly share: number;
  readonly at: Point;
  readonly round: number;
};
export type Pair = { readonly a: Sample; readonly b: Sample; readonly distance: number };

export type Looking = {
  /** Points nearer than this are near, mm, above 0. */
  readonly within: number;
  /** From one point of a rule to its next, mm, above 0. */
  readonly step: number;
  /**
   * Two points of one rule this far from each other count as following one another, not as near, unless so
   * many mm lie between them along it.
   */
  readonly along: (distance: number) => number;
};

/** Even the smallest tube is looked at in so many places. */
const LEAST_SAMPLES = 4;

function samplesOf(rules: readonly RulePath[], step: number): readonly Sample[] {
  return rules.flatMap(({ path }, rule) => {
    const round = pathLength(path);
    const count = Math.max(LEAST_SAMPLES, Math.ceil(round / step));
    return Array.from({ length: count }, (_, i): Sample => {
      const s = (round * i) / count;
      return { rule, s, share: round / count, at: pointAt(path, s), round };
    });
  });
}

function alongRule(a: Sample, b: Sample): number {
  const run = Math.abs(a.s - b.s);
  return Math.min(run, a.round - run);
}

const cellOf = (n: number, size: number): number => Math.floor(n / size);
const key = (x: number, y: number): string => `${x},${y}`;

/** For each point of a rule that has one within reach, the nearest; both ways round. */
export function nearPairs(rules: readonly RulePath[], { within, step, along }: Looking): readonly Pair[] {
  const reach = within + step;
  const samples = samplesOf(rules, step);
  const cells = new Map<string, Sample[]>();
  for (const sample of samples) {
    const k = key(cellOf(sample.at[0], reach), cellOf(sample.at[1], reach));
    const cell = cells.get(k);
    if (cell) cell.push(sample);
    else cells.set(k, [sample]);
  }
  const nearest = (a: Sample): Pair | undefined => {
    let best: Pair | undefined;
    const [cx, cy] = [cellOf(a.at[0], reach), cellOf(a.at[1], reach)];
    for (let x = cx - 1; x <= cx + 1; x++) {
      for (let y = cy - 1; y <= cy + 1; y++) {
        for (const b of cells.get(key(x, y)) ?? []) {
          if (b === a) continue;
          const distance = apart(a.at, b.at);
          if (b.rule === a.rule && alongRule(a, b) < along(distance)) continue;
          if (distance < reach && (!best || distance < best.distance)) best = { a, b, distance };
        }
      }
    }
    return best;
  };
  return samples.flatMap((a) => nearest(a) ?? []);
}

/**
 * With so many times their distance along the rule between them, two points face each other: the sides of a
 * slot do, those of a corner of 60° or more and those of a tube (π/2) do not.
 */
const FACING = 2;
/** The length of close rules is found in steps of this, mm: a load is an estimate. */
const STEP_MM = 0.5;

/**
 * Length of cut, in mm, along which another rule, or the other side of the same one, is nearer than `within`.
 * A notch stands on the outline's rule with leather free on both sides: it jams nothing.
 */
export function closeLength(rules: readonly RulePath[], within: number): number {
  if (!(within > 0)) return 0;
  const jamming = rules.filter(({ kind }) => kind !== "notch");
  return nearPairs(jamming, { within, step: STEP_MM, along: (distance) => FACING * distance })
    .filter(({ distance }) => distance < within)
    .reduce((sum, { a }) => sum + a.share, 0);
}
