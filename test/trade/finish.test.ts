import { expect, test } from "vitest";
import { boundsOf, rectanglePath } from "../../src/geometry/index.ts";
import { creaseLines, stampNotes } from "../../src/trade/finish.ts";

test("a crease lies inside the whole edge, so far from it", () => {
  const [crease, ...more] = creaseLines(rectanglePath([0, 0], 100, 20), 3);
  expect(more).toEqual([]);
  const box = boundsOf(crease!.path);
  expect([box.minX, box.minY, box.maxX, box.maxY].map((n) => Number(n.toFixed(6)))).toEqual([3, 3, 97, 17]);
});

test("stamps are counted, and what is over is shared", () => {
  expect(stampNotes(100, 12)).toEqual([
    "tooling zone 100 mm long: 8 stamps of 12 mm, 4 mm over: start 2 mm in",
  ]);
  expect(stampNotes(0.3, 0.1)[0]).toContain("3 stamps");
  expect(stampNotes(100, undefined)).toEqual(["tooling zone 100 mm long"]);
});
