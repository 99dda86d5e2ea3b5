/** What a command says and how it ends; a command returns this, and main prints it. */
export type Ending = {
  readonly status: 0 | 1 | 2;
  readonly out: readonly string[];
  readonly err: readonly string[];
};

export const refused = (...err: readonly string[]): Ending => ({ status: 2, out: [], err });
export const said = (...out: readonly string[]): Ending => ({ status: 0, out, err: [] });

/** The highest status decides; what was said is kept in order. */
export function allOf(endings: readonly Ending[]): Ending {
  return {
    status: Math.max(0, ...endings.map((e) => e.status)) as Ending["status"],
    out: endings.flatMap((e) => e.out),
    err: endings.flatMap((e) => e.err),
  };
}
