// The trade's rules of order: which work on a piece must be done before which.

/** Stages of the work; a piece goes through those that it needs. */
export const PHASES = [
  "set up",
  "cut",
  "mark",
  "case",
  "tool",
  "edge",
  "groove",
  "punch",
  "prick",
  "skive",
  "dye",
  "damp",
  "join keeper",
  "finish keeper",
  "staple",
  "fold",
  "sew end",
  "finish part",
  "damp to hang",
  "hang",
  "slide",
  "punch folded",
  "fix end",
  "glue edges",
  "put together",
  "lining",
  "trim",
  "edge trimmed",
  "finish",
  "check",
] as const;
export type Phase = (typeof PHASES)[number];

const FLAT: readonly Phase[] = ["groove", "punch", "prick"];

/**
 * Stages that must be over on a piece before the one named begins on it; all of them stand before it in PHASES, so
 * that no circle can come of them. Common practice, no source: tooling after
 * casing and before folding and dyeing; skiving before folding; holes punched and pricked flat before folding; dye
 * before edges are finished and before hardware is fixed; edging before stitching, or after where edges are trimmed
 * together.
 */
export const AFTER: Readonly<Record<Phase, readonly Phase[]>> = {
  "set up": [],
  cut: ["set up"],
  mark: ["cut"],
  case: ["cut", "mark"],
  tool: ["case"],
  edge: ["cut", "tool"],
  groove: ["cut", "mark", "tool"],
  punch: ["cut", "mark", "tool"],
  prick: ["cut", "mark", "tool", "groove"],
  skive: ["cut", "mark", "tool"],
  dye: ["cut", "tool", "edge", ...FLAT, "skive"],
  damp: ["cut", "tool", "edge", ...FLAT, "skive", "dye"],
  "join keeper": ["edge", "prick", "skive", "dye"],
  "finish keeper": ["cut", "edge", "dye", "join keeper"],
  staple: ["cut", "punch", "skive", "dye", "finish keeper"],
  fold: ["cut", "tool", "edge", ...FLAT, "skive", "dye", "damp", "join keeper", "finish keeper", "staple"],
  "sew end": ["edge", "prick", "dye", "fold"],
  "finish part": ["cut", "edge", "dye", "fold", "sew end"],
  "damp to hang": ["cut", "tool", "edge", ...FLAT, "skive", "dye", "finish part"],
  hang: ["cut", ...FLAT, "skive", "dye", "edge", "finish keeper", "staple", "finish part", "damp to hang"],
  // Slid on while an end is open, be that closed early or late: its own step says which.
  slide: ["join keeper", "finish keeper", "staple"],
  "punch folded": ["fold", "hang"],
  "fix end": ["punch", "dye", "hang", "punch folded", "slide", "finish part"],
  "glue edges": ["cut", "edge", "prick", "dye", "fold"],
  "put together": [
    "cut",
    "edge",
    ...FLAT,
    "skive",
    "dye",
    "fold",
    "sew end",
    "finish part",
    "hang",
    "fix end",
    "slide",
  ],
  lining: ["put together"],
  trim: ["put together"],
  "edge trimmed": ["trim", "put together"],
  finish: ["dye", "edge", "put together", "trim", "edge trimmed"],
  check: [],
};
