// A pair of pieces on one board.
import type { Die } from "./die.ts";
import { type Nest, nestPair, type Second } from "./nest.ts";
import { steelBetween } from "./ruleBody.ts";

/** What the second piece of a pair is: the other side, unless the die is its own mirror image. */
export const secondOf = ({ piece, axis }: Die): Second =>
  piece.hand === "pair" && !axis ? "mirrored" : "same";

/** Two of the piece on one board, with the least spacing clear between the steel of both rules. */
export function pairDie(die: Die): Nest {
  const { settings, rules } = die;
  return nestPair(rules[0]!.path, {
    spacing: settings.spacing.value + steelBetween("waste", settings),
    margin: settings.boardMargin.value,
    second: secondOf(die),
  });
}
