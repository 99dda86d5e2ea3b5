import { describe, expect, test } from "vitest";
import { PRESS_CAUTIONS } from "../../src/die/checks/index.ts";
import { type Die, dieFor } from "../../src/die/die.ts";
import { holeTable } from "../../src/die/holeTable.ts";
import { type DieSettings, defaultDie } from "../../src/die/settings.ts";
import { closedPath, line, slotPath } from "../../src/geometry/path.ts";
import type { Finding } from "../../src/model/finding.ts";
import { leaf } from "../../src/model/quantity.ts";
import type { Units } from "../../src/model/say.ts";
import { type DieDrawingInput, dieDrawing } from "../../src/picture/die/dieDrawing.ts";
import { loadWorked } from "../../src/picture/die/press.ts";
import { byHandTableOf, holesTableOf } from "../../src/picture/die/tables.ts";
import { NEWTONS_IN } from "../../src/trade/force.ts";
import { dieOf, inputFor, wordsOnPart } from "../support/dies.ts";
import { cutWords, overlaps } from "../support/overlaps.ts";
import { given } from "../support/quantities.ts";
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
  // A fifth of a press is reserve: 1.25 times twice the load takes two dies.
  const tons = ((1.25 * 2.01 * cheek.load.value) / NEWTONS_IN["US short ton"]).toFixed(3);
  expect(textOf(withSettings({ press: `${tons} US tons` }))).toContain("it takes 2 at a stroke");
  expect(textOf(withSettings({ press: "1 kN" }))).toContain("that is less than one die needs");
});

test("slots too narrow for the rule are listed in words with their count", () => {
  const body = dieOf("post-satchel.yaml", "body");
  expect(textOf(body)).toContain(
    "4 slots (B1 to B4) are not in the die: 1.4 mm wide, and the rule is bent to 2.38 mm at the narrowest.",
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
    expect(pictures.map(allText).join(" ")).toContain("ERROR, do not make it: The press is too small.");
    expect(pictures.map(allText).join(" ")).toContain("ask before you make the die");
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
    expect(allText(p).replaceAll("\n", " ")).toContain(name);
  }
});

describe("for a die maker who has never seen the order", () => {
  /** A plate with two slots whose ends have a radius of 1.5 mm, and a notch with two sharp inner corners. */
  const slots = [20, 40].map((x, i) => ({
    id: i === 0 ? "slot.near" : "slot.off",
    use: "strap slot",
    outline: slotPath([x, 0], 16, 3, Math.PI / 2),
    length: 16,
    width: 3,
  }));
  const plate = {
    ...cheek.piece,
    outline: closedPath(
      [0, -20],
      [
        line([80, -20]),
        line([80, 20]),
        line([66, 20]),
        line([66, 10]),
        line([58, 10]),
        line([58, 20]),
        line([0, 20]),
      ],
    ),
    holes: [],
    cutouts: slots,
    seams: [],
    folds: [],
    zones: [],
    marks: [],
  };
  const tight = dieFor(plate, { ...defaultDie(), leastRadius: given("least radius", 2) });

  test("no path of the order and no name of the piece's own is printed", () => {
    for (const die of [tight, cheek, dieOf("post-satchel.yaml", "body")]) {
      const text = textOf(die);
      expect(text).not.toMatch(/\b(die|pieces|leather)\.[a-z]/);
      expect(text).not.toMatch(/slot\.near|slot near/);
      expect(text).not.toContain("To mend");
    }
    const shear = leaf("die shear", 30, "stress", { kind: "given", where: "die.shear" });
    expect(textOf(withSettings({ shear }))).not.toContain("die.shear");
  });

  test("places that are alike are said once: round ends of slots as what they are, corners with their number", () => {
    const text = textOf(tight);
    const ends = "The round ends of slot A1 and slot A2 on Cheek have a radius of 1.5 mm, as drawn";
    expect(text.split(ends).length - 1).toBe(1);
    expect(text).toContain("2 inner corners of the outline on Cheek are sharp");
    expect(text.split("inner corner").length - 1).toBe(1);
  });

  test("sides are said without the template that the die maker has not got", () => {
    const side = (says: string): string =>
      textOf(cheek, "mm", { title: { ...inputFor(cheek, "mm").title, side: says } });
    expect(side("no left or right")).toContain("no left or right");
    expect(side("right: template turned over")).toContain("right, as this view shows it");
    expect(side("right: template turned over")).not.toContain("turned over");
  });

  test("board and rubber are asked for", () => {
    expect(textOf(cheek)).toMatch(/Which, and how thick\? Please write it here: material _+ thickness _+ mm/);
    expect(textOf(cheek)).toMatch(/Which, and how high\? Please write it here: kind _+ height _+ mm/);
  });

  test("a price says what it is for, and what not", () => {
    const rule = withSettings({ currency: "EUR", pricePerMm: given("price", 0.05) });
    expect(textOf(rule)).toMatch(
      /EUR \d+\.\d\d for the rule alone, without the tubes and the board with its rubber/,
    );
    const tubes = withSettings({
      currency: "EUR",
      pricePerMm: given("price", 0.05),
      pricePerTube: given("price of a tube", 2),
    });
    expect(textOf(tubes)).toContain("for the rule and the tubes, without the board with its rubber");
    expect(textOf(cheek)).not.toContain("Estimated price");
  });
});

