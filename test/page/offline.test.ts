import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, expect, test } from "vitest";
import { BUILT, bench } from "./support.ts";
import { filesInBrowser } from "./worker.ts";

// A copy, so that a new version can be laid in its place.
const folder = mkdtempSync(join(tmpdir(), "whittaw-offline-"));
cpSync(BUILT, folder, { recursive: true });
afterAll(() => rmSync(folder, { recursive: true }));

const { open, cutOff } = bench(folder);

/** Until every file is kept on the device. */
const kept = (page: Page): Promise<unknown> =>
  page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    if (active?.state === "activated") return;
    await new Promise((resolve) => active?.addEventListener("statechange", resolve, { once: true }));
  });

function replaceIn(name: string, from: string | RegExp, to: string): void {
  const before = readFileSync(join(folder, name), "utf8");
  const after = before.replace(from, to);
  if (after === before) throw new Error(`${name} holds no ${from}`);
  writeFileSync(join(folder, name), after);
}

const DESCRIPTION = 'meta[name="description"]';
const described = (page: Page): Promise<string | null> => page.getAttribute(DESCRIPTION, "content");

test("a new version is fetched whole beside the old one, and is there when the page is next started", async () => {
  const { page, tab } = await open();
  await kept(page);
  const before = await described(page);
  const names = await page.evaluate(() => caches.keys());
  expect(names).toHaveLength(1);

  replaceIn("index.html", /content="Measures in,/, 'content="Newer. Measures in,');
  replaceIn("sw.js", /"[0-9a-f]{64}"/, `"${"0".repeat(64)}"`);
  // Looking for a new version is the browser's own doing, at each visit.
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update();
    while (!registration.waiting) await new Promise((resolve) => setTimeout(resolve, 20));
  });
  await page.reload();
  expect(await described(page)).toBe(before);

  await page.close();
  const next = await tab();
  expect(await described(next)).toMatch(/^Newer/);
  await kept(next);
  expect(await next.evaluate(() => caches.keys())).toEqual([expect.stringContaining("0".repeat(64))]);
});

test("after the first visit the page opens and makes files without a network", async () => {
  const { page } = await open();
  await kept(page);
  await cutOff();
  await page.reload();
  expect(await page.title()).toContain("Whittaw");
  expect(await page.locator("#page > *").count()).toBeGreaterThan(0);
  const text = readFileSync(join("templates", "heron-bag-strap.yaml"), "utf8");
  const made = await filesInBrowser(page, [text, "heron.yaml", undefined, "template", {}]);
  expect(Object.keys(made)).toEqual(["template-letter.pdf"]);
});
