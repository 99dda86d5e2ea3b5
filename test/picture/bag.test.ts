import { beforeAll, describe, expect, test } from "vitest";
import { boundsOf } from "../../src/geometry/bounds.ts";
import { line, openPath, rectanglePath } from "../../src/geometry/path.ts";
import type { AssemblyStep, Capacity } from "../../src/model/article.ts";
import type { Piece } from "../../src/model/piece.ts";
import { leaf } from "../../src/model/quantity.ts";
import { flattenPicture } from "../../src/picture/flat.ts";
import type { Picture, Stroke, Words } from "../../src/picture/picture.ts";
import { sayFold, sayMate } from "../../src/picture/piece/say.ts";
import { pictureOfPiece, piecePicture } from "../../src/picture/piece.ts";
import { textBox } from "../../src/picture/words.ts";
import * as bag from "../support/bagPieces.ts";
import { cutWords, overlaps } from "../support/overlaps.ts";
import { paper } from "../support/papers.ts";
import * as samples from "../support/samplePieces.ts";
import { type Made, makeAfresh, TITLE, textsOn } from "../support/sheets.ts";

const PIECES = bag.bagPieces();
const strokesOf = (picture: Picture): readonly Stroke[] =>
  flattenPicture(picture).flatMap(({ item }) => (item.kind === "stroke" ? [item] : []));
const wordsOf = (picture: Picture): readonly Words[] =>
  flattenPicture(picture).flatMap(({ item }) => (item.kind === "words" ? [item] : []));
const textsOf = (picture: Picture): readonly string[] => wordsOf(picture).map((w) => w.text);
const timesSaid = (picture: Picture, words: string): number =>
  textsOf(picture).join(" ").split(words).length - 1;
const drawn = (piece: Piece): Picture => piecePicture(piece, "mm");

describe.each(PIECES.map((p) => [p.id, p] as const))("the picture of a bag's %s", (_, piece) => {
  test.each(["mm", "in"] as const)("in %s: words lie on nothing, none is cut off or lost", (units) => {
    const picture = piecePicture(piece, units);
    expect(overlaps(picture)).toEqual([]);
    expect(cutWords(picture)).toEqual([]);
    expect(pictureOfPiece(piece, { units, controls: piece.controls }).unplaced).toEqual([]);
  });
});

describe("notches, clips, glue and trim", () => {
  const gusset = drawn(bag.gusset());
  const front = drawn(bag.front());
  const lineOf = (picture: Picture, id: string): Stroke => strokesOf(picture).find((s) => s.id === id)!;

  test("have lines of their own, told apart without colour", () => {
    expect(lineOf(gusset, "mark.clip.front.160")).toMatchObject({ line: "01.2", layer: "cut" });
    // Marked on the flesh side: a cut in an edge that shows stays visible.
    expect(lineOf(gusset, "mark.notch.front.350")).toMatchObject({ line: "01.1", layer: "mark" });
    expect(lineOf(front, "zone.glue").line).toBe("07.1");
    expect(lineOf(gusset, "zone.trim.1").line).toBe("08.1");
  });

  test("a notch has a triangle outside its edge, a clip has none", () => {
    const triangles = strokesOf(gusset).filter(
      ({ path, fill, layer }) => layer === "mark" && !fill && path.closed && path.segments.length === 3,
    );
    const outline = boundsOf(lineOf(gusset, "outline").path);
    // Three on either edge; the strip has ten clips an edge besides.
    expect(triangles).toHaveLength(6);
    for (const { path } of triangles) {
      const box = boundsOf(path);
      expect(box.minY > outline.maxY || box.maxY < outline.minY).toBe(true);
    }
  });

  test("are each named once, however many there are", () => {
    expect(timesSaid(gusset, "clip here, stop before the stitches")).toBe(1);
    expect(timesSaid(gusset, "notch: meets the front's")).toBe(1);
    expect(timesSaid(gusset, "trim flush after stitching")).toBe(1);
    expect(timesSaid(front, "notch: meets the gusset's")).toBe(1);
    expect(textsOf(front).filter((t) => t === "glue")).toHaveLength(1);
  });

  test("a notch whose label is a bare name is called a notch", () => {
    const marks = bag.front().marks.map((m) => ({ ...m, label: m.id === "centre" ? "centre" : "quarter" }));
    const texts = textsOf(drawn(bag.front({ marks })));
    expect(texts.filter((t) => t === "centre notch")).toHaveLength(1);
    expect(texts.filter((t) => t === "quarter notch")).toHaveLength(1);
  });
});

