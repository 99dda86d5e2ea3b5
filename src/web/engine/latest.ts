/**
 * Lets one call run at a time and keeps only the newest that waits: every call that a later one overtook
 * resolves to undefined, at once or when it is done.
 */
export function latest<A extends readonly unknown[], T>(
  work: (...args: A) => Promise<T>,
): (...args: A) => Promise<T | undefined> {
  let newest = 0;
  let running: Promise<unknown> = Promise.resolve();
  return async (...args) => {
    newest += 1;
    const mine = newest;
    await running;
    if (mine !== newest) return undefined;
    const run = work(...args);
    running = run.catch(() => undefined);
    const value = await run;
    return mine === newest ? value : undefined;
  };
}
