import { signedArea } from "../geometry/area.ts";
import { boundsOf } from "../geometry/bounds.ts";
import type { Piece, Zone } from "../model/piece.ts";
import {
  countOf,
  type Draft,
  grouped,
  idsOf,
  isLining,
  isPatch,
  mm,
  namesOf,
  sayLength,
  sayThickness,
  served,
  sumOf,
  type WorkInput,
} from "./draft.ts";
import { foldWords } from "./foldWords.ts";
import { rough } from "./onPieces.ts";

// What is done to the leather's surface and thickness: tooling, skiving and dyeing.

const MM2_PER_DM2 = 1e4;
const areaOf = (z: { readonly outline: Zone["outline"] }): number =>
  Math.abs(signedArea(z.outline)) / MM2_PER_DM2;

const zonesOf = (p: Piece, kind: Zone["kind"]): readonly Zone[] => p.zones.filter((z) => z.kind === kind);

/** Tooling, piece by piece, damp. */
export const toolSteps = (input: WorkInput): readonly Draft[] =>
  input.made.pieces
    .filter((p) => zonesOf(p, "tooling").length > 0)
    .map((p): Draft => {
      const zones = zonesOf(p, "tooling");
      return {
        id: `tool.${p.id}`,
        phase: "tool",
        does: "tool",
        says: `Tool the ${namesOf([p])} inside the marked zone; let it dry flat`,
        pieces: [p.id],
        tool: "stamps and maul, on a stone",
        setting: "",
        amount: countOf(p, input) * sumOf(zones.map(areaOf)),
        after: [],
        serves: served("zone", p.id, ...zones.map((z) => z.id)),
        damp: `Damp the ${namesOf([p])} for tooling; let it come back to colour before it is stamped`,
      };
    });

/** Skives: one step for each piece, thickness and length; an edge that ends at nothing is feathered. */
export function skiveSteps(input: WorkInput): readonly Draft[] {
  return input.made.pieces.flatMap((piece) => {
    const like = (z: Zone): string =>
      [z.from ?? 0, z.to ?? 0, lengthOf(z)].map(rough).join(" ") + placeOf(piece, z);
    return grouped(zonesOf(piece, "skive"), like).map((zones): Draft => {
      const [zone] = zones as readonly [Zone];
      return {
        id: `skive.${piece.id}.${zone.id}`,
        phase: "skive",
        does: "skive",
        says: `${saySkive(piece, zone, input)}, over ${sayLength(lengthOf(zone), input)}`,
        pieces: [piece.id],
        tool: "skiving knife",
        setting: zone.to ? `${mm(zone.to)} thick` : "to nothing",
        amount: countOf(piece, input) * zones.length,
        after: [],
        serves: served("zone", piece.id, ...zones.map((z) => z.id)),
      };
    });
  });
}

/** How far a skive reaches along the piece: straps lie along x. */
function lengthOf({ outline }: Zone): number {
  const box = boundsOf(outline);
  return box.maxX - box.minX;
}

/** Where a skive lies: a turn-back's begins with its id; a keeper's says which end. */
function placeOf(piece: Piece, { id }: Zone): string {
  const [first = "", last = ""] = id.split(".");
  const fold = foldWords(piece, first);
  if (fold !== undefined) return `at the ${fold}`;
  return last === "start" || last === "end" ? "at both ends" : "";
}

/** Thinned leather is said in mm to a tenth, as in the list of what is cut. */
function saySkive(piece: Piece, zone: Zone, input: WorkInput): string {
  const place = placeOf(piece, zone);
  const where = place === "" ? "" : ` ${place}`;
  const the = `the ${namesOf([piece])}`;
  return zone.to
    ? `Skive ${the}${where} from ${sayThickness(zone.from ?? piece.leather.thickness, input)} to ${mm(zone.to)}`
    : `Feather the end of ${the}${where} from ${mm(zone.from ?? piece.leather.thickness)} to nothing`;
}

/** Everything that is seen is dyed; what lies hidden isn't, nor linings. */
export function dyeSteps(input: WorkInput): readonly Draft[] {
  const colour = input.finish.dye.trim();
  const seen = input.made.pieces.filter((p) => !isPatch(p) && !isLining(p));
  if (colour === "" || seen.length === 0) return [];
  return [
    {
      id: "dye",
      phase: "dye",
      does: "dye",
      says: `Dye ${colour}: ${namesOf(seen)}; fresh air, and as its maker says; let it dry, then buff it`,
      pieces: idsOf(seen),
      tool: "dauber",
      setting: colour,
      amount: sumOf(seen.map((p) => countOf(p, input) * areaOf(p))),
      after: [],
      serves: [],
    },
  ];
}
