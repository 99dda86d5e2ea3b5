// The rules and tubes that stand on a die's board, as lines and arcs.
import { pathLength } from "../geometry/length.ts";
import { circlePath, type Path } from "../geometry/path.ts";
import type { DieFeature } from "./feature.ts";
import { ARC_FIT_MM, fitArcs } from "./fitArcs.ts";

/** One bent rule, or a tube, by the feature that it cuts. The path is its cutting edge. */
export type RulePath = {
  readonly id: string;
  readonly kind: "outline" | "slot" | "tube" | "notch";
  /** Lines and arcs only; closed, but for a notch, whose rule stands on the outline's. */
  readonly path: Path;
  /** The furthest that it lies from the piece's own line, mm. */
  readonly error: number;
  /** A tube's inside diameter. */
  readonly diameter?: number;
};

function rulePath(feature: DieFeature, tolerance: number): RulePath {
  const { id, size, at } = feature;
  if (feature.kind === "round hole" && size && "diameter" in size) {
    const { diameter } = size;
    return { id, kind: "tube", path: circlePath(at, diameter / 2), error: 0, diameter };
  }
  const fit = fitArcs(feature.paths[0]!, tolerance);
  const kind = feature.kind === "outline" || feature.kind === "notch" ? feature.kind : "slot";
  return { id, kind, ...fit };
}

/** The rules of all features that are in the die, the outline first; curves within `tolerance` mm. */
export const rulePaths = (
  features: readonly DieFeature[],
  tolerance: number = ARC_FIT_MM,
): readonly RulePath[] =>
  features.filter(({ made }) => made === "in the die").map((f) => rulePath(f, tolerance));

export type RuleLengths = {
  /** Outline, slots, openings and notches. */
  readonly rule: number;
  /** Round the tubes' edges. */
  readonly tubes: number;
};

/** How much is cut, mm: along the bent rule, and round the tubes. */
export function ruleLengths(rules: readonly RulePath[]): RuleLengths {
  const sum = (tube: boolean): number =>
    rules.reduce((total, r) => total + ((r.kind === "tube") === tube ? pathLength(r.path) : 0), 0);
  return { rule: sum(false), tubes: sum(true) };
}
