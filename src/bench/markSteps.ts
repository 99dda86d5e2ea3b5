import type { Mark, Piece, Zone } from "../model/piece.ts";
import { counted } from "../model/words.ts";
import {
  countOf,
  type Draft,
  grouped,
  idsOf,
  listed,
  namesOf,
  served,
  sumOf,
  type WorkInput,
} from "./draft.ts";

// Marking: fold lines, places, centre lines, notches and clips.

/** A slot that is cut through a lining once it is glued in; its mark is named after the slot. */
export const isSlotMark = (m: Mark): boolean => m.id.startsWith("slot.");

/** Creases are pressed with a tool of their own; a lining's fold line is only marked. */
export const isPressed = (m: Mark): boolean => m.kind === "crease" && !m.id.startsWith("fold.");

const isMarked = (m: Mark): boolean => !isPressed(m) && !isSlotMark(m) && m.kind !== "clip";

/** Places of other pieces that are drawn as zones. */
const placesOf = (p: Piece): readonly Zone[] =>
  p.zones.filter((z) => z.kind === "keeper" || z.kind === "overlap");

type Marked = { readonly piece: Piece; readonly marks: readonly Mark[]; readonly zones: readonly Zone[] };

/** One step for all that is marked, one for clips: these are cut with scissors. */
export function markSteps(input: WorkInput): readonly Draft[] {
  const all = input.made.pieces.map(
    (piece): Marked => ({ piece, marks: piece.marks.filter(isMarked), zones: placesOf(piece) }),
  );
  const marked = all.filter(
    ({ piece, marks, zones }) => marks.length + zones.length + piece.folds.length > 0,
  );
  const clipped = input.made.pieces.filter((p) => p.marks.some((m) => m.kind === "clip"));
  return [
    ...(marked.length === 0 ? [] : [markStep(marked, input)]),
    ...(clipped.length === 0 ? [] : [clipStep(clipped, input)]),
  ];
}

const KINDS: Readonly<Record<Exclude<Mark["kind"], "place">, readonly [one: string, many: string]>> = {
  notch: ["notch", "notches"],
  centre: ["centre line", "centre lines"],
  crease: ["fold line", "fold lines"],
  clip: ["clip", "clips"],
};

/** "place of the keeper", "edge of the crown", "where the flap's rivets come": what lies there. */
function placeWords(label: string): readonly [one: string, many: string] {
  if (label.startsWith("edge of ")) return [`the ${label}`, `edges${label.slice("edge".length)}`];
  const comes = / come here$/;
  if (comes.test(label)) {
    const where = `where the ${label.replace(comes, "")} come`;
    return [where, where];
  }
  return [`place of the ${label}`, `places of the ${label}`];
}

/** "1 centre line", "2 places of the handle"; a single place needs no number. */
const sayCount = (g: readonly (readonly [string, string])[], places: ReadonlySet<string>): string => {
  const [one, many] = g[0]!;
  return g.length === 1 && places.has(one) ? one : counted(g.length, one, many);
};

/** "cheek (2 fold lines, place of the keeper)": what is marked on one such piece. */
function sayMarked({ piece, marks, zones }: Marked): string {
  const words = [
    ...piece.folds.map(() => KINDS.crease),
    ...marks.map((m) => (m.kind === "place" ? placeWords(m.label) : KINDS[m.kind])),
    ...zones.map((z) => placeWords(z.label)),
  ];
  const places = new Set(
    [...marks.filter((m) => m.kind === "place"), ...zones].map((p) => placeWords(p.label)[0]),
  );
  const kinds = grouped(words, ([one]) => one).map((g) => sayCount(g, places));
  return `${namesOf([piece])} (${listed(kinds)})`;
}

/** As the templates say. */
const NOTCHES = "Mark notches on the flesh side; don't cut into an edge that shows";

function markStep(marked: readonly Marked[], input: WorkInput): Draft {
  const amount = marked.map(
    ({ piece, marks, zones }) => countOf(piece, input) * (piece.folds.length + marks.length + zones.length),
  );
  const hasNotch = marked.some(({ marks }) => marks.some((m) => m.kind === "notch"));
  return {
    id: "mark",
    phase: "mark",
    does: "mark",
    says: `Mark each ${marked.map(sayMarked).join("; ")}${hasNotch ? `. ${NOTCHES}` : ""}`,
    pieces: idsOf(marked.map((m) => m.piece)),
    tool: "scratch awl",
    setting: "",
    amount: sumOf(amount),
    after: [],
    serves: marked.flatMap(({ piece, marks, zones }) => [
      ...served("mark", piece.id, ...marks.map((m) => m.id)),
      ...served("zone", piece.id, ...zones.map((z) => z.id)),
    ]),
  };
}

function clipStep(pieces: readonly Piece[], input: WorkInput): Draft {
  const clips = (p: Piece): readonly Mark[] => p.marks.filter((m) => m.kind === "clip");
  return {
    id: "mark.clips",
    phase: "mark",
    does: "mark",
    says: `Clip the allowance where it is bent: ${namesOf(pieces)}`,
    pieces: idsOf(pieces),
    tool: "scissors",
    setting: "",
    amount: sumOf(pieces.map((p) => countOf(p, input) * clips(p).length)),
    after: [],
    serves: pieces.flatMap((p) => served("mark", p.id, ...clips(p).map((m) => m.id))),
  };
}
