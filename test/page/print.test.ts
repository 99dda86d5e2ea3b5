import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { unzipSync } from "fflate";
import type { Locator, Page } from "playwright-core";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { openOrderFile, orderText } from "./orders.ts";
import { bench } from "./support.ts";

// The printing in a real browser: paper, test square, files.

const { open } = bench();
// Without prices: what the command line says of a shop file that it does not find is its own.
const JUNIPER = orderText("juniper-headstall").replace(/^shop:.*\n/m, "");
const POLL = '[id="value-measures.over-poll"]';
const MAIN = join("dist", "cli", "main.js");
const out = mkdtempSync(join(tmpdir(), "whittaw-print-"));
afterAll(() => rmSync(out, { recursive: true }));

let page: Page;
beforeEach(async () => {
  ({ page } = await open());
  await openOrderFile(page, "juniper.yaml", JUNIPER);
});

const sees = (probe: () => Promise<unknown>): ReturnType<typeof expect.poll> =>
  expect.poll(probe, { timeout: 60_000 });
const button = (name: string | RegExp): Locator => page.locator(".print-pane").getByRole("button", { name });
const notice = (): Promise<string | null> => page.locator(".notice").textContent();
const count = (): Promise<string | null> => page.locator(".print-pane .print-count").textContent();

async function downloaded(name: string | RegExp): Promise<{ name: string; bytes: Buffer }> {
  const [got] = await Promise.all([page.waitForEvent("download"), button(name).click()]);
  const bytes = readFileSync(await got.path());
  await sees(notice).toBe(`Saved as ${got.suggestedFilename()}.`);
  return { name: got.suggestedFilename(), bytes };
}

function byCommand(...words: readonly string[]): string {
  const root = mkdtempSync(join(out, "run-"));
  const order = join(root, "juniper.yaml");
  writeFileSync(order, JUNIPER);
  const made = spawnSync(process.execPath, [MAIN, words[0]!, order, ...words.slice(1), "--out", root], {
    encoding: "utf8",
  });
  if (made.status !== 0) throw new Error(made.stderr);
  return join(root, "juniper");
}

test("the template, the pieces and the rest are the command line's, under the order's name", async () => {
  const folder = byCommand("make");
  const template = await downloaded("Save the template (PDF)");
  expect(template.name).toBe("juniper-template-letter.pdf");
  expect(template.bytes.equals(readFileSync(join(folder, "template-letter.pdf")))).toBe(true);
  const square = await downloaded("Save the test square (PDF)");
  expect(square.name).toBe("juniper-printer-check-letter.pdf");
  const sheet = await downloaded("Bench sheet (PDF)");
  expect(sheet.name).toBe("juniper-bench-sheet.pdf");
  expect(sheet.bytes.subarray(0, 5).toString()).toBe("%PDF-");
  const job = await downloaded(/job\.json/);
  expect(job.name).toBe("juniper-job.json");
  expect(job.bytes.equals(readFileSync(join(folder, "job.json")))).toBe(true);

  const pieces = await downloaded("Pieces (SVG)");
  expect(pieces.name).toBe("juniper-pieces.zip");
  const names = readdirSync(join(folder, "pieces")).sort();
  const inside = unzipSync(pieces.bytes);
  expect(Object.keys(inside).sort()).toEqual(names.map((n) => `juniper/pieces/${n}`));
  for (const n of names)
    expect(Buffer.from(inside[`juniper/pieces/${n}`]!).equals(readFileSync(join(folder, "pieces", n)))).toBe(
      true,
    );

  await page.getByLabel("Crown", { exact: true }).check();
  expect((await downloaded("Pieces (SVG)")).name).toBe("juniper-crown.svg");
  const die = await downloaded("Dies, drawing and DXF");
  expect(die.name).toBe("juniper-die.zip");
  for (const path of Object.keys(unzipSync(die.bytes)))
    expect(path).toMatch(/^juniper\/die\/[a-z]+-crown-[^/]+$/);
});

test("all of it in one .zip, laid as the command line lays it, with the order itself", async () => {
  const folder = byCommand("make");
  const all = await downloaded("All of it in one .zip");
  expect(all.name).toBe("juniper.zip");
  const inside = unzipSync(all.bytes);
  const made = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((e) => e.isFile() && !e.name.startsWith("quote."))
    .map((e) => join(e.parentPath, e.name).slice(folder.length + 1));
  expect(Object.keys(inside)).toEqual(expect.arrayContaining(made.map((p) => `juniper/${p}`)));
  expect(Buffer.from(inside["juniper/juniper.yaml"]!).toString("utf8")).toBe(JUNIPER);
});

