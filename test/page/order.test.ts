import axe from "axe-core";
import type { Locator, Page } from "playwright-core";
import { beforeEach, describe, expect, test } from "vitest";
import { openOrderFile, orderText } from "./orders.ts";
import { bench } from "./support.ts";

// The order pane in a real browser.

const { open } = bench();
const JUNIPER = orderText("juniper-headstall");
const POLL = "measures.over-poll";

let page: Page;
beforeEach(async () => {
  ({ page } = await open());
  await openOrderFile(page, "juniper.yaml", JUNIPER);
});

const value = (key: string): Locator => page.locator(`[id="value-${key}"]`);
const fault = (key: string): Locator => page.locator(`[id="fault-${key}"]`);
const button = (name: string | RegExp): Locator => page.locator(".order-pane").getByRole("button", { name });
const orderNow = (): Promise<string> => page.locator("#order-text").inputValue();
const sees = (probe: () => Promise<unknown>): ReturnType<typeof expect.poll> =>
  expect.poll(probe, { timeout: 20_000 });
const focusedId = (): Promise<string | undefined> => page.evaluate(() => document.activeElement?.id);

test("a fraction is typed as people type it, and the sizes follow", async () => {
  await value(POLL).fill("42 1/2");
  await value(POLL).press("Enter");
  await sees(() => page.locator(".moved").textContent()).toMatch(/over poll: 41 1\/2 in.* → 42 1\/2 in/);
  expect(await orderNow()).toContain("over-poll: 42 1/2 ");
  expect(await orderNow()).toContain("# bit ring to bit ring, over the poll");
});

test("a wrong value keeps its text and has its fault beside it and in the list; nothing else is lost", async () => {
  await value(POLL).fill("forty");
  await value(POLL).press("Tab");
  await sees(() => fault(POLL).textContent()).toContain("forty");
  expect(await value(POLL).inputValue()).toBe("forty");
  expect(await value(POLL).getAttribute("aria-invalid")).toBe("true");
  expect(await value(POLL).getAttribute("aria-describedby")).toContain(`fault-${POLL}`);
  expect(await page.locator(".said").count()).toBeGreaterThan(10);

  await value("measures.ear-base").fill("8 3/4");
  await value("measures.ear-base").press("Enter");
  await sees(orderNow).toContain("ear-base: 8 3/4");
  expect(await value(POLL).inputValue()).toBe("forty");

  await page.locator(".faults button").first().click();
  await sees(focusedId).toBe(`value-${POLL}`);
  await value(POLL).fill("41");
  await value(POLL).press("Enter");
  await sees(() => page.locator(".faults button").count()).toBe(0);
  expect(await value("measures.ear-base").inputValue()).toBe("8 3/4");
});

test("what can't stand in an order stays in its field with the reason", async () => {
  await value(POLL).fill("41\u0007");
  await value(POLL).press("Enter");
  await sees(() => fault(POLL).textContent()).toMatch(/can.t be written/);
  expect(await value(POLL).inputValue()).toBe("41\u0007");
  expect(await orderNow()).toBe(JUNIPER);
});

test("Escape gives back what stood there", async () => {
  await value(POLL).fill("12");
  await value(POLL).press("Escape");
  await sees(() => value(POLL).inputValue()).toBe("41 1/2");
  await sees(orderNow).toBe(JUNIPER);
  await value(POLL).fill("");
  await value(POLL).press("Escape");
  await sees(() => value(POLL).inputValue()).toBe("41 1/2");
});

test("undo and redo, by button and by keys; a field's typing is one step", async () => {
  await value(POLL).pressSequentially("0");
  await value(POLL).fill("");
  await value(POLL).pressSequentially("42 1/2");
  await value(POLL).press("Enter");
  await sees(orderNow).toContain("over-poll: 42 1/2 ");
  await button("Undo").click();
  await sees(orderNow).toBe(JUNIPER);
  await sees(() => value(POLL).inputValue()).toBe("41 1/2");
  await page.locator(".order-pane h2").click();
  await page.keyboard.press("Control+Shift+Z");
  await sees(() => value(POLL).inputValue()).toBe("42 1/2");
  await page.locator(".order-pane h2").click();
  await page.keyboard.press("Control+z");
  await sees(orderNow).toBe(JUNIPER);
  await page.keyboard.press("Control+y");
  await sees(orderNow).toContain("over-poll: 42 1/2 ");
  expect(await button("Redo").isDisabled()).toBe(true);
});

test("a choice is made at once, and goes back to its default", async () => {
  const body = value("pieces.cheek.body");
  await body.selectOption("tapered");
  await sees(orderNow).toContain("body: tapered");
  await body.selectOption("back to the default");
  await sees(orderNow).not.toContain("body:");
  expect(await body.evaluate((s) => s.classList.contains("value-quiet"))).toBe(true);
  await button("Undo").click();
  await sees(() => body.inputValue()).toBe("tapered");
});

test("a set value goes back to its default by emptying it, or by the note's button", async () => {
  await value("straps.pitch").fill("");
  await value("straps.pitch").press("Enter");
  await sees(orderNow).not.toContain("pitch: 3/4");
  await value("straps.holes").focus();
  await button("Back to the default").click();
  await sees(orderNow).not.toContain("holes:");
  await sees(focusedId).toBe("value-straps.holes");
});

test("the units switch, and no size changes", async () => {
  await value(POLL).waitFor();
  await page.getByRole("radio", { name: "mm" }).click();
  await sees(orderNow).toContain("units: mm");
  expect(await orderNow()).toContain("over-poll: 41 1/2 in");
  // What had its unit already is not given another one; what had none reads "41 1/2 in" now.
  await sees(() =>
    page
      .locator(".said", { has: value(POLL) })
      .locator(".unit")
      .count(),
  ).toBe(0);
  expect(await page.locator(".moved").count()).toBe(0);
  await sees(() => page.locator(".faults button").count()).toBe(0);
  await button("Undo").click();
  await sees(orderNow).toBe(JUNIPER);
});

