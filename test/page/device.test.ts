import { readFileSync } from "node:fs";
import type { BrowserContext, Locator, Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { openOrderFile, orderText } from "./orders.ts";
import { bench } from "./support.ts";

// What this device keeps, in a real browser: carried to another one, shared by two tabs, and refused.

const { open, url } = bench();
const JUNIPER = orderText("juniper-headstall");
const POLL = '[id="value-measures.over-poll"]';
const EAR = '[id="value-measures.ear-base"]';

const sees = (probe: () => Promise<unknown>): ReturnType<typeof expect.poll> =>
  expect.poll(probe, { timeout: 30_000 });
const button = (page: Page, name: string | RegExp): Locator => page.getByRole("button", { name });
const notice = (page: Page): Promise<string | null> => page.locator(".notice").textContent();
const kept = (page: Page): Locator => page.locator(".kept-orders li");
const orderNow = (page: Page): Promise<string> => page.locator("#order-text").inputValue();
const back = (page: Page): Promise<void> => button(page, "Back to all orders").click();

async function set(page: Page, field: string, value: string): Promise<void> {
  await page.locator(field).fill(value);
  await page.locator(field).press("Enter");
}

async function downloaded(page: Page, by: Locator): Promise<{ name: string; bytes: Buffer }> {
  const [got] = await Promise.all([page.waitForEvent("download"), by.click()]);
  return { name: got.suggestedFilename(), bytes: readFileSync(await got.path()) };
}

/** Every order in the store, as it lies there, but for its place and when it was saved. */
const stored = (page: Page): Promise<readonly Record<string, unknown>[]> =>
  page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const asked = indexedDB.open("whittaw");
        asked.onerror = () => reject(asked.error);
        asked.onsuccess = () => {
          const all = asked.result.transaction("orders").objectStore("orders").getAll();
          all.onsuccess = () => {
            asked.result.close();
            resolve(all.result.map(({ id: _, revision: __, ...rest }) => rest));
          };
        };
      }),
  );

test("orders saved as a .zip and brought in on another device are the same, history and shop too", async () => {
  const { page } = await open();
  await page.locator("#shop-file").setInputFiles({
    name: "shop.yaml",
    mimeType: "application/yaml",
    buffer: Buffer.from(orderText("shop")),
  });
  await page.getByText("Fernhollow Saddlery, shop.yaml").waitFor();
  await openOrderFile(page, "juniper.yaml", JUNIPER);
  await set(page, POLL, "42");
  await sees(() => orderNow(page)).toContain("over-poll: 42 ");
  await set(page, EAR, "8 3/4");
  await sees(() => orderNow(page)).toContain("ear-base: 8 3/4");
  await button(page, "Undo").click();
  await sees(() => orderNow(page)).not.toContain("ear-base: 8 3/4");
  await back(page);
  await openOrderFile(page, "wren.yaml", orderText("wren-flap-purse"));
  await back(page);
  await sees(() => kept(page).count()).toBe(2);
  const zip = await downloaded(page, button(page, "Save all as a .zip"));
  expect(zip.name).toBe("whittaw-orders.zip");

  const there = await open();
  const input = there.page.locator("#order-files");
  const bring = () => input.setInputFiles({ name: zip.name, mimeType: "application/zip", buffer: zip.bytes });
  await bring();
  await sees(() => notice(there.page)).toBe("shop.yaml is your shop file now. 2 orders brought in.");
  const byFile = (a: Record<string, unknown>, b: Record<string, unknown>) =>
    String(a.file) < String(b.file) ? -1 : 1;
  const [before, after] = [await stored(page), await stored(there.page)];
  expect(before).toHaveLength(2);
  expect([...after].sort(byFile)).toEqual([...before].sort(byFile));
  await bring();
  await sees(() => notice(there.page)).toBe("2 orders were here already.");
  expect(await stored(there.page)).toHaveLength(2);

  await button(there.page, "Open juniper.yaml").click();
  await sees(() => orderNow(there.page)).toContain("over-poll: 42 ");
  await button(there.page, "Redo").click();
  await sees(() => orderNow(there.page)).toContain("ear-base: 8 3/4");
});

