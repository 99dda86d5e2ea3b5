import { describe, expect, test } from "vitest";
import { sayHoleSize } from "../../src/picture/piece/say.ts";
import { pictureOfPiece } from "../../src/picture/piece.ts";
import { orderPieces } from "../support/dies.ts";

const INCH = 25.4;

/** `1 13/64` read by hand: whole inches and a fraction. */
function readInches(text: string): number {
  const parts = text.split(" ").map((p) => p.split("/").map(Number));
  return parts.reduce((sum, [top, bottom = 1]) => sum + top! / bottom, 0);
}

describe("a hole's size in inches", () => {
  const holes = orderPieces().flatMap(({ name, piece }) =>
    piece.holes.map((hole) => ({ name: `${name}, ${hole.id}`, hole })),
  );

  test("of every order: read back, it is the hole within 3 % and 0.1 mm", () => {
    let printed = 0;
    for (const { name, hole } of holes) {
      const inches = /about ([\d/ ]+) in\)/.exec(sayHoleSize(hole, "in"))?.[1];
      if (inches === undefined) continue;
      printed += 1;
      const off = Math.abs(readInches(inches) * INCH - hole.size);
      expect(off / hole.size, name).toBeLessThanOrEqual(0.03);
      expect(off, name).toBeLessThanOrEqual(0.1 + 1e-9);
    }
    expect(printed).toBeGreaterThan(100);
  });

  test.each([
    [5.2, "hole 5.2 mm (about 13/64 in)"],
    [3.62, "hole 3.6 mm (about 9/64 in)"],
    [12.7, "hole 12.7 mm (about 1/2 in)"],
    [25.4, "hole 25.4 mm (about 1 in)"],
    [5, "hole 5 mm"],
    [1, "hole 1 mm"],
  ])("%f mm", (size, says) => {
    const [{ hole }] = holes as [(typeof holes)[number]];
    expect(sayHoleSize({ ...hole, size }, "in")).toBe(says);
    expect(sayHoleSize({ ...hole, size }, "mm")).not.toContain("in");
  });

  test("on every piece as it is drawn in inches", () => {
    let seen = 0;
    for (const { name, piece } of orderPieces(["juniper-headstall.yaml", "bramble-headstall.yaml"])) {
      const drawn = pictureOfPiece(piece, { units: "in", controls: piece.controls });
      for (const [, mm, inches] of JSON.stringify(drawn).matchAll(
        /hole ([\d.]+) mm \(about ([\d/ ]+) in\)/g,
      )) {
        seen += 1;
        // The millimetres are printed to a tenth.
        const off = Math.abs(readInches(inches!) * INCH - Number(mm)) - 0.05;
        expect(off / Number(mm), name).toBeLessThanOrEqual(0.03);
      }
    }
    expect(seen).toBeGreaterThan(0);
  });
});
