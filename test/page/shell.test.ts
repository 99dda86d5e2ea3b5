import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { BUILT, bench } from "./support.ts";

const { open, url } = bench();

test("the page opens with a title, a language, one main part and a place for notices", async () => {
  const { page } = await open();
  expect(await page.title()).toBe("Whittaw");
  expect(await page.getAttribute("html", "lang")).toBe("en");
  expect(await page.getByRole("main").count()).toBe(1);
  expect(await page.locator('[role="status"][aria-live="polite"]').count()).toBeGreaterThan(0);
});

test("its policy lets in neither scripts nor styles written into the page, nor another origin", async () => {
  const { page, takeFaults } = await open();
  const html = readFileSync(join(BUILT, "index.html"), "utf8");
  // As on a host that sends no headers: the page's own policy alone.
  await page.route(url(), (route) => route.fulfill({ contentType: "text/html", body: html }));
  await page.evaluate(() => navigator.serviceWorker.getRegistration().then((r) => r?.unregister()));
  await page.reload();
  const done = await page.evaluate(async () => {
    const broken: string[] = [];
    document.addEventListener("securitypolicyviolation", (e) => broken.push(e.effectiveDirective));
    const script = document.createElement("script");
    script.textContent = "document.title = 'led astray'";
    document.head.append(script);
    const style = document.createElement("style");
    style.textContent = "body { display: none }";
    document.head.append(style);
    await fetch("https://example.org/").catch(() => undefined);
    await new Promise((resolve) => setTimeout(resolve, 100));
    return { broken, title: document.title, display: getComputedStyle(document.body).display };
  });
  const told = takeFaults().join("\n");
  for (const what of ["inline script", "inline style", "example.org"]) expect(told).toContain(what);
  expect(done).toEqual({
    broken: expect.arrayContaining(["script-src-elem", "style-src-elem", "connect-src"]),
    title: "Whittaw",
    display: "block",
  });
});