test("an order that is not right stops the printing in words, and can still be saved as a file", async () => {
  await page.locator(POLL).fill("forty");
  await page.locator(POLL).press("Enter");
  await sees(() => button("Save the template (PDF)").getAttribute("aria-disabled")).toBe("true");
  const why = await button("Save the template (PDF)").getAttribute("aria-describedby");
  expect(await page.locator(`#${why}`).textContent()).toContain("not right");
  await button("Save the template (PDF)").click({ force: true });
  await sees(notice).toContain("not right");
  const saved = await downloaded("The order itself (YAML)");
  expect(saved.bytes.toString("utf8")).toContain("over-poll: forty");
});

test("an error stops the printing, not the looking; the test square can be printed", async () => {
  // Handles on a purse whose flap covers them: every value is in its range, the whole can't be made.
  const text = orderText("wren-flap-purse").replace("carry: shoulder strap", "carry: handles");
  await page.getByRole("button", { name: "Back to all orders" }).click();
  await openOrderFile(page, "wren.yaml", text);
  await sees(() => button("Save the template (PDF)").getAttribute("aria-disabled")).toBe("true");
  expect(await page.locator(".leather .drawing path").count()).toBeGreaterThan(10);
  expect(await page.locator("#print-stop").textContent()).toContain("stops the printing, not the looking");
  expect((await downloaded("Save the test square (PDF)")).name).toBe("wren-printer-check-letter.pdf");
});

describe("paper and printer", () => {
  test("another paper is counted, printed and kept", async () => {
    await sees(count).toMatch(/The template is \d+ sheets; the first says/);
    await page.getByLabel("Paper in the printer").selectOption("a3");
    await sees(count).toMatch(/The template is \d+ sheets?/);
    expect((await downloaded("Save the test square (PDF)")).name).toBe("juniper-printer-check-a3.pdf");
    await page.reload();
    await page.getByRole("button", { name: "Open juniper.yaml" }).click();
    await sees(() => page.getByLabel("Paper in the printer").inputValue()).toBe("a3");
  });

  test("a roll has a width, and one that can't be is refused in the engine's words", async () => {
    await page.getByLabel("Paper in the printer").selectOption("a roll");
    expect((await downloaded("Save the test square (PDF)")).name).toMatch(/^juniper-printer-check-roll-?610/);
    await page.getByLabel(/Width of the roll/).fill("20 mm");
    await page.getByLabel(/Width of the roll/).press("Enter");
    await sees(() => page.locator(".print-pane").textContent()).toContain("a roll of 148 mm to 1600 mm");
  });

  test("bars that a scaled page gives are refused; true ones are kept for their paper alone", async () => {
    const [short, long] = [
      page.getByLabel("Bar along the short edge"),
      page.getByLabel("Bar along the long edge"),
    ];
    const fault = page.locator("#bars-fault");
    await button("Correct for these").click();
    await sees(() => fault.textContent()).toContain("both bars");
    // 180 and 240 mm on letter (README): 94 % of both is a fitted page.
    await short.fill("169.2");
    await long.fill("225.6");
    await button("Correct for these").click();
    await sees(() => fault.textContent()).toContain("the viewer has scaled the page");
    expect(await short.getAttribute("aria-invalid")).toBe("true");
    await short.fill("179.2");
    await long.fill("239.5");
    await button("Correct for these").click();
    await sees(() => page.locator(".print-pane").textContent()).toContain("The bars measured 179.2 x 239.5");
    const folder = byCommand("make", "--printed", "179.2x239.5");
    const template = await downloaded("Save the template (PDF)");
    expect(template.bytes.equals(readFileSync(join(folder, "template-letter.pdf")))).toBe(true);
    await page.getByLabel("Paper in the printer").selectOption("a4");
    await short.waitFor();
    await page.getByLabel("Paper in the printer").selectOption("letter");
    await button("Forget this").click();
    await short.waitFor();
  });
});

test.each([
  ["juniper-headstall", /One-ear headstall for Juniper/, "41 1/2", "Crown"],
  ["wren-flap-purse", /Bag for Wren/, "6 1/4", "Gusset"],
])("the page itself prints as one sheet: sentences and pieces of %s", async (name, title, value, piece) => {
  await page.getByRole("button", { name: "Back to all orders" }).click();
  await openOrderFile(page, "order.yaml", orderText(name));
  await page.locator(".leather .drawing path").first().waitFor({ state: "attached" });
  await page.locator(".finding").first().waitFor();
  const path = join(out, `${name}.pdf`);
  await page.pdf({ path, format: "A4" });
  const said = (tool: string, ...args: readonly string[]) =>
    spawnSync(tool, args, { encoding: "utf8" }).stdout;
  expect(said("pdfinfo", path)).toMatch(/Pages:\s+1\n/);
  const text = said("pdftotext", "-layout", path, "-");
  expect(text).toMatch(title);
  expect(text).toContain(value);
  expect(text).toContain(piece);
  expect(text).not.toContain("Save the template");
});
