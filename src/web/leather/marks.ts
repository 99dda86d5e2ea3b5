import type { PagePiece, PageView } from "../../job.ts";
import type { Picked } from "../state.ts";
import { pathData } from "./curves.ts";
import { type Box, outlineOf, type Point, strokeOfPart } from "./shapes.ts";

// What is pointed at, as it is marked on the drawing and said beside it.

/** Halos run along lines, rings stand round points: both are shapes, so that no colour is needed to see them. */
export type Mark = { readonly piece: string; readonly halo?: string; readonly ring?: Point };
export type Said = { readonly title: string; readonly lines: readonly string[] };
export type Pointed = { readonly marks: readonly Mark[]; readonly said?: Said };

const NOTHING: Pointed = { marks: [] };

const boxData = ({ minX, minY, maxX, maxY }: Box): string => `M${minX} ${minY}H${maxX}V${maxY}H${minX}Z`;

/** The whole piece: along its edge. */
function wholePiece(piece: PagePiece): Mark {
  const outline = outlineOf(piece.lines);
  return { piece: piece.id, halo: outline ? pathData(outline.path) : boxData(piece.box) };
}

function pointedPart(piece: PagePiece, id: string): Pointed {
  const part = piece.parts.find((p) => p.id === id);
  if (!part) return NOTHING;
  const stroke = strokeOfPart(piece, id);
  return {
    marks: [{ piece: piece.id, ring: part.at, ...(stroke ? { halo: pathData(stroke.path) } : {}) }],
    said: { title: part.says, lines: [`on ${piece.name}`] },
  };
}

function pointedSize(view: PageView, id: string, name: string): Pointed {
  const piece = view.pieces.find((p) => p.id === id);
  const size = (piece?.sizes ?? view.sizes).find((s) => s.name === name);
  if (!size) return NOTHING;
  const title = `${piece ? `${piece.name}, ` : ""}${size.name}: ${size.says}`;
  return { marks: piece ? [wholePiece(piece)] : [], said: { title, lines: size.chain } };
}

function pointedFinding(view: PageView, index: number): Pointed {
  const finding = view.findings[index];
  if (!finding) return NOTHING;
  const piece = view.pieces.find((p) => p.id === finding.piece);
  const said = { title: `${finding.severity}: ${finding.message}`, lines: [finding.mend] };
  if (!piece) return { marks: [], said };
  const part = piece.parts.find((p) => p.says === finding.place || p.id === finding.place);
  const at = finding.at ?? part?.at;
  return { marks: [at ? { piece: piece.id, ring: at } : wholePiece(piece)], said };
}

/** Every piece with a size that a value of the order moves. */
const pointedField = (view: PageView, key: string): Pointed => ({
  marks: view.pieces.filter((p) => p.sizes.some((s) => s.from.includes(key))).map(wholePiece),
});

/** The marks and the words of what is picked; nothing when it is no longer there. */
export function pointedAt(view: PageView | undefined, picked: Picked | undefined): Pointed {
  if (!view || !picked) return NOTHING;
  if (picked.what === "field") return pointedField(view, picked.key);
  if (picked.what === "finding") return pointedFinding(view, picked.index);
  if (picked.what === "size") return pointedSize(view, picked.piece, picked.name);
  const piece = view.pieces.find((p) => p.id === picked.piece);
  return piece ? pointedPart(piece, picked.id) : NOTHING;
}