describe("what is left for hand and bench", () => {
  const rowsOf = (die: Die): readonly (readonly string[])[] => byHandTableOf(die).rows;

  test("stitch holes are counted by holes and rows", () => {
    // The draft horse's cheek: 8 slits on each side of its buckle's box.
    const [stitches] = rowsOf(dieOf("draft.yaml", "cheek"));
    expect(stitches!.slice(0, 2)).toEqual(["stitch holes", "16 awl slits in 2 rows of 8"]);
  });

  test.each([
    ["draft.yaml", "cheek"],
    ["wren-flap-purse.yaml", "gusset"],
    ["child-turned-purse.yaml", "front"],
  ])("%s %s: every place is named, none is left out", (order, id) => {
    const die = dieOf(order, id);
    const left = die.features.filter((f) => f.made === "by hand afterwards" && f.letter === undefined);
    const places = rowsOf(die).flatMap((row) => row[2]!.split("; "));
    expect(places.length).toBe(left.length);
    for (const { at } of left)
      expect(
        places.some((p) => {
          const [x, y] = p.split(", ").map(Number);
          return Math.abs(x! - at[0]) <= 0.0501 && Math.abs(y! - at[1]) <= 0.0501;
        }),
        `${at}`,
      ).toBe(true);
    expect(textOf(die)).not.toContain("…");
  });
});

test("tables are in millimetres, whatever the order works in", () => {
  const [row] = holesTableOf(cheek).rows;
  const { size } = holeTable(cheek.features)[0]!;
  if (!size || !("diameter" in size)) throw new Error("no round hole");
  expect(Number(/^Ø ([\d.]+) \[/.exec(row![3]!)![1])).toBeCloseTo(size.diameter, 2);
  expect(textOf(cheek, "in")).toContain(row![3]!);
});

test("a title block cuts nothing off: long words are folded", () => {
  const owner = "Fernhollow Saddlery, harness and bags by hand, The Old Tannery, Lower Green";
  const number = "a-headstall-with-a-very-long-file-name-keeper-running-as-drawn";
  for (const p of dieDrawing(
    inputFor(cheek, "in", { title: { ...inputFor(cheek, "in").title, owner, number } }),
  )) {
    const text = allText(p);
    expect(text.replaceAll("\n", " ")).toContain(owner);
    expect(text.replaceAll("\n", "")).toContain(number);
    expect(Math.min(...wordsOn(p).map(({ size }) => size))).toBeGreaterThan(1.75);
    expect(text).not.toContain("…");
    expect([...overlaps(p), ...cutWords(p)]).toEqual([]);
  }
});

test("a small piece takes two sheets", () => {
  for (const id of ["keeper-fixed", "keeper-running"])
    expect(dieDrawing(inputFor(dieOf("juniper-headstall.yaml", id), "in")).length).toBe(2);
});

describe("the press load worked out again from the sheet", () => {
  /** Reads `a × g`, `the least of (d; a × e) + a × e` with the sheet's own figures. */
  function again(formula: string, values: ReadonlyMap<string, number>): number {
    const least = /the least of \(([^;]+); ([^)]+)\)/.exec(formula);
    if (least) {
      const smaller = Math.min(again(least[1]!, values), again(least[2]!, values));
      return again(formula.replace(least[0], "_"), new Map([...values, ["_", smaller]]));
    }
    return formula
      .split(" + ")
      .map((product) => product.split(" × ").reduce((p, sign) => p * values.get(sign.trim())!, 1))
      .reduce((a, b) => a + b, 0);
  }

  test.each([
    ["juniper-headstall.yaml", "crown"],
    ["draft.yaml", "cheek"],
    ["juniper-headstall.yaml", "keeper-fixed"],
  ])("%s %s", (order, id) => {
    const die = dieOf(order, id);
    const { rows } = loadWorked(die).table;
    const steps = rows.flatMap((r) => [r.slice(0, 3), r.slice(3, 6)]).filter(([sign]) => sign !== "");
    const values = new Map(steps.map(([sign, , value]) => [sign!, Number.parseFloat(value!)]));
    const worked = rows.flatMap((r) => (r[3] === "" ? [] : [[r[3]!, r[6]!] as const]));
    expect(worked.length).toBeGreaterThan(3);
    // Carried on as it is; what stands there has three figures: half a hundredth at the most.
    for (const [sign, formula] of worked) {
      const value = again(formula, values);
      const printed = values.get(sign)!;
      expect(Math.abs(printed / value - 1), formula).toBeLessThan(0.005 + 1e-4);
      expect(Number(printed.toPrecision(3)), formula).toBe(printed);
      values.set(sign, value);
    }
    // Six figures of each of three factors: within 1 in 50 000.
    expect(Math.abs(values.get(worked.at(-1)![0])! / die.load.value - 1)).toBeLessThan(2e-5);
  });
});

