import { describe, expect, test } from "vitest";
import { nearestWord, oneOf } from "../../src/model/words.ts";

describe("the word that was most likely meant", () => {
  const words = ["over-poll", "ear-base", "holes", "hole-offset", "width"];
  test.each([
    ["widht", "width"],
    ["Width", "width"],
    ["overPoll", "over-poll"],
    ["hole", "holes"],
    ["earbase", "ear-base"],
  ])("%s: %s", (wrong, right) => expect(nearestWord(wrong, words)).toBe(right));

  test("half of its letters may be wrong, no more", () => {
    expect(nearestWord("wxxxh", ["width"])).toBe("width");
    expect(nearestWord("wxxxx", ["width"])).toBeUndefined();
    expect(nearestWord("axxd", ["abcd"])).toBe("abcd");
    expect(nearestWord("axxx", ["abcd"])).toBeUndefined();
    expect(nearestWord("b", ["a"])).toBe("a");
  });

  test("none where none is near", () => {
    expect(nearestWord("zzzzzzzzzz", words)).toBeUndefined();
    expect(nearestWord("width", [])).toBeUndefined();
  });

  test("of two equally near ones always the same, whatever their order", () => {
    expect(nearestWord("cat", ["car", "bat"])).toBe("bat");
    expect(nearestWord("cat", ["bat", "car"])).toBe("bat");
  });
});

test("a list as people say it", () => {
  expect([oneOf([]), oneOf(["a"]), oneOf(["a", "b"]), oneOf(["a", "b", "c"])]).toEqual([
    "",
    "a",
    "a or b",
    "a, b or c",
  ]);
});