describe("seams", () => {
  const numbersOn = (picture: Picture): readonly number[] =>
    textsOf(picture)
      .filter((t) => /^\d+$/.test(t))
      .map(Number)
      .sort((a, b) => a - b);
  const tens = Array.from({ length: 15 }, (_, i) => 10 * (i + 1));

  test("numbers go on over the runs of one seam, each at its own hole", () => {
    const piece = bag.front();
    const picture = drawn(piece);
    expect(numbersOn(picture)).toEqual(tens);
    const asked = piece.holes.find((h) => h.id === "gusset.110")!.at;
    const outline = boundsOf(strokesOf(picture).find((s) => s.id === "outline")!.path);
    const own = boundsOf(piece.outline);
    const at = wordsOf(picture).find((w) => w.text === "110")!.at;
    const [dx, dy] = [at[0] - outline.minX + own.minX - asked[0], at[1] - outline.minY + own.minY - asked[1]];
    expect(Math.hypot(dx, dy)).toBeLessThan(9);
  });

  test("a hole that ends one run and begins the next is ticked and numbered once", () => {
    const path = openPath([0, 20], [line([300, 20])]);
    // Hole 20 is the cut between the runs: 19 stitches, then 40.
    const laid = bag.sewn("side", path, [19, 40], [100], { joins: "front to back: edge" });
    expect(laid.seams.map((s) => [s.numberFrom ?? 1, s.holes[0], s.holes.at(-1)])).toEqual([
      [1, "side.1", "side.20"],
      [20, "side.20", "side.60"],
    ]);
    const picture = drawn(samples.panel("front", 400, 300, { ...laid, zones: [] }));
    expect(numbersOn(picture)).toEqual([10, 20, 30, 40, 50, 60]);
    const ticks = strokesOf(picture).filter((s) => {
      const box = boundsOf(s.path);
      return s.layer === "stitch" && s.id === undefined && Math.abs(box.maxY - box.minY - 2.5) < 0.01;
    });
    expect(ticks).toHaveLength(6);
  });

  test("a groove has its line, its ticks and its numbers, and no hole", () => {
    const picture = drawn(bag.gusset());
    const ids = strokesOf(picture).map((s) => s.id ?? "");
    expect(ids).toContain("seam.back");
    expect(ids.filter((id) => id.startsWith("hole.back."))).toEqual([]);
    expect(ids.filter((id) => id.startsWith("hole.front."))).toHaveLength(151);
    expect(numbersOn(picture)).toEqual([...tens, ...tens].sort((a, b) => a - b));
    expect(timesSaid(picture, "a groove without holes")).toBe(1);
  });

  test("punched stitch holes are rings without crosses", () => {
    const piece = bag.body();
    const strokes = strokesOf(drawn(piece));
    expect(strokes.filter((s) => s.id?.startsWith("hole."))).toHaveLength(piece.holes.length);
    expect(strokes.filter((s) => s.layer === "hole")).toEqual([]);
    expect(timesSaid(drawn(piece), "holes 1.4 mm")).toBe(2);
  });

  test("say once with what they are sewn, whatever their runs", () => {
    const front = drawn(bag.front());
    expect(timesSaid(front, "to gusset: 150 stitches")).toBe(1);
    const gusset = drawn(bag.gusset());
    // 684 mm in 150 stitches.
    expect(timesSaid(gusset, "to front: 150 stitches of 4.56 mm")).toBe(1);
    expect(timesSaid(gusset, "to back: 150 stitches of 4.56 mm")).toBe(1);
    expect(timesSaid(drawn(bag.body()), "to side gusset: 121 stitches")).toBe(2);
  });

  test.each([
    ["front to gusset", "front", "Front", "to gusset"],
    ["front to gusset", "gusset", "Gusset", "to front"],
    ["body left to side gusset", "side-gusset", "Side gusset", "to body left"],
    ["body left to side gusset", "body", "Body", "to side gusset"],
    ["front to gusset to lining", "gusset", "Gusset", "to front and lining"],
    ["hem", "pocket", "Pocket", "seam hem"],
  ])("the seam %s on %s", (seam, id, name, words) => {
    expect(sayMate(seam, { id, name })).toBe(words);
  });
});

test("folds say their inner radius, and when the grain side is inside", () => {
  const fold = bag.back().folds[0]!;
  expect(sayFold(fold)).toBe("fold over the back, inner radius 4 mm");
  expect(sayFold({ ...fold, bend: { ...fold.bend!, inside: "grain" } })).toBe(
    "fold over the back, inner radius 4 mm, grain side inside",
  );
  expect(sayFold(samples.cheekLike().folds[0]!)).toBe("fold round the buckle bar");
});

