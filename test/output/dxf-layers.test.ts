import DxfParser from "dxf-parser";
import { beforeAll, describe, expect, test } from "vitest";
import { pairDie } from "../../src/die/pairDie.ts";
import { type DieSettings, defaultDie } from "../../src/die/settings.ts";
import { sidesOf } from "../../src/die/sides.ts";
import { distanceToPath, type Path, pathLength, pointAt } from "../../src/geometry/index.ts";
import type { Piece } from "../../src/model/piece.ts";
import { dxf } from "../../src/output/dxf.ts";
import { cutItems, pairItems } from "../../src/picture/die/cutItems.ts";
import { orderPieces } from "../support/dies.ts";
import { type Audited, audited, ownLayers, pathOf, type Reach } from "../support/dxf.ts";

// What a die maker sees who opens the file and has no drawing, as a reader that is not ours tells it.

const ORDERS = [
  "juniper-headstall.yaml",
  "bramble-headstall.yaml",
  "box-bag.yaml",
  "child-turned-purse.yaml",
];
/** A line this near the cutting edge is taken for one, mm; over a length this short it only ends there. */
const NEAR_MM = 0.1;
const END_MM = 0.3;
/** Fields for the bench, which reach to the outline. */
const FIELDS = ["HAND_SKIVE", "HAND_GLUE", "HAND_TOOLING", "HAND_TRIM"];
const ZONE_LAYERS: Readonly<Record<string, string>> = {
  skive: "HAND_SKIVE",
  glue: "HAND_GLUE",
  tooling: "HAND_TOOLING",
  trim: "HAND_TRIM",
};

const words = ["Cheek, left", "number 7, revision B"];
const pieces = orderPieces(ORDERS);
const singleOf = (piece: Piece, settings: DieSettings, ruleEdge: boolean): string =>
  dxf(cutItems(sidesOf(piece, settings)[0]!.die, { ruleEdge, words }));
const nestedOf = (piece: Piece): string => {
  const { die } = sidesOf(piece, defaultDie())[0]!;
  return dxf(pairItems(die, pairDie(die), { ruleEdge: true, words }));
};

/** How much of a line runs within NEAR_MM of another, mm. */
function lengthNear(path: Path, other: Path): number {
  const count = 2000;
  const all = Array.from({ length: count }, (_, i) => pointAt(path, (pathLength(path) * (i + 0.5)) / count));
  return (all.filter((p) => distanceToPath(p, other) < NEAR_MM).length * pathLength(path)) / count;
}

const cutOf = ({ entities }: Audited): Path =>
  pathOf(entities.find(({ layer }) => layer === "CUT")!.segments!);
const linesOn = ({ entities }: Audited, layers: readonly string[]): readonly Path[] =>
  entities.flatMap(({ layer, segments, closed }) =>
    segments && layers.includes(layer) ? [pathOf(segments, closed === true)] : [],
  );

const held = (inner: Reach, outer: Reach): boolean =>
  inner[0].every((v, i) => v >= outer[0][i]! - 1e-6) && inner[1].every((v, i) => v <= outer[1][i]! + 1e-6);
const gapOf = (a: Reach, b: Reach): number =>
  Math.max(...[0, 1].map((i) => Math.max(a[0][i]! - b[1][i]!, b[0][i]! - a[1][i]!)));
const besides = ["CHECK_50MM", "TEXT"];
const partOf = ({ entities }: Audited): readonly Reach[] =>
  entities.filter(({ layer }) => !besides.includes(layer)).map(({ reach }) => reach);
const textOf = ({ entities }: Audited): readonly string[] => entities.flatMap(({ text }) => text ?? []);

const singles = pieces.map(({ piece }) => singleOf(piece, defaultDie(), true));
const body = pieces.findIndex(({ name }) => name === "box-bag.yaml: body");

