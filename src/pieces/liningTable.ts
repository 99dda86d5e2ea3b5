import type { DimensionTable } from "../model/dimension.ts";

// What may be set of a lining.

const COMMON = "common practice, no source";

export const dimensions = {
  thickness: { kind: "thickness", least: 0.4, most: 3, handed: true, means: "thickness of the lining", source: "leather" },
  thickest: { kind: "thickness", least: 0.4, most: 3, handed: true, means: "its thickest place", source: "leather" },
  allowance: { kind: "length", default: 3, least: -5, most: 12, means: "how far it is cut outside the edge of what it lines, to be trimmed flush after glueing; below 0 it ends that far inside", source: COMMON },
} as const satisfies DimensionTable;
