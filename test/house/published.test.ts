import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
// @ts-expect-error a plain script without types
import { published } from "../tools/publish.mjs";

test("the published schemas and the README's picture are what the program makes today (npm run publish-files)", async () => {
  for (const [path, text] of (await published()) as [string, string][])
    expect(readFileSync(path, "utf8"), path).toBe(text);
});
