/** Work shorter than this needs no word. */
const QUIET_MS = 1000;

/**
 * A line on the terminal that says how far the work is, once it has taken longer than a second. Silent when
 * the error stream is no terminal.
 */
export function progress(
  stream: NodeJS.WriteStream,
  now: () => number,
): { readonly at: (done: number, of: number, what: string) => void; readonly end: () => void } {
  const began = now();
  let shown = false;
  return {
    at(done, of, what) {
      if (!stream.isTTY || now() - began < QUIET_MS) return;
      shown = true;
      stream.write(`\r\u001b[K${done + 1} of ${of}: ${what}`);
    },
    end() {
      if (shown) stream.write("\r\u001b[K");
    },
  };
}
