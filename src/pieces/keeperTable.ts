import { type DimensionTable, from } from "../model/dimension.ts";
import { greatest, least, sum, times } from "../model/quantity.ts";
import { keeperBreadth } from "../trade/keeper.ts";
import { handedStitching } from "../trade/tables.ts";

// What may be set of a keeper.

const COMMON = "common practice, no source";

export const SEAMS = ["butted and stitched", "butted with a staple", "lapped"] as const;

export const dimensions = {
  ...handedStitching,
  strapWidth: { kind: "length", least: 6, most: 90, handed: true, means: "widest strap it goes round", source: "straps" },
  layers: { kind: "length", least: 1, most: 40, handed: true, means: "thickness of the layers it goes round", source: "leather" },
  running: { kind: "flag", default: false, handed: true, means: "a running keeper slides", source: "article" },
  neutral: { kind: "ratio", least: 0.3, most: 0.7, handed: true, means: "neutral fibre", source: "leather" },
  thickness: { kind: "thickness", least: 1, most: 5, handed: true, means: "thickness of the keeper's leather", source: "leather" },
  breadth: {
    kind: "length",
    default: from(["strapWidth", "pitch"], (k) => keeperBreadth(k.q("strapWidth"), k.q("pitch"))),
    least: from(["pitch"], (k) => greatest(6, { ...sum(times(2, k.q("pitch")), 2), kind: "length" })),
    most: 40,
    means: "breadth of the keeper along the strap",
    source: "P. N. Hasluck, Harness Making (1904), pp. 49-50, 54",
  },
  easeWidth: {
    kind: "length",
    default: from(["running"], (k) => ({ value: k.flag("running") ? 1 : 0.5, kind: "length", parts: [k.flag("running") ? "1 mm for a running keeper" : "0.5 mm for a fixed keeper"], inputs: [] })),
    least: 0,
    most: 4,
    means: "room in its width",
    source: COMMON,
  },
  easeHeight: { kind: "length", default: 0.5, least: 0, most: 3, means: "room in its height", source: COMMON },
  seam: { kind: "choice", choices: SEAMS, default: from(["running"], (k) => (k.flag("running") ? "lapped" : "butted and stitched")), means: "how its ends are joined", source: COMMON },
  lap: {
    kind: "length",
    default: from(["strapWidth"], (k) => least(12.7, times(0.6, k.q("strapWidth")))),
    least: 3,
    most: from(["strapWidth"], (k) => k.q("strapWidth")),
    means: "overlap of a lapped keeper",
    source: "P. N. Hasluck, Harness Making (1904), pp. 50, 57: about 1/2 in",
  },
  skiveTo: { kind: "thickness", default: from(["thickness"], (k) => least(1, k.q("thickness"))), least: 0.5, most: from(["thickness"], (k) => k.q("thickness")), means: "thickness of its ends", source: COMMON },
} as const satisfies DimensionTable;
