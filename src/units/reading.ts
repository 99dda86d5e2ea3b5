// What every reader in this room gives back: a value, or what was got and how to write it.

/** The value that was read, with a note when something was decided for the reader; or a fault. */
export type Reading<T> = { readonly ok: true; readonly value: T; readonly note?: string } | Fault;

/** `problem` quotes what was got and says what is wrong with it; `mend` shows the right way to write it. */
export type Fault = { readonly ok: false; readonly problem: string; readonly mend: string };

/** A value that was read; `note` tells the person what was decided on the way. */
export const read = <T>(value: T, note?: string): Reading<T> =>
  note === undefined ? { ok: true, value } : { ok: true, value, note };

/** A text that was not understood. */
export const misread = (problem: string, mend: string): Fault => ({ ok: false, problem, mend });
