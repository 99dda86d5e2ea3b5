import { expect, test } from "vitest";
import { openOrderFile, orderText } from "./orders.ts";
import { bench } from "./support.ts";

const { open } = bench();

/** Narrow screens, and wide ones at 200 %: a browser zoomed in has so many fewer points across. */
const SCREENS = [
  ["a phone", 390, 844],
  ["a tablet upright", 820, 1180],
  ["a desk at 200 %", 640, 450],
] as const;

const HOSTILE = "</textarea><img src=x onerror=document.title='run'><script>document.title='run'</script>";

test("an order whose every text is markup runs nothing and stands there as it was written", async () => {
  const { page } = await open();
  const text = orderText("juniper-headstall")
    .replace(/^for:.*$/m, `for: "${HOSTILE}"`)
    .replace(/^shop:.*$/m, "");
  const more = `\nfinish: { dye: "${HOSTILE.slice(0, 50)}", thread: "${HOSTILE.slice(11, 60)}" }\ndie: { owner: "${HOSTILE.slice(0, 50)}" }\n`;
  await openOrderFile(page, "juniper.yaml", text + more);
  for (const name of ["table", "sentences"]) await page.getByRole("radio", { name }).check();
  for (const way of ["folded", "on paper", "flat"]) await page.getByRole("radio", { name: way }).check();
  expect(await page.title()).not.toBe("run");
  expect(await page.locator("img[src=x]").count()).toBe(0);
  await expect
    .poll(() => page.locator("h1, h2").allInnerTexts())
    .toContainEqual(expect.stringContaining("onerror"));
});

test.each(SCREENS)(
  "on %s nothing is cut off at the side and every part is there",
  async (_, width, height) => {
    const { page } = await open({ viewport: { width, height } });
    await openOrderFile(page, "juniper.yaml", orderText("juniper-headstall"));
    for (const name of ["sentences", "table"]) {
      await page.getByRole("radio", { name }).check();
      const sticksOut = await page.evaluate(() => {
        const { scrollWidth, clientWidth } = document.documentElement;
        return scrollWidth - clientWidth;
      });
      expect(sticksOut, `${name}: points beyond the screen`).toBeLessThanOrEqual(0);
    }
    for (const way of ["folded", "on paper", "life size", "flat"])
      await page.getByRole("radio", { name: way }).check();
    await page
      .getByRole("button", { name: /template/i })
      .first()
      .scrollIntoViewIfNeeded();
    const box = await page
      .getByRole("button", { name: /template/i })
      .first()
      .boundingBox();
    expect(box!.x).toBeGreaterThanOrEqual(0);
    expect(box!.x + box!.width).toBeLessThanOrEqual(width);
    expect(box!.height).toBeGreaterThanOrEqual(24);
  },
);