const plain = defaultDie();
const other: DieSettings = {
  ...plain,
  rule: "3 pt",
  bevel: "waste side",
  ruleHeight: { ...plain.ruleHeight, value: 30.5 },
  ruleThickness: { ...plain.ruleThickness, value: 1.07 },
  tolerance: { ...plain.tolerance, value: 0.4 },
};
const inOtherRule = singleOf(pieces[0]!.piece, other, false);

const withoutLineType = singles[0]!.replace(/(AcDbLinetypeTableRecord\n {2}2\n)DASHED\n/, "$1OTHER\n");
const withShortExtents = singles[0]!.replace(/(\$EXTMAX\n 10\n)[^\n]+/, "$160.0");

/** One die of each piece, then one nested. */
let all: readonly Audited[] = [];
let faulty: readonly Audited[] = [];
let otherRule: Audited;
beforeAll(() => {
  const texts = [...singles, nestedOf(pieces[body]!.piece)];
  const read = audited([...texts, withoutLineType, withShortExtents, inOtherRule]);
  all = read.slice(0, texts.length);
  faulty = read.slice(texts.length, -1);
  otherRule = read.at(-1)!;
});
const named = pieces.map(({ name, piece }, i) => [name, piece, i, singles[i]!] as const);

describe("layers of a die's DXF", () => {
  test("each has a colour of its own, and a line of its own but for what is steel, which alone is unbroken", () => {
    const looks = Object.assign({}, ...all.map(({ layers }) => layers)) as Audited["layers"];
    const names = Object.keys(looks).filter((name) => name !== "0" && name !== "Defpoints");
    expect(names.length).toBeGreaterThan(13);
    expect(new Set(names.map((name) => looks[name]!.colour)).size).toBe(names.length);
    const drawn = names.filter((name) => name !== "TEXT");
    const unbroken = drawn.filter((name) => all[0]!.lines[looks[name]!.line]!.length === 0);
    expect([...unbroken].sort()).toEqual(["CUT", "CUT_SLOTS", "CUT_TUBES"]);
    const broken = drawn.filter((name) => !unbroken.includes(name));
    const patterns = broken.map((name) => JSON.stringify(all[0]!.lines[looks[name]!.line]));
    expect(new Set(patterns).size).toBe(broken.length);
  });

  test("a line type that is not in the file's table is missed", () => {
    const { layers, lines } = faulty[0]!;
    const missing = Object.values(layers).filter(({ line }) => !Object.keys(lines).includes(line));
    expect(missing.length).toBe(1);
  });

  test("every layer's line type is in the file's table", () => {
    for (const { layers, lines } of all)
      for (const { line } of Object.values(layers)) expect(Object.keys(lines)).toContain(line);
  });

  test.each(named)("%s: another reader has the same layers, colours and lines", (_, __, i, text) => {
    type Tables = {
      layer: { layers: Record<string, { colorIndex: number }> };
      lineType: { lineTypes: Record<string, { pattern?: readonly number[] }> };
    };
    const tables = new DxfParser().parseSync(text)!.tables as unknown as Tables;
    for (const name of ownLayers(all[i]!))
      expect(tables.layer.layers[name]!.colorIndex, name).toBe(all[i]!.layers[name]!.colour);
    for (const [name, lengths] of Object.entries(all[i]!.lines))
      expect(tables.lineType.lineTypes[name]!.pattern ?? [], name).toEqual(lengths);
  });
});

