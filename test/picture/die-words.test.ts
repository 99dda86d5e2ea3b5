import { describe, expect, test } from "vitest";
import { PRESS_CAUTIONS } from "../../src/die/checks/index.ts";
import { type Die, dieFor } from "../../src/die/die.ts";
import { type DieSettings, defaultDie } from "../../src/die/settings.ts";
import { closedPath, line } from "../../src/geometry/path.ts";
import type { Finding } from "../../src/model/finding.ts";
import type { Units } from "../../src/model/say.ts";
import { type DieDrawingInput, dieDrawing } from "../../src/picture/die/dieDrawing.ts";
import { NEWTONS_IN } from "../../src/trade/force.ts";
import { dieOf, inputFor, wordsOnPart } from "../support/dies.ts";
import { cutWords, overlaps } from "../support/overlaps.ts";
import { allText, wordsOn } from "../support/sheets.ts";

// What the drawing says, read as one text: lines of a paragraph run together.

const cheek = dieOf("juniper-headstall.yaml", "cheek");

const textOf = (die: Die, units: Units = "mm", more: Partial<DieDrawingInput> = {}): string =>
  dieDrawing(inputFor(die, units, more))
    .map(allText)
    .join("\n")
    .replaceAll("\n", " ");

const withSettings = (settings: Partial<DieSettings>): Die =>
  dieFor(cheek.piece, { ...defaultDie(), ...settings });

const FINDING: Finding = {
  rule: "die-press-load",
  severity: "error",
  piece: "cheek",
  place: "press",
  message: "The press is too small.",
  mend: "Cut it on a larger one.",
};

test("tolerance, rule, bevel, leather, side and number of dies are said", () => {
  const text = textOf(cheek);
  for (const words of [
    "± 0.25 mm [0.01 in]",
    "2 pt, 0.71 mm [0.028 in] thick, 23.8 mm [0.937 in] high",
    "ground on both sides",
    "strap leather, 3.57 mm",
    "left as drawn",
    "1, for left and right",
    "Seen on the grain side.",
    "Looking at the die's cutting edges, it is the mirror image of this view.",
    "die drawing",
    "Thornfield Saddlery, Hexham",
    "Juniper, bay mare, 15.1 hands",
    "2026-11-25",
  ])
    expect(text).toContain(words);
});

test("inches come first where the order works in inches, with millimetres in brackets", () => {
  // The draft's blank, 352.69 mm: 352.69 ÷ 25.4 = 13.886.
  expect(textOf(cheek, "in")).toMatch(/\(13\.8\d+ \[352\.\d+\]\)/);
  expect(textOf(cheek, "mm")).toMatch(/\(352\.\d+ \[13\.8\d+\]\)/);
});

test.each(["centre", "waste side", "leather side"] as const)("the bevel is said: %s", (bevel) => {
  const says = {
    centre: "both sides (centre bevel)",
    "waste side": "waste's side",
    "leather side": "side of the leather that is kept",
  };
  expect(textOf(withSettings({ bevel }))).toContain(
    `It is ground on ${bevel === "centre" ? "" : "the "}${says[bevel]}`,
  );
});

test("what the shop says of rule and tolerance is printed", () => {
  const own = defaultDie();
  const text = textOf(
    withSettings({
      rule: "3 pt",
      tolerance: { ...own.tolerance, value: 0.1 },
      ruleHeight: { ...own.ruleHeight, value: 32 },
    }),
  );
  expect(text).toContain("± 0.1 mm");
  expect(text).toContain("3 pt");
  expect(text).toContain("32 mm [1.26 in] high");
});

test("cautions at the press, and the load with its parts in three units", () => {
  const text = textOf(cheek);
  for (const caution of PRESS_CAUTIONS) expect(text).toContain(caution);
  for (const part of ["load on the rule", "load on the tubes", "load on the ejection rubber", "press load"])
    expect(text).toContain(part);
  expect(text).toMatch(/About [\d.]+ kN = [\d.]+ US short tons = [\d.]+ metric tons/);
});

