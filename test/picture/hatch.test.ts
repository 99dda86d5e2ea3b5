import { expect, test } from "vitest";
import { endPoint, type Point } from "../../src/geometry/path.ts";
import { flattenPicture } from "../../src/picture/flat.ts";
import { piecePicture } from "../../src/picture/piece.ts";
import { overlaps } from "../support/overlaps.ts";
import * as samples from "../support/samplePieces.ts";

const picture = piecePicture(samples.cheekLike(), "mm");
/** The strokes that fill fields: thin lines on the layer of skives. */
const strokes = flattenPicture(picture).flatMap(({ item }): readonly (readonly [Point, Point])[] =>
  item.kind === "stroke" && item.layer === "skive" && item.line === "01.1"
    ? [[item.path.start, endPoint(item.path)]]
    : [],
);
const along = ([a, b]: readonly [Point, Point]): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

test("a field to skive is filled with falling strokes at 45 degrees, clear of words", () => {
  expect(strokes.length).toBeGreaterThan(8);
  for (const [a, b] of strokes) expect(Math.abs(a[0] + a[1] - b[0] - b[1])).toBeLessThan(0.01);
  expect(overlaps(picture)).toEqual([]);
});

test("no stroke is so short that it could be taken for an awl mark", () => {
  const longest = Math.max(
    ...samples
      .cheekLike()
      .holes.filter((h) => h.kind === "awl")
      .map((h) => h.size),
  );
  for (const s of strokes) expect(along(s)).toBeGreaterThan(longest);
});

test("every field of a keeper is named", () => {
  const said = flattenPicture(piecePicture(samples.keeperLike(), "mm")).flatMap(({ item }) =>
    item.kind === "words" ? [item.text] : [],
  );
  expect(said.join(" ").match(/skive/g)).toHaveLength(2);
});
