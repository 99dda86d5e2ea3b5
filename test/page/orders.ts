import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";

// Orders as files, and how a person opens one on the page.

export const orderText = (name: string): string => readFileSync(`templates/${name}.yaml`, "utf8");

/** Opens an order file on the first page and waits until it is read. */
export async function openOrderFile(page: Page, file: string, text: string): Promise<void> {
  await page
    .locator('input[type="file"]')
    .first()
    .setInputFiles({ name: file, mimeType: "application/yaml", buffer: Buffer.from(text) });
  await page.locator(".order-pane .said, .order-pane .fault-button").first().waitFor();
}
