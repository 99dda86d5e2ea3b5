import { describe, expect, test } from "vitest";
// @ts-expect-error a plain script without types
import { blocksOf, missingLines } from "../tools/documents.mjs";

describe("the documents' outputs are compared line by line", () => {
  test("blocks of commands and of output are found in order", () => {
    expect(blocksOf("a\n```sh\nnpx whittaw facts\n```\n\n```text\nx\n```\n")).toEqual([
      { kind: "sh", lines: ["npx whittaw facts"] },
      { kind: "text", lines: ["x"] },
    ]);
  });
  test("the same lines pass; a changed, a missing and an extra line don't", () => {
    expect(missingLines(["a", "b"], "a\nb\n")).toEqual([]);
    expect(missingLines(["a", "b"], "a\nc\n")).toEqual(["b"]);
    expect(missingLines(["a", "b"], "a\n")).toEqual(["b"]);
    expect(missingLines(["a"], "a\nb\n")).toHaveLength(1);
  });
  test("three dots stand for any lines", () => {
    expect(missingLines(["a", "...", "d"], "a\nb\nc\nd\n")).toEqual([]);
    expect(missingLines(["a", "..."], "a\nb\n")).toEqual([]);
    expect(missingLines(["...", "e"], "a\nd\n")).toEqual(["e"]);
  });
});
