import { readdirSync, statSync } from "node:fs";
import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
} from "playwright-core";
import { afterAll, afterEach, beforeAll, expect } from "vitest";
import { ADDRESS, servePage } from "../../src/cli/servePage.ts";
import { chromiumPath } from "../tools/chromium.mjs";

// The page in a real browser, as it is built. Each file of tests shares one browser and one server; each test
// has a profile of its own. What the page may never do fails whichever test it happens in.

export const BUILT = join("dist", "page");

/** Sandboxes need rights that a container lacks; the rest would ask the network for things of the browser's own. */
const ARGS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking"];

const newest = (folder: string): number =>
  Math.max(
    ...readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((e) => e.isFile())
      .map((e) => statSync(join(e.parentPath, e.name)).mtimeMs),
  );

/** A page that is not built, or not from this source, would be tested for nothing. */
function mustBeBuilt(): void {
  const built = statSync(join(BUILT, "sw.js"), { throwIfNoEntry: false })?.mtimeMs ?? 0;
  if (built < newest("src"))
    throw new Error(
      "dist/page is not built from this source. To mend: run npm run build (npm test does it first)",
    );
}

export type Opened = {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Another tab of the same profile, watched like the first. */
  readonly tab: () => Promise<Page>;
  /** What the page did that it must not: taken by a test that plants it. */
  readonly takeFaults: () => readonly string[];
};

export type Bench = {
  /** The page's address. */
  readonly url: () => string;
  readonly open: (options?: BrowserContextOptions) => Promise<Opened>;
  /** Ends the server: from here on there is no network. */
  readonly cutOff: () => Promise<void>;
};

const closed = (server: Server): Promise<void> =>
  new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });

/** Notes what the page must never do: say an error, break its policy, ask another origin. */
function watch(context: BrowserContext, origin: string, faults: string[]): void {
  context.on("weberror", (e) => faults.push(`error: ${e.error().stack ?? e.error().message}`));
  context.on("console", (m) => {
    if (m.type() === "error" || m.type() === "warning") faults.push(`console: ${m.text()}`);
  });
  context.on("request", (r) => {
    const url = r.url();
    if (!url.startsWith(`${origin}/`) && !/^(blob|data):/.test(url)) faults.push(`another origin: ${url}`);
  });
}

/** Serves and opens the page for the tests of one file. `folder`: another than the built one. */
export function bench(folder: string = BUILT): Bench {
  let browser: Browser | undefined;
  let server: Server | undefined;
  let contexts: BrowserContext[] = [];
  let faults: string[] = [];
  let origin = "";

  beforeAll(async () => {
    mustBeBuilt();
    const executablePath = chromiumPath();
    if (executablePath === undefined)
      throw new Error("There is no Chromium. To mend: run npm test, which says what to install");
    [server, browser] = await Promise.all([
      servePage(folder, 0),
      chromium.launch({ executablePath, args: ARGS }),
    ]);
    origin = `http://${ADDRESS}:${(server.address() as AddressInfo).port}`;
  });
  afterEach(async () => {
    const seen = faults;
    await Promise.all(contexts.map((c) => c.close()));
    [contexts, faults] = [[], []];
    expect(seen).toEqual([]);
  });
  afterAll(async () => {
    await browser?.close();
    if (server) await closed(server);
  });

  return {
    url: () => `${origin}/`,
    open: async (options = {}) => {
      const context = await browser!.newContext({ viewport: { width: 1280, height: 900 }, ...options });
      contexts.push(context);
      watch(context, origin, faults);
      const tab = async (): Promise<Page> => {
        const page = await context.newPage();
        await page.goto(`${origin}/`);
        return page;
      };
      const takeFaults = (): readonly string[] => faults.splice(0);
      return { page: await tab(), context, tab, takeFaults };
    },
    cutOff: async () => {
      if (server) await closed(server);
      server = undefined;
    },
  };
}
