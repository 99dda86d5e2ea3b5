// What a die's file for machines says in words, for whoever has the file and no drawing.
import type { Die } from "../../die/die.ts";
import { printNumber } from "../../units/index.ts";
import { CUT_LAYERS, type CutLayer } from "./cutLayers.ts";
import { BEVEL_SHORT, sayLeatherUpTo, sayTolerance } from "./words.ts";

const mm = (value: number): string => `${printNumber(value, 2)} mm`;

/** The layers that are there, in the files' own order. */
const listed = (layers: readonly CutLayer[], start: string): string =>
  CUT_LAYERS.filter((layer) => layer.startsWith(start) && layers.includes(layer)).join(", ");

/** Lines of text, in millimetres and in signs that any reader of such files has. */
export function cutWords(die: Die, layers: readonly CutLayer[]): readonly string[] {
  const { rule, ruleThickness, ruleHeight, bevel } = die.settings;
  const byHand = listed(layers, "HAND");
  return [
    `Rule: ${rule}, ${mm(ruleThickness.value)} thick, ${mm(ruleHeight.value)} high; ground on: ${BEVEL_SHORT[bevel]}`,
    `Leather: ${sayLeatherUpTo(die, "mm")}`,
    `Tolerance: ${sayTolerance(die, mm).replace("±", "+/-")}`,
    `Only CUT layers are steel: ${listed(layers, "CUT")}`,
    ...(layers.includes("RULE_FACES") ? ["RULE_FACES: both faces of the rule, for the board; no edge"] : []),
    ...(layers.includes("BOARD") ? ["BOARD: edge of the board, no steel"] : []),
    ...(byHand === "" ? [] : [`Made by hand afterwards, not in the die: ${byHand}`]),
    "CHECK_50MM: the square measures 50 mm; measure it, do not make it",
  ];
}
