/** A stretch of a text and what comes in its place. */
export type Change = { readonly from: number; readonly to: number; readonly insert: string };

/** Makes changes that don't overlap; all else stays as it is, to the byte. */
export function splice(text: string, changes: readonly Change[]): string {
  const inOrder = [...changes].sort((a, b) => a.from - b.from);
  let [done, at] = ["", 0];
  for (const { from, to, insert } of inOrder) {
    done += text.slice(at, from) + insert;
    at = to;
  }
  return done + text.slice(at);
}
