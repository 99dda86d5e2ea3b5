import { readFileSync } from "node:fs";
import { PNG } from "pngjs";
import { expect, test } from "vitest";
// @ts-expect-error a plain script without types
import { SIZE, screenshot } from "../tools/screenshot.mjs";

test("the README's picture of the page can be taken anew, and has its size", async () => {
  const taken = PNG.sync.read(Buffer.from((await screenshot()) as Uint8Array));
  const kept = PNG.sync.read(readFileSync("fixtures/pictures/page.png"));
  for (const { width, height } of [taken, kept]) expect([width, height]).toEqual([SIZE.width, SIZE.height]);
  // An empty page has one colour; fonts differ between machines, so the dots aren't compared.
  const colours = new Set<number>();
  for (let i = 0; i < taken.data.length; i += 4) colours.add(taken.data.readUInt32BE(i));
  expect(colours.size).toBeGreaterThan(50);
});
