import { beforeAll, describe, expect, test } from "vitest";
import { TRUE_FACTOR } from "../../src/layout/printer.ts";
import { overlaps } from "../support/overlaps.ts";
import { paper } from "../support/papers.ts";
import * as samples from "../support/samplePieces.ts";
import { allText, areasOn, type Made, make, SETS, textsOn } from "../support/sheets.ts";

describe("the first sheet", () => {
  let made: Made;
  beforeAll(() => {
    made = make(SETS["a headstall"]!, { paper: paper("letter") });
  });

  test("comes first, and says for whom, from which file, and what to do", () => {
    const first = made.pictures[0]!;
    expect(first.title).toBe("first sheet");
    expect([first.width, first.height]).toEqual([215.9, 279.4]);
    const said = allText(first);
    for (const part of [
      "One-ear headstall",
      "Juniper",
      "juniper.yaml",
      "4 sheets",
      "--printed",
      "Never tie a horse",
      "ISO 128-2",
    ]) {
      expect(said).toContain(part);
    }
  });

  test("maps every sheet and lists every piece, its count and where it is", () => {
    const texts = textsOn(made.pictures[0]!);
    for (const sheet of made.layout.sheets) expect(texts).toContain(sheet.name);
    expect(texts).toContain("Cheek: cut 2: 1 as drawn, 1 turned over");
    for (const piece of SETS["a headstall"]!)
      expect(texts.some((t) => t.startsWith(`${piece.name}: cut`))).toBe(true);
  });

  test("carries the measuring bars, true from outer edge to outer edge", () => {
    for (const factor of [TRUE_FACTOR, { x: 0.97, y: 1.03 }]) {
      const picture = make([samples.tinyPiece()], { paper: paper("letter"), factor }).pictures[0]!;
      const thick = areasOn(picture).filter((b) => Math.min(b.maxX - b.minX, b.maxY - b.minY) > 0.4);
      const long = (axis: 0 | 1): number =>
        Math.max(...thick.map((b) => (axis === 0 ? b.maxX - b.minX : b.maxY - b.minY)));
      expect(long(0)).toBeCloseTo(180 / factor.x, 2);
      expect(long(1)).toBeCloseTo(240 / factor.y, 2);
      for (const b of thick) {
        expect(b.minX).toBeGreaterThanOrEqual(9.999);
        expect(b.maxX).toBeLessThanOrEqual(205.901);
        expect(b.maxY).toBeLessThanOrEqual(269.401);
      }
    }
  });

  test("says so when the sheets are corrected, on every one of them", () => {
    const corrected = make([samples.longStrap()], {
      paper: paper("letter"),
      factor: { x: 0.9956, y: 0.998 },
    });
    // The words may be broken over lines.
    for (const picture of corrected.pictures)
      expect(textsOn(picture).join(" ")).toMatch(/corrected for a printer at 99\.56 %/);
    for (const picture of made.pictures) expect(textsOn(picture).join(" ")).not.toMatch(/corrected/);
  });

  test("goes on to another page rather than dropping a piece", () => {
    const many = Array.from({ length: 40 }, (_, i) =>
      samples.keeperLike(`keeper-${i}`, {
        name: `Keeper ${i}`,
        notes: ["bend grain side out; the ends lie between the legs of the turn-back"],
      }),
    );
    const { pictures } = make(many, { paper: paper("letter") });
    const front = pictures.filter((p) => p.title.startsWith("first sheet"));
    expect(front.length).toBeGreaterThan(1);
    const said = front.flatMap(textsOn);
    for (let i = 0; i < 40; i++) expect(said).toContain(`Keeper ${i}: cut 2`);
    expect(said).toContain("Take care");
    for (const picture of front) expect(overlaps(picture)).toEqual([]);
  });
});
