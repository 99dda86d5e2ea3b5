import { beforeAll, describe, expect, test } from "vitest";
import { boundsOf } from "../../src/geometry/bounds.ts";
import { TRUE_FACTOR } from "../../src/layout/printer.ts";
import type { Finding } from "../../src/model/finding.ts";
import type { Piece } from "../../src/model/piece.ts";
import { flattenPicture } from "../../src/picture/flat.ts";
import { overlaps } from "../support/overlaps.ts";
import { paper } from "../support/papers.ts";
import * as samples from "../support/samplePieces.ts";
import { allText, areasOn, type Made, make, makeAfresh, SETS, TITLE, textsOn } from "../support/sheets.ts";
import { buckleFold } from "../support/soundPiece.ts";

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
      expect(textsOn(picture).join(" ")).toMatch(/corrected for a printer (at 99\.56 %|that prints)/);
    // 0.9956 x 180 and 0.998 x 240, by hand.
    expect(textsOn(corrected.pictures[0]!).join(" ")).toContain(
      "These sheets are corrected for a printer that prints 179.2 for 180 and 239.5 for 240. If a bar here is still off, measure printer-check-letter.pdf afresh and make again with --printed.",
    );
    for (const picture of made.pictures) expect(textsOn(picture).join(" ")).not.toMatch(/corrected/);
  });

  test("prints errors and cautions, not notes, and twins once", () => {
    const found = (severity: Finding["severity"], message: string): Finding => ({
      rule: "grain-stretch",
      severity,
      piece: "cheek",
      place: "",
      message,
      mend: "skive the fold.",
    });
    const words = {
      ...TITLE,
      findings: [
        found("error", "The near slot is too long."),
        found("error", "The off slot is too long."),
        found("caution", "The grain may crack."),
        found("note", "The strap is brown."),
      ],
    };
    const said = textsOn(
      makeAfresh(SETS["a headstall"]!, { paper: paper("letter") }, { words }).pictures[0]!,
    ).join(" ");
    expect(said).toContain("Look here first");
    expect(said).toContain(
      "Error, do not cut: Cheek: The near slot is too long. To mend: skive the fold. The same on the other side.",
    );
    expect(said).not.toContain("off slot");
    expect(said).toContain("Cheek: The grain may crack. To mend: skive the fold.");
    expect(said).not.toContain("brown");
    expect(allText(made.pictures[0]!)).not.toContain("Look here first");
  });

  test("says the words of the bench that the pieces use, and no others", () => {
    const said = (piece: Piece): string =>
      textsOn(makeAfresh([piece], { paper: paper("letter") }).pictures[0]!).join(" ");
    const folded = said({ ...samples.cheekLike(), turnBacks: [{ ...buckleFold, mates: [["a", "b"]] }] });
    for (const part of ["Front leg: the strap itself", "“back 1” meet", "flesh side", "hide's back line"])
      expect(folded).toContain(part);
    const plain = said(samples.tinyPiece());
    expect(plain).toContain("hide's back line");
    expect(plain).not.toContain("Front leg");
    expect(plain).not.toContain("Feather:");
  });

  test("shows on the map where a strap is broken", () => {
    const zigzags = (endsOnly: boolean): number => {
      const { pictures } = make([samples.longStrap()], { paper: paper("letter"), endsOnly });
      // A break line has six points.
      return flattenPicture(pictures[0]!).filter(
        ({ item }) =>
          item.kind === "stroke" &&
          item.layer === "sheet" &&
          item.line === "01.1" &&
          !item.path.closed &&
          item.path.segments.length === 5 &&
          boundsOf(item.path).maxX - boundsOf(item.path).minX < 3,
      ).length;
    };
    expect(zigzags(true)).toBe(2);
    expect(zigzags(false)).toBe(0);
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
