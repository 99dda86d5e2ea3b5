// A pair of pieces on one board.
import { placed } from "../geometry/transform.ts";
import type { Quantity } from "../model/quantity.ts";
import type { Die } from "./die.ts";
import { closeLength } from "./nearness.ts";
import { type Nest, nestPair, type Second } from "./nest.ts";
import { loadOfBoth } from "./press.ts";
import { steelBetween } from "./ruleBody.ts";

/** What the second piece of a pair is: the other side, unless the die is its own mirror image. */
export const secondOf = ({ piece, axis }: Die): Second =>
  piece.hand === "pair" && !axis ? "mirrored" : "same";

/**
 * Two of the piece on one board, with the least spacing clear between the steel of both rules, and as far from
 * edge to edge as the leather is thick, so that the waste between them doesn't jam (common practice, no source).
 */
export function pairDie(die: Die): Nest {
  const { settings, rules, piece } = die;
  return nestPair(rules[0]!.path, {
    spacing: Math.max(settings.spacing.value + steelBetween("waste", settings), piece.leather.thickest),
    margin: settings.boardMargin.value,
    second: secondOf(die),
  });
}

/** What the press must push for both dies of the board at once, N. */
export function pairLoad({ rules, load, perLength, settings }: Die, { second }: Nest): Quantity {
  const within = settings.closeRules.value;
  const other = rules.map((rule) => ({ ...rule, path: placed(rule.path, second) }));
  const alone = closeLength(rules, within) + closeLength(other, within);
  const length = closeLength([...rules, ...other], within) - alone;
  return loadOfBoth(load, perLength, { length, extra: settings.closeRulesExtra });
}
