import { type DimensionTable, from } from "../model/dimension.ts";
import { least } from "../model/quantity.ts";
import { handedLeather } from "../trade/tables.ts";

// What may be set of reinforcement patches; all patches of a bag share these.

const COMMON = "common practice, no source";

export const dimensions = {
  ...handedLeather,
  thickness: { ...handedLeather.thickness, least: 0.4 },
  thickest: { ...handedLeather.thickest, least: 0.4 },
  border: { kind: "length", default: 7, least: 4, most: 25, means: "leather of a patch beyond what it backs, on each side", source: COMMON },
  cornerRadius: { kind: "length", default: from(["border"], (k) => least(5, k.q("border"))), least: 0, most: from(["border"], (k) => k.q("border")), means: "radius of a patch's corners", source: COMMON },
} as const satisfies DimensionTable;
