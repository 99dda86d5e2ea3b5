// Takes the README's picture of the page: a demo order opened in the built page, in a real browser.
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { ADDRESS, servePage } from "../../dist/cli/servePage.js";
import { chromiumPath } from "./chromium.mjs";

export const SIZE = { width: 1280, height: 860 };
const ORDER = fileURLToPath(new URL("../../templates/juniper-headstall.yaml", import.meta.url));

/** The page with an order open, as PNG bytes. */
export async function screenshot() {
  const server = await servePage(fileURLToPath(new URL("../../dist/page", import.meta.url)), 0);
  const browser = await chromium.launch({
    executablePath: chromiumPath(),
    args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking"],
  });
  try {
    const page = await browser.newPage({ viewport: SIZE, colorScheme: "light", reducedMotion: "reduce" });
    await page.goto(`http://${ADDRESS}:${server.address().port}/`);
    await page.locator("input[type=file]").first().setInputFiles(ORDER);
    await page.getByText("Saved on this device.").waitFor();
    await page.locator(".leather-pane svg, .bench-leather svg").first().waitFor();
    return await page.screenshot();
  } finally {
    await browser.close();
    server.close();
    server.closeAllConnections();
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const path = "fixtures/pictures/page.png";
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, await screenshot());
  console.log(`wrote ${path}`);
}
