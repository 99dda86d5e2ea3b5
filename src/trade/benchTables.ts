import type { DimensionTable } from "../model/dimension.ts";

const COMMON = "common practice, no source";

/** How an article is made and finished; no size depends on it. */
export const finishTable = {
  byDie: { kind: "text", default: "", longest: 200, example: "cheek, keeper", means: "pieces that are cut with a steel die, parted by commas", source: "left blank" },
  dye: { kind: "text", default: "", longest: 60, means: "colour it is dyed; left blank, the leather comes dyed or stays as it is", source: "left blank" },
  edges: { kind: "choice", choices: ["burnished", "painted", "raw"], default: "burnished", means: "how the edges are finished", source: COMMON },
  edged: { kind: "flag", default: true, means: "the corners of the edges are taken off with an edging tool", source: COMMON },
  thread: { kind: "text", default: "", longest: 60, means: "thread and its colour", source: "left blank" },
} as const satisfies DimensionTable;

/** What this order's price has of its own; the rest stands in the shop file. */
export const priceTable = {
  margin: { kind: "ratio", optional: true, least: 0, most: 0.9, means: "your margin; left out, the shop's", source: "your shop file" },
  deposit: { kind: "ratio", optional: true, least: 0, most: 1, means: "share that is paid when ordering; left out, the shop's", source: "your shop file" },
  tax: { kind: "ratio", optional: true, least: 0, most: 1, means: "tax on the price; left out, the shop's", source: "your shop file" },
  minutes: { kind: "number", default: 0, least: 0, most: 100000, means: "minutes of work besides those reckoned, as for a fitting", source: COMMON },
  ownLeather: { kind: "flag", default: false, means: "the customer brings the leather: it is listed and not priced", source: COMMON },
  quantity: { kind: "count", default: 1, least: 1, most: 1000, means: "how many of it are ordered", source: COMMON },
} as const satisfies DimensionTable;
