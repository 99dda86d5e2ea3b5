import { expect, test } from "vitest";
import papers from "../../fixtures/published/paper-sizes.json";
import { paperNamed, ROLL_LENGTH_MM } from "../../src/trade/paper.ts";

const sizeOf = (name: string): readonly number[] => {
  const found = paperNamed(name);
  return found.ok ? [found.paper.width, found.paper.height] : [];
};

test("papers have the published sizes", () => {
  const { R1, R2 } = papers.figures;
  expect(sizeOf("a4")).toEqual(R1.a4);
  expect(sizeOf("a3")).toEqual(R1.a3);
  for (const name of ["letter", "tabloid"] as const) {
    R2[name].forEach((inches, i) => {
      expect(sizeOf(name)[i]).toBeCloseTo(inches * 25.4, 9);
    });
  }
  // Legal, 8 1/2 × 14 in: common practice, no source.
  expect(sizeOf("legal")).toEqual([215.9, 355.6]);
});

test("names are read as people write them", () => {
  expect(sizeOf(" Letter ")).toEqual(sizeOf("letter"));
  expect(sizeOf("A 4")).toEqual(sizeOf("a4"));
});

test("a roll has any width, in mm, cm or inches", () => {
  expect(sizeOf("roll 610 mm")).toEqual([610, ROLL_LENGTH_MM]);
  expect(sizeOf("roll 610")).toEqual([610, ROLL_LENGTH_MM]);
  expect(sizeOf("Roll 61 cm")).toEqual([610, ROLL_LENGTH_MM]);
  expect(sizeOf("roll 24 in")).toEqual([609.6, ROLL_LENGTH_MM]);
});

test("a roll too narrow or too wide to be one is refused with its width", () => {
  expect(paperNamed("roll 20 mm")).toMatchObject({ ok: false, rollWidth: 20 });
  expect(paperNamed("roll 9000 mm")).toMatchObject({ ok: false, rollWidth: 9000 });
});

test("an unknown name comes back with the nearest and all that are known", () => {
  expect(paperNamed("leter")).toMatchObject({ ok: false, got: "leter", nearest: "letter" });
  expect(paperNamed("tabliod")).toMatchObject({ nearest: "tabloid" });
  const none = paperNamed("the wall over there");
  expect(none).toMatchObject({ ok: false });
  expect(none).not.toHaveProperty("nearest");
  expect(none.ok ? [] : none.known).toContain("a4");
});
