import type { Cutout, Hole, Mark } from "../model/piece.ts";
import { counted } from "../model/words.ts";
import { printNumber } from "../units/index.ts";
import {
  countOf,
  type Draft,
  grouped,
  idsOf,
  listed,
  mm,
  namesOf,
  served,
  unique,
  type WorkInput,
} from "./draft.ts";
import { isSlotMark } from "./markSteps.ts";
import { countAll, isStitch, type On, onAll, piecesOf, rough, sayPunch } from "./onPieces.ts";

// Holes and slots that are punched.

/** "buckle", "screw and rivet": what the holes of one size are for. */
const usesOf = (list: readonly On<Hole>[]): string => listed(unique(list.map((o) => o.it.use)));

/** Round holes, flat, before anything is folded: one step for each size. */
export function punchSteps(input: WorkInput): readonly Draft[] {
  const holes = onAll(input, (p) => p.holes.filter((h) => h.kind !== "awl" && !isStitch(h)));
  return grouped(holes, (o) => rough(o.it.size)).map((g, i) => {
    const amount = countAll(g, input);
    const mated = g.some(({ piece, it }) => piece.turnBacks.some((t) => t.mates.flat().includes(it.id)));
    return {
      id: `punch.${i + 1}`,
      phase: "punch",
      does: "punchHole",
      says: `Punch ${counted(amount, "hole")} of ${mm(g[0]!.it.size)} (${usesOf(g)}): ${namesOf(piecesOf(g))}${mated ? "; both legs of a turn-back flat, before folding" : ""}`,
      pieces: idsOf(piecesOf(g)),
      tool: "round punch",
      setting: sayPunch(g[0]!.it.size, input.shop),
      amount,
      after: [],
      serves: g.flatMap(({ piece, it }) => served("hole", piece.id, it.id)),
    };
  });
}

/** The back leg's holes where the order has them made after folding: through the front leg's. */
export function foldedPunchSteps(input: WorkInput): readonly Draft[] {
  return input.made.pieces.flatMap((piece) =>
    piece.turnBacks
      .filter((t) => t.mates.length === 0)
      .flatMap((t): readonly Draft[] => {
        const holes = piece.holes.filter(
          (h) => h.kind === "round" && !isStitch(h) && h.id.startsWith(`${t.id}.${h.use}.front.`),
        );
        if (holes.length === 0) return [];
        return [
          {
            id: `punch.folded.${piece.id}.${t.id}`,
            phase: "punch folded",
            does: "punchHole",
            says: `Punch the back leg of the ${namesOf([piece])}, ${t.id} end, through the front leg's holes`,
            pieces: [piece.id],
            tool: "round punch",
            setting: sayPunch(holes[0]!.size, input.shop),
            amount: countOf(piece, input) * holes.length,
            after: [],
            serves: [],
          },
        ];
      }),
  );
}

const slotKey = ({ it }: On<Cutout>): string =>
  it.length === undefined || it.width === undefined
    ? it.use
    : `${it.use} ${rough(it.length)} ${rough(it.width)}`;

/** Slots and openings: one step for each size. */
export function slotSteps(input: WorkInput): readonly Draft[] {
  return grouped(
    onAll(input, (p) => p.cutouts),
    slotKey,
  ).map((g, i) => {
    const amount = countAll(g, input);
    const { use, length, width } = g[0]!.it;
    const sized = length !== undefined && width !== undefined;
    return {
      id: `slot.${i + 1}`,
      phase: "punch",
      does: "punchSlot",
      says: `${sized ? "Punch" : "Cut out"} ${counted(amount, use)}${sized ? ` of ${printNumber(length, 1)} by ${mm(width)}` : ""}: ${namesOf(piecesOf(g))}`,
      pieces: idsOf(piecesOf(g)),
      tool: sized ? "slot punch, or a round punch at both ends and a knife" : "knife",
      setting: sized ? `ends: ${sayPunch(width, input.shop)}` : "",
      amount,
      after: [],
      serves: g.flatMap(({ piece, it }) => served("slot", piece.id, it.id)),
    };
  });
}

/** Slots that are cut through a lining once it is glued in. */
export function liningSlotSteps(input: WorkInput): readonly Draft[] {
  const marks: readonly On<Mark>[] = onAll(input, (p) => p.marks.filter(isSlotMark));
  if (marks.length === 0) return [];
  return [
    {
      id: "slot.lining",
      phase: "lining",
      does: "punchSlot",
      says: `Cut through the ${namesOf(piecesOf(marks))}: ${listed(unique(marks.map((m) => m.it.label.split(":")[0]!)))}`,
      pieces: idsOf(piecesOf(marks)),
      tool: "knife",
      setting: "",
      amount: countAll(marks, input),
      after: [],
      serves: marks.flatMap(({ piece, it }) => served("mark", piece.id, it.id)),
    },
  ];
}
