import { pathLength } from "../geometry/length.ts";
import type { Piece } from "../model/piece.ts";
import { counted } from "../model/words.ts";
import { printNumber } from "../units/index.ts";
import { piecesByDie } from "./byDie.ts";
import { cutSize, isStrip } from "./cutSize.ts";
import {
  countOf,
  type Draft,
  grouped,
  idsOf,
  namesOf,
  sayLength,
  sayThickness,
  served,
  sumOf,
  unique,
  type WorkInput,
} from "./draft.ts";

// Cutting out.

const MM_PER_METRE = 1000;
/** Leather and widths that print alike to a hundredth are cut alike. */
const DECIMALS = 2;

const leatherOf = (p: Piece, input: WorkInput): string =>
  `${p.leather.kind} leather, ${sayThickness(p.leather.thickness, input)}`;
const outlines = (pieces: readonly Piece[]): readonly string[] =>
  pieces.flatMap((p) => served("outline", p.id, "outline"));

/** Steps that cut the pieces out: strips by leather and width; what is cut by die; the rest by knife, by leather. */
export function cutSteps(input: WorkInput): readonly Draft[] {
  const { pieces } = input.made;
  const byDie = new Set(piecesByDie(input.finish.byDie, idsOf(pieces)).ids);
  const rest = pieces.filter((p) => !byDie.has(p.id));
  const width = (p: Piece): string => printNumber(cutSize(p).width, DECIMALS);
  const leather = (p: Piece): string => `${p.leather.kind} ${p.leather.thickness.toFixed(DECIMALS)}`;
  const strips = grouped(rest.filter(isStrip), (p) => `${leather(p)} ${width(p)}`);
  const sheets = grouped(
    rest.filter((p) => !isStrip(p)),
    leather,
  );
  const dies = grouped(
    pieces.filter((p) => byDie.has(p.id)),
    leather,
  );
  return [
    ...strips.map((g, i) => stripStep(g, i, input)),
    ...dies.map((g, i) => dieStep(g, i, input)),
    ...sheets.map((g, i) => knifeStep(g, i, input)),
  ];
}

function stripStep(pieces: readonly Piece[], i: number, input: WorkInput): Draft {
  const count = sumOf(pieces.map((p) => countOf(p, input)));
  const width = sayLength(cutSize(pieces[0]!).width, input);
  return {
    id: `cut.strap.${i + 1}`,
    phase: "cut",
    does: "cutStrap",
    says: `Cut ${counted(count, "strap")}, ${width} wide, of ${leatherOf(pieces[0]!, input)}; the ends by the template: ${namesOf(pieces)}`,
    pieces: idsOf(pieces),
    tool: "strap cutter, and a knife for the ends",
    setting: width,
    amount: count,
    after: [],
    serves: outlines(pieces),
  };
}

function dieStep(pieces: readonly Piece[], i: number, input: WorkInput): Draft {
  const count = sumOf(pieces.map((p) => countOf(p, input)));
  return {
    id: `cut.die.${i + 1}`,
    phase: "cut",
    does: "cutByDie",
    says: `Cut ${counted(count, "piece")} with the die, of ${leatherOf(pieces[0]!, input)}: ${namesOf(pieces)}`,
    pieces: idsOf(pieces),
    tool: "die and press",
    setting: "",
    amount: count,
    after: [],
    serves: outlines(pieces),
  };
}

function knifeStep(pieces: readonly Piece[], i: number, input: WorkInput): Draft {
  const count = sumOf(pieces.map((p) => countOf(p, input)));
  const rough = pieces.some((p) => p.rough) ? "roughly along the dashed line, then " : "";
  return {
    id: `cut.knife.${i + 1}`,
    phase: "cut",
    does: "cutByKnife",
    says: `Cut ${counted(count, "piece")} of ${leatherOf(pieces[0]!, input)}, ${rough}along the line: ${namesOf(pieces)}`,
    pieces: unique(idsOf(pieces)),
    tool: "knife",
    setting: "",
    amount: sumOf(pieces.map((p) => countOf(p, input) * pathLength(p.outline))) / MM_PER_METRE,
    after: [],
    serves: outlines(pieces),
  };
}
