import { expect, test } from "vitest";
import { progress } from "../../src/cli/progress.ts";

const stream = (isTTY: boolean) => {
  const said: string[] = [];
  return {
    said,
    stream: { isTTY, write: (text: string) => said.push(text) > 0 } as unknown as NodeJS.WriteStream,
  };
};

test("work of less than a second says nothing; longer work says how far it is, and cleans up", () => {
  let now = 0;
  const { said, stream: s } = stream(true);
  const shown = progress(s, () => now);
  shown.at(0, 3, "a.yaml");
  now = 999;
  shown.at(1, 3, "b.yaml");
  expect(said).toEqual([]);
  now = 1500;
  shown.at(2, 3, "c.yaml");
  expect(said.join("")).toContain("3 of 3: c.yaml");
  shown.end();
  expect(said.at(-1)).toBe("\r\u001b[K");
});

test("nothing is said where the error stream is no terminal", () => {
  let now = 0;
  const { said, stream: s } = stream(false);
  const shown = progress(s, () => now);
  now = 5000;
  shown.at(1, 3, "b.yaml");
  shown.end();
  expect(said).toEqual([]);
});
