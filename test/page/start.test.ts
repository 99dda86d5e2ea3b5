import axe from "axe-core";
import type { Locator, Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { articles } from "../../src/job.ts";
import { openOrderFile, orderText } from "./orders.ts";
import { bench } from "./support.ts";

// The first page in a real browser: begin an order, open one, go on with one.

const { open } = bench();
const JUNIPER = orderText("juniper-headstall");
const WREN = orderText("wren-flap-purse");
const POLL = '[id="value-measures.over-poll"]';

const sees = (probe: () => Promise<unknown>): ReturnType<typeof expect.poll> =>
  expect.poll(probe, { timeout: 30_000 });
const button = (page: Page, name: string | RegExp): Locator => page.getByRole("button", { name });
const notice = (page: Page): Promise<string | null> => page.locator(".notice").textContent();
const kept = (page: Page): Locator => page.locator(".kept-orders li");
const orderNow = (page: Page): Promise<string> => page.locator("#order-text").inputValue();
const back = (page: Page): Promise<void> => button(page, "Back to all orders").click();
const file = (name: string, content: string | Uint8Array) => ({
  name,
  mimeType: "application/yaml",
  buffer: Buffer.from(content),
});

test("a new order from nothing: every article can be begun, each under a name of its own", async () => {
  const { page } = await open();
  await button(page, /^Bag$/).waitFor();
  const choices = page.getByRole("region", { name: "Begin a new order" });
  expect((await choices.getByRole("button").allInnerTexts()).map((t) => t.toLowerCase())).toEqual(
    articles.map((a) => a.name),
  );
  for (const { means } of articles) expect(await choices.textContent()).toContain(means);
  await button(page, /^Strap$/).click();
  await page.locator(".order-pane .said").first().waitFor();
  expect(await page.locator(".bench-head h1").textContent()).toBe("new-strap.yaml");
  await sees(() => notice(page)).toContain("Saved on this device");
  // Changed, it is another order than the next one that is begun.
  await page.locator("#order-text").evaluate((e) => e.closest("details")?.setAttribute("open", ""));
  await page.locator("#order-text").fill(`${await orderNow(page)}# mine\n`);
  await back(page);
  await button(page, /^Strap$/).click();
  await page.locator(".order-pane .said").first().waitFor();
  expect(await page.locator(".bench-head h1").textContent()).toBe("new-strap-2.yaml");
  await back(page);
  await sees(() => kept(page).count()).toBe(2);
});

test("an opened file is there after the page is loaded anew, with its change and its undo", async () => {
  const { page } = await open();
  await openOrderFile(page, "juniper.yaml", JUNIPER);
  await page.locator(POLL).fill("42 1/2");
  await page.locator(POLL).press("Enter");
  await sees(() => orderNow(page)).toContain("over-poll: 42 1/2 ");
  await sees(() => notice(page)).toContain("Saved on this device");
  await page.reload();
  await sees(() => kept(page).allInnerTexts()).toHaveLength(1);
  expect(await kept(page).textContent()).toMatch(
    /^Juniper, bay mare, 15.1 handsone-ear headstall, juniper\.yaml, changed 20\d\d-/,
  );
  await button(page, "Open juniper.yaml").click();
  await sees(() => orderNow(page)).toContain("over-poll: 42 1/2 ");
  await button(page, "Undo").click();
  await sees(() => orderNow(page)).toBe(JUNIPER);
});

test("deleting asks first", async () => {
  const { page } = await open();
  await openOrderFile(page, "juniper.yaml", JUNIPER);
  await sees(() => notice(page)).toContain("Saved on this device");
  await back(page);
  await button(page, "Delete … juniper.yaml").click();
  await sees(() => page.evaluate(() => document.activeElement?.textContent)).toBe("No, keep it");
  await page.keyboard.press("Enter");
  await sees(() => page.evaluate(() => document.activeElement?.textContent)).toContain("Delete");
  expect(await kept(page).count()).toBe(1);
  await page.keyboard.press("Enter");
  await button(page, "Yes, delete it").click();
  await sees(() => kept(page).count()).toBe(0);
  await page.reload();
  await page.getByText("None yet.").waitFor();
});

test("several files are kept, a shop file among them becomes yours, and prices what names one", async () => {
  const { page } = await open();
  const input = page.locator("#order-files");
  await input.setInputFiles([
    file("juniper.yaml", JUNIPER),
    file("wren.yml", WREN),
    file("shop.yaml", orderText("shop")),
  ]);
  await sees(() => notice(page)).toBe("shop.yaml is your shop file now. 2 orders brought in.");
  await sees(() => kept(page).count()).toBe(2);
  expect(await page.getByRole("region", { name: "Your shop file" }).textContent()).toContain(
    "Fernhollow Saddlery, shop.yaml",
  );
  await button(page, "Open wren.yaml").click();
  await page.getByText("Priced by Fernhollow Saddlery (shop.yaml).").waitFor();
  await back(page);
  await button(page, "Take away shop.yaml").click();
  await page.getByText("None is kept here.").waitFor();
  await page.reload();
  await page.getByText("None is kept here.").waitFor();
});

test("a file dropped on the page is opened", async () => {
  const { page } = await open();
  const data = await page.evaluateHandle((text) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], "dropped.yaml"));
    return transfer;
  }, JUNIPER);
  await page.dispatchEvent(".start-page", "dragover", { dataTransfer: data });
  await page.dispatchEvent(".start-page", "drop", { dataTransfer: data });
  await page.locator(".order-pane .said").first().waitFor();
  expect(await page.locator(".bench-head h1").textContent()).toBe("dropped.yaml");
});

