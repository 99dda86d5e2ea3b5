import { describe, expect, test } from "vitest";
import { polyline } from "../../src/geometry/path.ts";
import type { Item, Picture } from "../../src/picture/picture.ts";
import { textWidth } from "../../src/picture/words.ts";
import { cutWords, overlaps } from "../support/overlaps.ts";
import { stroke, words } from "../support/picture.ts";

const picture = (...items: readonly Item[]): Picture => ({ title: "", width: 100, height: 100, items });
const width = textWidth("keeper", 4);

describe("the search for overlapping words", () => {
  test("finds words on words, upright or turned", () => {
    expect(overlaps(picture(words("keeper", [10, 10]), words("cheek", [12, 11])))).toHaveLength(1);
    expect(
      overlaps(picture(words("keeper", [10, 10]), words("cheek", [14, 5], { angle: Math.PI / 2 }))),
    ).toHaveLength(1);
  });

  test("finds a line through words", () => {
    const line = stroke(
      "cut",
      "01.2",
      polyline([
        [5, 11],
        [90, 11],
      ]),
    );
    expect(overlaps(picture(words("keeper", [10, 10]), line))).toMatchObject([{ words: "keeper" }]);
  });

  test("lets words stand close", () => {
    const line = stroke(
      "cut",
      "01.2",
      polyline([
        [10 + width + 0.1, 0],
        [10 + width + 0.1, 90],
      ]),
    );
    expect(overlaps(picture(words("keeper", [10, 10]), words("cheek", [10, 15]), line))).toEqual([]);
  });

  test("looks where groups put things, and not at what is clipped away", () => {
    const group: Item = {
      kind: "group",
      placement: { at: [50, 50], angle: 0 },
      clip: { minX: 0, minY: 0, maxX: 20, maxY: 20 },
      items: [words("keeper", [2, 2]), words("cheek", [30, 2])],
    };
    expect(overlaps(picture(group, words("cheek", [53, 53])))).toHaveLength(1);
    expect(overlaps(picture(group, words("crown", [81, 53])))).toEqual([]);
  });

  test("finds words that are cut off by a clip or by the paper", () => {
    const group: Item = {
      kind: "group",
      placement: { at: [0, 0], angle: 0 },
      clip: { minX: 0, minY: 0, maxX: 20, maxY: 20 },
      items: [words("keeper", [18, 2]), words("cheek", [30, 2]), words("crown", [2, 12])],
    };
    expect(cutWords(picture(group, words("tip", [97, 50])))).toEqual(["keeper", "tip"]);
  });
});