describe("what is ordered is said", () => {
  const { title } = inputFor(cheek, "mm");
  const board = "TS-104-cheek-two, revision B";

  test("a drawing that only defines the two on a board is not to be made, on every sheet", () => {
    const pictures = dieDrawing(inputFor(cheek, "mm", { title: { ...title, board } }));
    for (const p of pictures) {
      const text = allText(p).replaceAll("\n", " ");
      expect(text).toMatch(/definition only: do not make/i);
      expect([...overlaps(p), ...cutWords(p), ...wordsOnPart(p)]).toEqual([]);
    }
    const text = pictures.map(allText).join(" ").replaceAll("\n", " ");
    expect(text).toContain(`make the board of drawing ${board} instead`);
    expect(text).toContain("0: definition only");
    expect(text).not.toMatch(/: 1 die\b|Yours to choose. Which/);
    expect(textOf(cheek)).not.toMatch(/definition only/i);
  });

  test("a drawing without an owner asks for one, and no other does", () => {
    expect(textOf(cheek, "mm", { title: { ...title, owner: "" } })).toMatch(/Whom to ask: write here _{20}/);
    expect(textOf(cheek)).not.toContain("Whom to ask");
  });

  test("slots with their round ends, tubes with height and outlet", () => {
    // A strap slot 23 × 4.5: ends of 4.5 / 2.
    expect(textOf(cheek)).toMatch(
      /1 slot \(B1\) 23 \[0\.906\] × 4\.5 \[0\.177\] mm \[in\], round ends R 2\.25/,
    );
    expect(textOf(cheek)).toContain("Height: as the rule's, 23.8 mm. Way out for the slugs");
    const keeper = textOf(dieOf("juniper-headstall.yaml", "keeper-fixed"));
    expect(keeper).not.toMatch(/round ends|slugs/);
  });

  test("sizes and places have a tolerance each", () => {
    expect(textOf(cheek)).toContain(
      "± 0.25 mm [0.01 in] on sizes; edges and centres within 0.25 mm [0.01 in] of the tables' places",
    );
  });

  test("the title block gives the leather's nominal and its thickest where they differ", () => {
    const leather = { ...cheek.piece.leather, thickest: cheek.piece.leather.thickness + 0.2 };
    const most = leather.thickest.toFixed(2).replace(/0+$/, "");
    expect(textOf(dieFor({ ...cheek.piece, leather }, defaultDie()))).toContain(`, up to ${most} mm`);
    const even = { ...leather, thickest: leather.thickness };
    expect(textOf(dieFor({ ...cheek.piece, leather: even }, defaultDie()))).not.toContain("up to");
  });

  test("notches in the die: their angle's sense, and where the space between rules ends", () => {
    const gusset = dieOf("wren-flap-purse.yaml", "gusset", { notches: "in the die" });
    const text = textOf(gusset);
    expect(text).toContain("slots, holes and notches marked");
    expect(text).toContain("except where a notch’s rule stands on the outline’s");
    expect(text).toContain("from x anticlockwise");
    const front = dieOf("wren-flap-purse.yaml", "front", { notches: "in the die" });
    const angles = holesTableOf(front).rows.flatMap((r) => (r[5] === "notch" ? [r[4]!] : []));
    // Two of them are each other's mirror image about y, so their angles make half a turn.
    expect(angles.every((a) => !a.startsWith("-"))).toBe(true);
    expect(Number.parseFloat(angles[0]!) + Number.parseFloat(angles.at(-1)!)).toBeCloseTo(180, 3);
    expect(textOf(cheek)).not.toContain("except where a notch");
  });

  test("a price without tubes does not speak of them", () => {
    const keeper = dieOf("juniper-headstall.yaml", "keeper-fixed", {
      currency: "EUR",
      pricePerMm: given("price", 0.05),
    });
    expect(textOf(keeper)).toContain("for the rule alone, without the board with its rubber");
  });
});

describe("what belongs together stands on one sheet", () => {
  const sheetsOf = (order: string, id: string): readonly string[] =>
    dieDrawing(inputFor(dieOf(order, id), "in")).map(allText);

  test.each([
    ["juniper-headstall.yaml", "cheek"],
    ["juniper-headstall.yaml", "ear-piece"],
    ["juniper-headstall.yaml", "crown"],
    ["wren-flap-purse.yaml", "gusset"],
  ])("%s %s: cautions, load and its sources; a short table of holes", (order, id) => {
    const sheets = sheetsOf(order, id);
    const at = (words: string): number => sheets.findIndex((s) => s.replaceAll("\n", " ").includes(words));
    expect(at("At the press")).toBe(at("Where it comes from"));
    const { features } = dieOf(order, id);
    const holes = holeTable(features).filter(({ letter }) => letter.startsWith("A"));
    if (holeTable(features).length > 6) return;
    const table = at("Holes, slots and openings");
    for (const { letter } of holes) expect(sheets[table], letter).toMatch(new RegExp(`^${letter}$`, "m"));
  });
});

test("the same die gives the same drawing", () => {
  const again = dieOf("juniper-headstall.yaml", "cheek");
  expect(dieDrawing(inputFor(again, "in"))).toEqual(dieDrawing(inputFor(cheek, "in")));
});
