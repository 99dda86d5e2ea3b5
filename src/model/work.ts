/**
 * The kinds of work at the bench, in the order a maker prefers where nothing else decides; what each is
 * counted by, for the time it takes. A shop keeps its minutes by them.
 */
export const WORK = {
  setUp: { says: "set up the job", per: "job" },
  cutStrap: { says: "cut straps", per: "strap" },
  cutByDie: { says: "cut with the die", per: "piece" },
  cutByKnife: { says: "cut with the knife", per: "metre" },
  mark: { says: "mark", per: "mark" },
  case: { says: "damp", per: "piece" },
  tool: { says: "tool", per: "square decimetre" },
  edge: { says: "edge", per: "metre" },
  groove: { says: "groove or crease", per: "metre" },
  punchHole: { says: "punch holes", per: "hole" },
  punchSlot: { says: "punch slots", per: "slot" },
  prick: { says: "prick stitch holes", per: "stitch hole" },
  skive: { says: "skive", per: "skive" },
  dye: { says: "dye", per: "square decimetre" },
  fold: { says: "fold", per: "fold" },
  fix: { says: "fix hardware", per: "fixing" },
  glue: { says: "glue", per: "part" },
  stitch: { says: "stitch", per: "stitch" },
  turn: { says: "turn right side out", per: "bag" },
  trim: { says: "trim edges", per: "metre" },
  finish: { says: "finish edges", per: "metre" },
  check: { says: "check and pack", per: "job" },
} as const;
export type WorkKind = keyof typeof WORK;
export const WORK_KINDS = Object.keys(WORK) as readonly WorkKind[];
