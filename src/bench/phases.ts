// The trade's rules of order: which work on a piece must be done before which.

/** Stages of the work; a piece goes through those that it needs. */
export const PHASES = [
  "set up",
  "cut",
  "mark",
  "tool",
  "skive",
  "edge",
  "groove",
  "punch",
  "prick",
  "dye",
  "join keeper",
  "finish keeper",
  "staple",
  "fold",
  "mould",
  "hem",
  "sew end",
  "finish part",
  "hang",
  "slide",
  "punch folded",
  "fix end",
  "glue edges",
  "put together",
  "lining",
  "trim",
  "true",
  "edge sewn",
  "finish",
  "check",
] as const;
export type Phase = (typeof PHASES)[number];

const FLAT: readonly Phase[] = ["groove", "punch", "prick"];

/**
 * Stages that must be over on a piece before the one named begins on it; all of them stand before it in PHASES, so
 * that no circle can come of them. Common practice, no source: tooling before folding and dyeing; skiving before
 * punching and pricking, as the knife catches in holes; holes punched and pricked flat before folding; dye before
 * edges are finished and before hardware is fixed; free edges edged before stitching, sewn ones after they are trued.
 * Damping is no stage: it stands right before what is done damp.
 */
export const AFTER: Readonly<Record<Phase, readonly Phase[]>> = {
  "set up": [],
  cut: ["set up"],
  mark: ["cut"],
  tool: ["cut", "mark"],
  skive: ["cut", "mark", "tool"],
  edge: ["cut", "tool", "skive"],
  groove: ["cut", "mark", "tool", "skive"],
  punch: ["cut", "mark", "tool", "skive"],
  prick: ["cut", "mark", "tool", "skive", "groove"],
  dye: ["cut", "tool", "skive", "edge", ...FLAT],
  "join keeper": ["edge", "prick", "skive", "dye"],
  "finish keeper": ["cut", "edge", "dye", "join keeper"],
  staple: ["cut", "punch", "skive", "dye", "finish keeper"],
  fold: ["cut", "tool", "edge", ...FLAT, "skive", "dye", "join keeper", "finish keeper", "staple"],
  mould: ["fold"],
  hem: ["fold"],
  "sew end": ["edge", "prick", "dye", "fold"],
  "finish part": ["cut", "edge", "dye", "fold", "hem", "sew end"],
  hang: ["cut", "tool", ...FLAT, "skive", "dye", "edge", "finish keeper", "staple", "finish part"],
  // Slid on while an end is open, be that closed early or late: its own step says which.
  slide: ["join keeper", "finish keeper", "staple"],
  "punch folded": ["fold", "hang"],
  "fix end": ["punch", "dye", "hang", "punch folded", "slide", "finish part"],
  "glue edges": ["cut", "edge", "prick", "dye", "fold", "mould"],
  "put together": [
    "cut",
    "edge",
    ...FLAT,
    "skive",
    "dye",
    "fold",
    "mould",
    "hem",
    "sew end",
    "finish part",
    "hang",
    "fix end",
    "slide",
  ],
  lining: ["put together"],
  trim: ["put together"],
  true: ["put together", "lining", "trim"],
  "edge sewn": ["put together", "lining", "trim", "true"],
  finish: ["dye", "edge", "put together", "lining", "trim", "true", "edge sewn"],
  check: [],
};
