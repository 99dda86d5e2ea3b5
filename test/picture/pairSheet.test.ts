import { describe, expect, test } from "vitest";
import { dieFor } from "../../src/die/die.ts";
import { pairDie } from "../../src/die/pairDie.ts";
import { defaultDie } from "../../src/die/settings.ts";
import { boundsOf } from "../../src/geometry/bounds.ts";
import { type PairSheetInput, pairSheet } from "../../src/picture/die/pairSheet.ts";
import { flattenPicture } from "../../src/picture/flat.ts";
import type { Picture } from "../../src/picture/picture.ts";
import { textBox } from "../../src/picture/words.ts";
import { A3, type DrawnDie, inputFor, LETTER, MARGIN, orderPieces, wordsOnPart } from "../support/dies.ts";
import { cutWords, overlaps } from "../support/overlaps.ts";

// The sheet of a nested die, of every piece of every demo order.

const pieces = orderPieces().map(({ name, piece, units }) => [name, piece, units] as const);

function sheets(piece: DrawnDie["piece"], units: DrawnDie["units"]): readonly Picture[] {
  const die = dieFor(piece, defaultDie());
  const { title, margin } = inputFor(die, units);
  const input: PairSheetInput = {
    die,
    nest: pairDie(die),
    sheet: LETTER,
    margin,
    units,
    title,
    of: `${title.number}, revision B`,
    file: `die-${piece.id}-two-B.dxf`,
  };
  return [pairSheet(input), pairSheet({ ...input, sheet: A3, stamp: "has errors" })];
}

function outside(picture: Picture): readonly string[] {
  const half = 0.5;
  return flattenPicture(picture).flatMap(({ item }) => {
    const box = item.kind === "words" ? textBox(item) : boundsOf(item.path);
    const inside =
      box.minX >= MARGIN - half &&
      box.minY >= MARGIN - half &&
      box.maxX <= picture.width - MARGIN + half &&
      box.maxY <= picture.height - MARGIN + half;
    return inside ? [] : [item.kind === "words" ? item.text : (item.id ?? item.layer)];
  });
}

describe("the sheet of a nested die", () => {
  test.each(pieces)(
    "%s: words keep off the pieces, each other and the edge of the paper",
    (_, piece, units) => {
      for (const picture of sheets(piece, units)) {
        expect(wordsOnPart(picture)).toEqual([]);
        expect(overlaps(picture)).toEqual([]);
        expect(cutWords(picture)).toEqual([]);
        expect(outside(picture)).toEqual([]);
      }
    },
  );
});

describe("a press that takes one and not two", () => {
  const [, piece, units] = pieces[0]!;
  const one = dieFor(piece, defaultDie()).load.value;
  const wordsAt = (share: number): string => {
    const die = dieFor(piece, { ...defaultDie(), press: `${((share * one) / 1000).toFixed(2)} kN` });
    const { title, margin } = inputFor(die, units);
    const picture = pairSheet({
      die,
      nest: pairDie(die),
      sheet: A3,
      margin,
      units,
      title,
      of: "A",
      file: "a.dxf",
    });
    return flattenPicture(picture)
      .flatMap(({ item }) => (item.kind === "words" ? [item.text] : []))
      .join(" ");
  };
  test("is said on the sheet of the pair", () => {
    expect(wordsAt(1.5)).toContain("TOO MUCH for the press");
    expect(wordsAt(2.5)).not.toContain("TOO MUCH");
    expect(wordsAt(2.5)).toContain("is rated for");
  });
});