describe("two tabs", () => {
  async function twoTabs(): Promise<{ one: Page; two: Page; tab: () => Promise<Page> }> {
    const { page: one, tab } = await open();
    await openOrderFile(one, "juniper.yaml", JUNIPER);
    await sees(() => notice(one)).toContain("Saved on this device");
    const two = await tab();
    await button(two, "Open juniper.yaml").click();
    await two.locator(POLL).waitFor();
    return { one, two, tab };
  }

  test("that change the same order lose nothing, and say so", async () => {
    const { one, two, tab } = await twoTabs();
    await set(one, POLL, "42");
    await sees(() => notice(two)).toContain("changed or deleted in another tab");
    await set(two, EAR, "8 3/4");
    await sees(() => notice(two)).toContain("Both are kept: yours as juniper-2.yaml");
    await set(one, POLL, "43");
    await set(two, EAR, "8 1/2");
    const list = await tab();
    await sees(() => kept(list).count()).toBe(2);
    const texts = async () => Object.fromEntries((await stored(list)).map((o) => [o.file, o.text as string]));
    await sees(async () => (await texts())["juniper.yaml"]).toContain("over-poll: 43 ");
    await sees(async () => (await texts())["juniper-2.yaml"]).toContain("ear-base: 8 1/2");
    expect((await texts())["juniper.yaml"]).toContain("ear-base: 9 ");
    expect((await texts())["juniper-2.yaml"]).toContain("over-poll: 41 1/2 ");
  });

  test("of which one only looks make no copy", async () => {
    const { one, two } = await twoTabs();
    await set(one, POLL, "42");
    await sees(() => notice(one)).toContain("Saved on this device");
    await sees(() => notice(two)).toContain("changed or deleted in another tab");
    await set(one, POLL, "43");
    await sees(async () => (await stored(one))[0]?.text).toContain("over-poll: 43 ");
    expect(await stored(one)).toHaveLength(1);
  });

  test("the list of one follows what the other does", async () => {
    const { one, two } = await twoTabs();
    await back(two);
    await sees(() => kept(two).count()).toBe(1);
    await back(one);
    await openOrderFile(one, "wren.yaml", orderText("wren-flap-purse"));
    await sees(() => kept(two).count()).toBe(2);
    await button(two, "Delete … wren.yaml").click();
    await button(two, "Yes, delete it").click();
    await sees(() => kept(two).count()).toBe(1);
    await sees(() => notice(one)).toContain("changed or deleted in another tab");
    // What is deleted there and changed here is here.
    await set(one, '[id="value-measures.width"]', "8 1/2");
    await sees(() => kept(two).count()).toBe(2);
  });
});

/** A profile whose store fails, from the first load on. */
async function failing(script: () => void): Promise<{ page: Page; context: BrowserContext }> {
  const opened = await open();
  await opened.context.addInitScript(script);
  await opened.page.goto(url());
  return opened;
}

async function orderIsSafe(page: Page): Promise<void> {
  await set(page, POLL, "42");
  await sees(() => orderNow(page)).toContain("over-poll: 42 ");
  const { name, bytes } = await downloaded(page, button(page, "The order itself (YAML)"));
  expect(name).toBe("juniper.yaml");
  expect(bytes.toString("utf8")).toBe(await orderNow(page));
}

describe("a device that keeps nothing", () => {
  test("for want of room says so, and gives the order out as a file", async () => {
    const { page } = await failing(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException("full", "QuotaExceededError");
      };
    });
    await openOrderFile(page, "juniper.yaml", JUNIPER);
    await sees(() => notice(page)).toContain("no room left");
    await orderIsSafe(page);
  });

  test("whose room runs out as it is written says so too", async () => {
    const { page } = await failing(() => {
      const put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function (...args) {
        const request = put.apply(this, args);
        this.transaction.abort();
        return request;
      };
    });
    await openOrderFile(page, "juniper.yaml", JUNIPER);
    await sees(() => notice(page)).toContain("Not saved");
    await orderIsSafe(page);
  });

  test("because it is forbidden says so on the first page and at the bench", async () => {
    const { page } = await failing(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException("denied", "SecurityError");
      };
    });
    await page.getByRole("alert").getByText("keeps nothing here").waitFor();
    await openOrderFile(page, "juniper.yaml", JUNIPER);
    await sees(() => notice(page)).toContain("keeps nothing here");
    await orderIsSafe(page);
  });

  test("for it has no store at all", async () => {
    const { page } = await failing(() => {
      Object.defineProperty(globalThis, "indexedDB", { value: undefined });
    });
    await page.getByRole("alert").getByText("keeps nothing here").waitFor();
    await openOrderFile(page, "juniper.yaml", JUNIPER);
    await orderIsSafe(page);
  });
});