test("demo orders open as copies, priced by their own shop", async () => {
  const { page } = await open();
  await button(page, /^Wren/).click();
  await page.getByText("Priced by Fernhollow Saddlery (shop.yaml).").waitFor();
  expect(await orderNow(page)).toBe(WREN);
});

describe("what can't be an order is refused in words", () => {
  test.each([
    ["large.yaml", new Uint8Array(1_000_001).fill(35), /larger than 1 MB/],
    ["latin.yaml", Uint8Array.of(0x66, 0x6f, 0x72, 0x3a, 0x20, 0xfc), /not a text file in UTF-8/],
    ["broken.zip", Uint8Array.of(0x50, 0x4b, 3, 4, 0), /can't be brought in/],
  ] as const)("%s", async (name, bytes, words) => {
    const { page } = await open();
    await page.locator("#order-files").setInputFiles(file(name, bytes));
    await sees(() => notice(page)).toMatch(words);
    expect(await page.locator(".order-pane").count()).toBe(0);
  });
});

const MARKUP = `<img src=x onerror='window.led=1'><script>window.led=1</script>\${window.led=1}`;
const quoted = JSON.stringify(MARKUP);
const HOSTILE = JUNIPER.replace(/^for:.*$/m, `for: ${quoted}`)
  .replace(/^shop:.*$/m, `shop: ${quoted}`)
  .concat(`finish: { dye: ${quoted}, thread: ${quoted} }\n`);

test.each([
  ["an order that can be read", HOSTILE],
  [
    "one with markup for values",
    HOSTILE.replace(/^article:.*$/m, `article: ${quoted}`).replace("41 1/2", quoted),
  ],
  ["one with markup for names", `${quoted}: 1\n${HOSTILE}`],
])("markup in %s does nothing and is shown as it stands", async (_, text) => {
  const { page } = await open();
  await openOrderFile(page, "<img src=x onerror=window.led=1>.yaml", text);
  await sees(() => page.locator(".order-pane").innerHTML()).toContain("&lt;");
  await back(page);
  await sees(() => kept(page).textContent()).toContain(MARKUP);
  expect(await page.locator("img, #page script").count()).toBe(0);
  expect(await page.evaluate(() => "led" in window)).toBe(false);
});

/** What a checker of WCAG finds, and what is smaller than a finger. */
async function found(page: Page, part: string): Promise<readonly unknown[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async (selector) => {
    const { violations } = await (globalThis as unknown as { axe: typeof axe }).axe.run(selector);
    const touched = `:is(${selector}) :is(button, select, a, input:not([type=checkbox]), label:has([type=checkbox]))`;
    const small = [...document.querySelectorAll(touched)].filter((e) => {
      const { width, height } = e.getBoundingClientRect();
      return width > 0 && Math.min(width, height) < 43.5;
    });
    const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
    return [
      ...violations.map((v) => [v.id, v.nodes.map((n) => n.html)]),
      ...small.map((e) => e.outerHTML),
      ...(wide > 0 ? [`${wide} px too wide`] : []),
    ];
  }, part);
}

test.each(["light", "dark"] as const)(
  "all can be read and reached, also on a narrow screen: %s",
  async (colorScheme) => {
    const { page } = await open({ colorScheme, viewport: { width: 390, height: 800 } });
    await openOrderFile(page, "juniper.yaml", JUNIPER.replace("41 1/2", "forty"));
    await sees(() => page.locator(".print-stop").count()).toBe(1);
    expect(await found(page, ".print-pane")).toEqual([]);
    await back(page);
    await button(page, /^Bag$/).waitFor();
    await button(page, "Delete … juniper.yaml").click();
    expect(await found(page, "body")).toEqual([]);
  },
);