describe("reading", () => {
  test("the table has each value once, and those of the sentences stand in it the same", async () => {
    const read = (): Promise<Record<string, string>> =>
      page
        .locator(".value")
        .evaluateAll((all) => Object.fromEntries(all.map((e) => [e.id, (e as HTMLInputElement).value])));
    const sentences = await read();
    await page.getByRole("radio", { name: "table" }).check();
    await page.locator(".order-pane table").first().waitFor();
    const table = await read();
    expect(Object.keys(sentences).length).toBeGreaterThan(30);
    expect(table).toMatchObject(sentences);
    expect(await page.locator(".value").count()).toBe(Object.keys(table).length);

    const rows = page.locator(".order-pane tbody tr");
    const all = await rows.count();
    await page.locator("#sought").fill("POLL over");
    await sees(() => rows.count()).toBeLessThan(all / 4);
    await value(POLL).fill("43");
    await value(POLL).press("Enter");
    await page.getByRole("radio", { name: "sentences" }).check();
    await sees(() => value(POLL).inputValue()).toBe("43");
  });

  test("every value of the sentences is reached by the Tab key alone, in their order", async () => {
    const ids = await page.locator(".told .value").evaluateAll((all) => all.map((e) => e.id));
    await value(ids[0]?.slice("value-".length) ?? "").focus();
    const reached: (string | undefined)[] = [];
    for (let k = 0; k < ids.length; k++) {
      reached.push(await focusedId());
      await page.keyboard.press("Tab");
    }
    expect(reached).toEqual(ids);
  });

  test("the note tells of the value; F2 steps into it, Escape back", async () => {
    await value(POLL).focus();
    const note = page.locator(".note");
    expect(await note.textContent()).toMatch(/Allowed\s*\d.* to /);
    expect(await note.textContent()).toContain("Moves with it");
    await page.keyboard.press("F2");
    expect(await focusedId()).toBe(`note-${POLL}`);
    await page.keyboard.press("Tab");
    await page.keyboard.press("Escape");
    await sees(focusedId).toBe(`value-${POLL}`);
  });

  test("a size that moves with a value leads to how it came about and what it follows from", async () => {
    await value(POLL).focus();
    await page
      .locator(".note")
      .getByRole("button", { name: /crown cut length/ })
      .first()
      .click();
    const note = page.locator(".note");
    await sees(() => note.textContent()).toContain("How it came about");
    expect(await note.locator("ol li").count()).toBeGreaterThan(1);
    expect(await value(POLL).evaluate((e) => e.classList.contains("value-marked"))).toBe(true);
    await note.getByRole("button", { name: /^measured over poll/ }).click();
    await sees(focusedId).toBe(`value-${POLL}`);
  });
});

test("a finding is picked, and leads to its value", async () => {
  // One by its words: what the checks find comes a moment later, and may stand before it.
  const finding = page
    .locator(".finding")
    .filter({ hasText: "a tape on the skin" })
    .filter({ has: page.getByRole("button", { name: /^Go to/ }) })
    .first();
  await finding.waitFor();
  const pick = finding.locator(".finding-button");
  await pick.click();
  await sees(() => pick.getAttribute("aria-pressed")).toBe("true");
  await sees(() => page.locator(".value-marked").count()).toBeGreaterThan(0);
  const marked = await page.locator(".value-marked").first().getAttribute("id");
  await finding
    .getByRole("button", { name: /^Go to/ })
    .first()
    .click();
  await sees(focusedId).toBe(marked);
});

test("the order's own text can be written; a broken one is told of with its line, and is not lost", async () => {
  await page.locator(".raw summary").click();
  const text = page.locator("#order-text");
  await text.fill(JUNIPER.replace("ear-base: 9", "ear-base: 8 1/4"));
  await sees(() => value("measures.ear-base").inputValue()).toBe("8 1/4");
  const broken = JUNIPER.replace("units: in", "units: [in");
  await text.fill(broken);
  await page.locator(".faults button").first().waitFor();
  await page.locator(".faults button").first().click();
  await sees(focusedId).toBe("order-text");
  expect(await text.inputValue()).toBe(broken);
  expect(await page.locator(".said").count()).toBeGreaterThan(10);
});

describe.each(["light", "dark"] as const)("in %s", (colorScheme) => {
  test.each(["sentences", "table"])("a reader of the %s finds nothing in the way", async (reading) => {
    await page.emulateMedia({ colorScheme });
    await page.getByRole("radio", { name: reading }).check();
    await value(POLL).fill("forty");
    await value("straps.pitch").focus();
    await fault(POLL).waitFor();
    await page.locator(".raw summary").click();
    await page.evaluate(axe.source);
    const { violations } = await page.evaluate(() =>
      (globalThis as unknown as { axe: typeof axe }).axe.run(".order-pane"),
    );
    expect(violations.map((v) => [v.id, v.nodes.map((n) => n.html)])).toEqual([]);
  });
});

test("while the text is broken, no value is lost, and it is said why none can be set", async () => {
  await page.locator(".raw summary").click();
  const broken = JUNIPER.replace("units: in", "units: [in");
  await page.locator("#order-text").fill(broken);
  await page.locator(".faults button").first().waitFor();
  await value("straps.pitch").fill("7/8");
  await value("straps.pitch").press("Enter");
  await sees(() => fault("straps.pitch").textContent()).toContain("mended first");
  expect(await value("straps.pitch").inputValue()).toBe("7/8");
  expect(await orderNow()).toBe(broken);
});
