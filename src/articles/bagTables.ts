import { type DimensionTable, from } from "../model/dimension.ts";
import { MADE } from "../trade/bagKinds.ts";
import { CLOSURES } from "../trade/closureTable.ts";
import { thingNames } from "../trade/facts/things.ts";

// What may be measured and chosen of a bag.

const COMMON = "common practice, no source";

export const bagMeasuresTable = {
  measured: { kind: "choice", choices: ["outside", "inside"], default: "outside", means: "width, height and depth are sizes of the finished bag outside, or of the room inside", source: COMMON },
  width: { kind: "length", least: 70, most: 600, means: "width of the bag, side to side at its base", source: "measured" },
  height: { kind: "length", least: 60, most: 500, means: "height of the front, base to top edge", source: "measured" },
  depth: { kind: "length", least: 20, most: 300, means: "depth of the bag at its base, front to back", source: "measured" },
  filledDepth: { kind: "length", optional: true, least: 10, most: from(["depth"], (k) => k.q("depth")), means: "inside depth at the top when the bag is filled; left out, the gusset's own", source: "measured" },
  shoulderDrop: { kind: "length", default: 560, least: 200, most: 900, means: "from the top of the shoulder down to the bag's top edge", source: COMMON },
  handDrop: { kind: "length", default: 150, least: 60, most: 350, means: "from the bag's top edge to the inside of a handle's top", source: COMMON },
  holds: { kind: "choice", choices: ["anything", ...thingNames], default: "anything", means: "what must go in", source: COMMON },
} as const satisfies DimensionTable;

export const bagTable = {
  made: { kind: "choice", choices: MADE, default: "flanged gusset", means: "how front and back are joined: a strip all round, flanged or turned inside out, or a wrap-round body with ends", source: COMMON },
  opening: { kind: "choice", choices: ["flap", "open"], default: "flap", means: "a flap in one with the back, or an open top", source: COMMON },
  closure: { kind: "choice", choices: CLOSURES, default: "press stud", means: "what holds the flap shut", source: COMMON },
  carry: { kind: "choice", choices: ["shoulder strap", "handles", "none"], default: "shoulder strap", means: "how it is carried", source: COMMON },
  strapFixed: { kind: "choice", choices: ["ring tabs", "riveted", "stitched", "through slots"], default: "ring tabs", means: "how the shoulder strap is fixed to the gusset", source: COMMON },
  pocket: { kind: "choice", choices: ["none", "outside", "inside"], default: "none", means: "outside on the front (on the back where a flap closes over the front), or inside on the back", source: COMMON },
  lining: { kind: "flag", default: false, means: "front, back and gusset lined", source: COMMON },
  patches: { kind: "flag", default: true, means: "reinforcement behind studs and locks, and behind the roots of straps and handles where there is room", source: COMMON },
  flange: { kind: "length", default: 10, least: 6, most: 20, means: "from the finished edge to the gusset's web, where the gusset is flanged", source: COMMON },
  allowance: { kind: "length", default: 8, least: 5, most: 15, means: "from a turned seam to the cut edge", source: COMMON },
  wetMoulded: { kind: "flag", default: true, means: "a flanged gusset is damped and moulded round the corners: it gathers more without pleats", source: COMMON },
} as const satisfies DimensionTable;
