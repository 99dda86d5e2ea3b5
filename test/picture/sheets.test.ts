import { describe, expect, test } from "vitest";
import { flattenPicture } from "../../src/picture/flat.ts";
import { textBox } from "../../src/picture/words.ts";
import { cutWords, overlaps } from "../support/overlaps.ts";
import { paper } from "../support/papers.ts";
import * as samples from "../support/samplePieces.ts";
import { allText, make, makeAfresh, pictureOf, SETS, TITLE, textsOn } from "../support/sheets.ts";

describe.each(Object.entries(SETS))("sheets of %s", (_, pieces) => {
  test.each(["letter", "roll 610 mm"])(
    "on %s: no words lie on lines or on other words, and none is cut off but a joining mark's number",
    (name) => {
      for (const picture of make(pieces, { paper: paper(name) }).pictures) {
        expect(overlaps(picture), picture.title).toEqual([]);
        expect(
          cutWords(picture).filter((w) => !/^\d+$/.test(w)),
          picture.title,
        ).toEqual([]);
      }
    },
  );

  test("nor with a stamp, a printer's correction, ends only", () => {
    const made = make(
      pieces,
      { paper: paper("letter"), endsOnly: true, factor: { x: 0.98, y: 1.02 } },
      { stamp: "has errors" },
    );
    for (const picture of made.pictures) {
      expect(overlaps(picture), picture.title).toEqual([]);
      expect(allText(picture)).toContain("HAS ERRORS");
    }
  });

  test("every sheet says what it is, and which edges to trim and to glue", () => {
    const made = make(pieces, { paper: paper("letter") });
    for (const sheet of made.layout.sheets) {
      const said = allText(pictureOf(made, sheet.name));
      expect(textsOn(pictureOf(made, sheet.name))).toContain(sheet.name);
      const inRow = made.layout.sheets.filter((s) => s.row === sheet.row).length;
      expect(said).toContain(`row ${sheet.name[0]}, sheet ${sheet.column + 1} of ${inRow}`);
      expect(said).toContain("Juniper");
      const trims = [sheet.joins.left, sheet.joins.above].filter((j) => j !== undefined).length;
      const glues = [sheet.joins.right, sheet.joins.below].filter((j) => j !== undefined).length;
      expect(said.match(/trim here/g)?.length ?? 0).toBe(trims);
      expect(said.match(/glue here/g)?.length ?? 0).toBe(glues);
    }
  });
});

/** Where a point of a page lies on the sheet's plate, for a printer that is true. */
test("names that are long, or in other scripts, find their place", () => {
  for (const forWhom of [
    "Ἀλέξανδρος και Ζήνων, Ελλάς",
    "Жар-птица, рыжая кобыла",
    "Quince ".repeat(20).trim(),
    "x".repeat(120),
  ]) {
    const { pictures } = make(
      [samples.longStrap(), samples.cheekLike()],
      { paper: paper("letter") },
      { words: { ...TITLE, forWhom } },
    );
    for (const picture of pictures) {
      expect(overlaps(picture), `${picture.title} for ${forWhom}`).toEqual([]);
      for (const { item, clips } of flattenPicture(picture)) {
        if (item.kind !== "words" || clips.length > 0) continue;
        const box = textBox(item);
        expect(box.minX, item.text).toBeGreaterThan(0);
        expect(box.maxX, item.text).toBeLessThan(picture.width);
      }
    }
    expect(textsOn(pictures[0]!).join("")).toContain(forWhom.slice(0, 6));
  }
});

test("the same job gives the same pictures", () => {
  const options = { paper: paper("letter") };
  const pieces = SETS["a headstall"]!;
  expect(JSON.stringify(makeAfresh(pieces, options).pictures)).toBe(
    JSON.stringify(make(pieces, options).pictures),
  );
});
