import type { Die } from "../die.ts";

/**
 * What a rule cuts, as the die's drawing names it: "the outline", "slot A1", "round hole B2". The piece's own
 * names say nothing to a die maker.
 */
export function ruleName({ features }: Pick<Die, "features">, id: string): string {
  const feature = features.find((f) => f.id === id);
  if (!feature) return id;
  return feature.letter === undefined ? `the ${feature.kind}` : `${feature.kind} ${feature.letter}`;
}

/** "A1", "A1 and A2", "A1, A2 and A3". */
export function inWords(all: readonly string[]): string {
  return all.length < 2 ? all.join("") : `${all.slice(0, -1).join(", ")} and ${all.at(-1)}`;
}