test("the press's rating is compared", () => {
  // A rating of twice the load takes two dies.
  const tons = ((2.01 * cheek.load.value) / NEWTONS_IN["US short ton"]).toFixed(3);
  expect(textOf(withSettings({ press: `${tons} US tons` }))).toContain("it takes 2 at a stroke");
  expect(textOf(withSettings({ press: "1 kN" }))).toContain("that is less than one die needs");
});

test("slots too narrow for the rule are listed in words with their count", () => {
  const body = dieOf("post-satchel.yaml", "body");
  expect(textOf(body)).toContain(
    "4 slots are not in the die: 1.4 mm wide, and the rule is bent to 2.38 mm at the narrowest.",
  );
});

test("an opening has a table of its own", () => {
  const ear = dieOf("bramble-headstall.yaml", "ear-piece");
  const text = textOf(ear);
  expect(text).toContain("opening, see its own table");
  expect(text).toContain("Opening B1: lines and arcs, in order");
});

describe("findings", () => {
  test("an error is stamped on every sheet and said first", () => {
    const pictures = dieDrawing(inputFor(cheek, "mm", { findings: [FINDING] }));
    for (const p of pictures) expect(allText(p)).toContain("HAS ERRORS");
    expect(pictures.map(allText).join(" ")).toContain(
      "ERROR, do not make it: The press is too small. To mend: Cut it on a larger one.",
    );
    for (const p of pictures) expect([...overlaps(p), ...cutWords(p)]).toEqual([]);
  });

  test("without one nothing is stamped", () => {
    expect(textOf(cheek, "mm", { findings: [{ ...FINDING, severity: "caution" }] })).not.toContain(
      "HAS ERRORS",
    );
  });
});

test("a pair that is not its own mirror image needs a left and a right", () => {
  const outline = closedPath([0, 0], [line([80, 0]), line([60, 30]), line([0, 22])]);
  const piece = {
    ...cheek.piece,
    outline,
    holes: [],
    cutouts: [],
    seams: [],
    folds: [],
    zones: [],
    marks: [],
  };
  const die = dieFor(piece, defaultDie());
  expect(die.axis).toBeUndefined();
  const text = textOf(die);
  expect(text).toContain("2: a left and a right");
  expect(text).toContain("is not its own mirror image: do not turn it over");
  expect(textOf(dieFor({ ...piece, hand: "same" }, defaultDie()))).toContain("All pieces are alike: 1 die.");
});

test("a grid of many holes, long names and a datum far off: still nothing overlaps", () => {
  const at = (i: number): readonly [number, number] => [500 + (i % 8) * 7, 300 + Math.floor(i / 8) * 7];
  const holes = Array.from({ length: 40 }, (_, i) => ({
    id: `grid.${i}`,
    kind: "round" as const,
    at: at(i),
    size: 3,
    angle: 0,
    use: "lace",
  }));
  const outline = closedPath([490, 290], [line([560, 290]), line([560, 340]), line([490, 340])]);
  const name = "Harness saddle pad with a name that no title block has ever had room for";
  const piece = {
    ...cheek.piece,
    name,
    outline,
    holes,
    cutouts: [],
    seams: [],
    folds: [],
    zones: [],
    marks: [],
  };
  const die = dieFor(piece, defaultDie());
  for (const p of dieDrawing(inputFor(die, "in"))) {
    expect([...overlaps(p), ...cutWords(p), ...wordsOnPart(p)]).toEqual([]);
    expect(wordsOn(p).some(({ text }) => text === "TS-104-cheek")).toBe(true);
  }
});

test("the same die gives the same drawing", () => {
  const again = dieOf("juniper-headstall.yaml", "cheek");
  expect(dieDrawing(inputFor(again, "in"))).toEqual(dieDrawing(inputFor(cheek, "in")));
});
