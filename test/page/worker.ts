import { readdirSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import type { Engine } from "../../src/web/engine/engine.ts";
import { BUILT } from "./support.ts";

/** The built worker's path from the page. */
const workerPath = (): string => {
  const [name] = readdirSync(join(BUILT, "assets")).filter((n) => /^worker-.*\.js$/.test(n));
  return `assets/${name}`;
};

export type Hashed = Readonly<Record<string, string>>;

/** Asks the built engine in the browser for files, and gives back each one's SHA-256 by path. */
export const filesInBrowser = (page: Page, args: Parameters<Engine["files"]>): Promise<Hashed | string> =>
  page.evaluate(
    async ([path, given]) => {
      const worker = new Worker(new URL(path, document.baseURI), { type: "module" });
      const answered = new Promise<MessageEvent>((resolve, reject) => {
        worker.onmessage = resolve;
        worker.onerror = (e) => reject(new Error(e.message));
      });
      worker.postMessage({ id: 1, call: "files", args: given });
      const { data } = await answered;
      worker.terminate();
      if (!data.ok) return String(data.message);
      if (!data.value.ok) return String(data.value.message);
      const made = data.value.value as readonly {
        readonly path: string;
        readonly bytes: Uint8Array<ArrayBuffer>;
      }[];
      const hashed = await Promise.all(
        made.map(async (f) => {
          const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", f.bytes));
          return [f.path, Array.from(hash, (b) => b.toString(16).padStart(2, "0")).join("")];
        }),
      );
      return Object.fromEntries(hashed) as Record<string, string>;
    },
    [workerPath(), args] as const,
  );
