// The layers of a die's file for machines, by what is done with what lies on them.
import type { FeatureKind } from "../../die/feature.ts";
import type { RulePath } from "../../die/rulePaths.ts";

/** Those that begin with CUT are steel, and no others. */
export const CUT_LAYERS = [
  "CUT",
  "CUT_SLOTS",
  "CUT_TUBES",
  "CUT_NOTCHES",
  "RULE_FACES",
  "BOARD",
  "HAND_SLOT",
  "HAND_HOLE",
  "HAND_AWL",
  "HAND_NOTCH",
  "HAND_CREASE",
  "HAND_FOLD",
  "HAND_SKIVE",
  "HAND_GLUE",
  "HAND_TOOLING",
  "HAND_TRIM",
  "CENTRE",
  "CHECK_50MM",
  "TEXT",
] as const;
export type CutLayer = (typeof CUT_LAYERS)[number];

export const RULE_LAYERS: Readonly<Record<RulePath["kind"], CutLayer>> = {
  outline: "CUT",
  slot: "CUT_SLOTS",
  tube: "CUT_TUBES",
  notch: "CUT_NOTCHES",
};

/** What is made by hand; an outline never is. */
export const HAND_LAYERS: Readonly<Record<Exclude<FeatureKind, "outline">, CutLayer>> = {
  slot: "HAND_SLOT",
  opening: "HAND_SLOT",
  "round hole": "HAND_HOLE",
  "staple hole": "HAND_HOLE",
  "stitch holes": "HAND_AWL",
  "awl holes": "HAND_AWL",
  notch: "HAND_NOTCH",
  clip: "HAND_NOTCH",
  crease: "HAND_CREASE",
  fold: "HAND_FOLD",
  skive: "HAND_SKIVE",
  glue: "HAND_GLUE",
  tooling: "HAND_TOOLING",
  trim: "HAND_TRIM",
};
