/** `write "a", "b" or "c", whichever is meant`: the ways that a text could have been written. */
export function offer(ways: readonly string[]): string {
  const quoted = ways.map((way) => `"${way}"`);
  const last = quoted.pop();
  if (quoted.length === 0) return `write ${last}`;
  return `write ${quoted.join(", ")} or ${last}, whichever is meant`;
}