describe("fields for the bench", () => {
  test("there are some of each kind", () => {
    for (const layer of FIELDS)
      expect(all.filter((file) => linesOn(file, [layer]).length > 0).length, layer).toBeGreaterThan(0);
  });

  test.each(named)(
    "%s: no edge of a field runs along the cutting edge, and none inside is left out",
    (_, piece, i) => {
      const cut = cutOf(all[i]!);
      for (const path of linesOn(all[i]!, FIELDS)) {
        expect(lengthNear(path, cut)).toBeLessThan(END_MM);
        expect(path.closed && piece.zones.every(({ kind }) => kind !== "tooling")).toBe(false);
      }
      for (const { kind, outline } of piece.zones) {
        const drawn = linesOn(all[i]!, [ZONE_LAYERS[kind] ?? ""]);
        if (!ZONE_LAYERS[kind]) continue;
        const inside = Array.from({ length: 500 }, (_, k) =>
          pointAt(outline, (pathLength(outline) * k) / 500),
        ).filter((p) => distanceToPath(p, piece.outline) > NEAR_MM);
        for (const p of inside)
          expect(Math.min(...drawn.map((path) => distanceToPath(p, path)))).toBeLessThan(NEAR_MM);
      }
    },
  );

  test("a field that is drawn all round is seen to run along the cutting edge", () => {
    const [, piece, i] = named.find(([, { zones }]) => zones.some(({ kind }) => kind === "skive"))!;
    const field = piece.zones.find(({ kind }) => kind === "skive")!.outline;
    expect(lengthNear(field, cutOf(all[i]!))).toBeGreaterThan(10);
  });
});

describe("what stands beside the part", () => {
  test("a square of 50 mm and the words are at least 20 mm clear of all else, and do not meet", () => {
    for (const file of all) {
      const [square, ...more] = file.entities.filter(({ layer }) => layer === "CHECK_50MM");
      expect(more).toEqual([]);
      const [[x0, y0], [x1, y1]] = square!.reach;
      expect([x1 - x0, y1 - y0].map((v) => Math.abs(v - 50) < 0.001)).toEqual([true, true]);
      for (const part of partOf(file)) expect(gapOf(square!.reach, part)).toBeGreaterThanOrEqual(20);
      const texts = file.entities.filter(({ type }) => type === "TEXT");
      texts.forEach(({ reach, layer }, i) => {
        expect(layer).toBe("TEXT");
        for (const part of partOf(file)) expect(gapOf(reach, part)).toBeGreaterThanOrEqual(20);
        for (const other of [square!, ...texts.slice(i + 1)])
          expect(gapOf(reach, other.reach)).toBeGreaterThan(0);
      });
    }
  });

  test("the header's extents hold everything, words too", () => {
    for (const { extents, reach } of all) {
      expect(held(reach, extents)).toBe(true);
      // They end where the drawing does, but for the words, whose width depends on the reader's letters.
      expect([extents[0][0], extents[1][1]]).toEqual([
        expect.closeTo(reach[0][0], 3),
        expect.closeTo(reach[1][1], 3),
      ]);
    }
  });

  test("extents that leave out the words are seen", () => {
    const { reach, extents } = faulty[1]!;
    expect(held(reach, extents)).toBe(false);
  });
});

describe("words", () => {
  test("which piece, side and revision, which layers are steel, by hand and neither", () => {
    const said = textOf(all[body]!);
    expect(said.slice(0, 2)).toEqual(words);
    const layers = ownLayers(all[body]!);
    const steel = said.find((text) => text.startsWith("Only CUT layers are steel: "))!;
    expect(steel.split(": ")[1]!.split(", ")).toEqual(layers.filter((name) => name.startsWith("CUT")));
    const byHand = said.find((text) => text.startsWith("Made by hand afterwards"))!;
    expect(byHand.split(": ")[1]!.split(", ")).toEqual(layers.filter((name) => name.startsWith("HAND")));
    expect(said.join("\n")).toContain("RULE_FACES: both faces");
    expect(textOf(all.at(-1)!).join("\n")).toContain("BOARD: edge of the board");
  });

  test("rule, bevel, leather and tolerance are those of the order", () => {
    const said = textOf(otherRule).join("\n");
    expect(said).toContain("Rule: 3 pt, 1.07 mm thick, 30.5 mm high; ground on: waste side");
    expect(said).toContain("within 0.4 mm");
    expect(said).toContain(`Leather: ${pieces[0]!.piece.leather.kind}`);
    expect(said).not.toContain("RULE_FACES");
  });
});