describe("lengths to check on wide pieces", () => {
  test("keep off a seam, so that its numbers have room", () => {
    const piece = bag.body();
    const numbers = textsOf(drawn(piece)).filter((t) => /^\d+$/.test(t));
    // 122 holes on either side: 10 to 120, twice.
    expect(numbers).toHaveLength(24);
  });

  test("a slanted one has its words close beside it, near its middle", () => {
    const controls = [{ from: [-121, 192], to: [0, 0], words: "corner to middle" }] as const;
    const picture = drawn(bag.front({ controls }));
    const said = wordsOf(picture).filter((w) => w.text.startsWith("check corner to middle"));
    // √(121² + 192²) = 226.95.
    expect(said.map((w) => w.text)).toEqual(["check corner to middle: 226.9 mm"]);
    expect(overlaps(picture)).toEqual([]);
    const box = boundsOf(strokesOf(picture).find((s) => s.id === "outline")!.path);
    const { minX, maxX, minY, maxY } = textBox(said[0]!);
    const middle = [(box.minX + box.maxX) / 2 - 60.5, box.minY + 96] as const;
    expect(Math.hypot((minX + maxX) / 2 - middle[0], (minY + maxY) / 2 - middle[1])).toBeLessThan(70);
    const way = [121 / 226.95, -192 / 226.95] as const;
    const off = ([x, y]: readonly [number, number]): number =>
      Math.abs(way[0] * (y - middle[1]) - way[1] * (x - middle[0]));
    const near = Math.min(off([minX, minY]), off([minX, maxY]), off([maxX, minY]), off([maxX, maxY]));
    // The line lies 7 mm beside its points.
    expect(near).toBeLessThan(10);
  });
});

test("on a wide piece that folds cut up into strips, words are folded or turned rather than lost", () => {
  const at = [-23, 0, 23];
  const folds = at.map((x, i) => ({
    id: `f${i}`,
    from: [x, 0] as const,
    to: [x, 170] as const,
    label: `fold ${i + 1} of the web, damp it, and turn it over the bench's edge`,
  }));
  const notes = ["press the middle fold inward before you stitch, and let it dry under a weight"];
  const piece = samples.samplePiece("web", rectanglePath([-36, 0], 72, 170), { folds, notes });
  const { unplaced } = pictureOfPiece(piece, { units: "in" });
  expect(unplaced).toEqual([]);
  expect(overlaps(piecePicture(piece, "in"))).toEqual([]);
});

const STEPS: readonly AssemblyStep[] = [
  { name: "back to gusset", does: "stitch", after: ["front to gusset"], reaches: [], shuts: [] },
  { name: "Stud on the front", does: "fix", after: [], reaches: [], shuts: [] },
  { name: "front to gusset", does: "stitch", after: ["Stud on the front"], reaches: [], shuts: [] },
];
const CAPACITY: Capacity = {
  volume: leaf("capacity", 2_340_000, "ratio", { kind: "fact", source: "by hand" }),
  inside: [240, 180, 60],
  things: [
    { name: "phone", sizes: [160, 78, 10], goes: true, source: "common practice, no source" },
    { name: "A5 book", sizes: [210, 148, 20], goes: true, source: "ISO 216" },
    { name: "A4 pad", sizes: [297, 210, 10], goes: false, source: "ISO 216" },
  ],
  wanted: "phone",
};

describe("sheets of a bag", () => {
  let made: Made;
  const words = { ...TITLE, article: "bag" };
  beforeAll(() => {
    made = makeAfresh(PIECES, { paper: paper("letter") }, { words, assembly: STEPS, capacity: CAPACITY });
  });

  test("words lie on nothing; none is cut off but a joining mark's number", () => {
    for (const picture of made.pictures) {
      expect(overlaps(picture), picture.title).toEqual([]);
      expect(
        cutWords(picture).filter((w) => !/^\d+$/.test(w)),
        picture.title,
      ).toEqual([]);
    }
  });

  const NEW = [
    "notch, by its triangle",
    "clips:",
    "in a groove",
    "ring for every hole",
    "band to glue",
    "08.1",
  ];
  test("the first sheet explains the lines that are used, and on other jobs none of them", () => {
    const said = textsOn(made.pictures[0]!).join(" ");
    for (const part of NEW) expect(said).toContain(part);
    const other = textsOn(makeAfresh(samples.sampleHeadstall(), { paper: paper("letter") }).pictures[0]!);
    for (const part of [...NEW, "Put together", "Holds"]) expect(other.join(" ")).not.toContain(part);
  });

  test("the first sheet says how it is put together, each step after what it needs", () => {
    const said = textsOn(made.pictures[0]!).join(" ");
    expect(said).toContain("Put together in this order");
    const at = ["Fix stud on the front.", "Stitch front to gusset.", "Stitch back to gusset."].map((s) =>
      said.indexOf(s),
    );
    expect(Math.min(...at)).toBeGreaterThan(0);
    expect(at).toEqual([...at].sort((a, b) => a - b));
  });

  test("the first sheet says what it holds", () => {
    const said = textsOn(made.pictures[0]!).join(" ");
    for (const part of [
      "About 2.3 litres; inside, width × height × depth: 240 × 180 × 60 mm.",
      "Goes in: phone and A5 book.",
      "Does not go in: A4 pad.",
      "Ordered to hold: phone.",
    ])
      expect(said).toContain(part);
  });
});
