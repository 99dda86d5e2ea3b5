import { describe, expect, test } from "vitest";
import { defaultDie } from "../../src/die/settings.ts";
import { sidesOf } from "../../src/die/sides.ts";
import { distanceToPath, type Path, type Point, pathLength, pointAt } from "../../src/geometry/index.ts";
import { dieFiles, diesOf, makeJob } from "../../src/job.ts";
import type { Piece } from "../../src/model/piece.ts";
import { dieOf } from "../support/dies.ts";
import { bold, font } from "../support/fonts.ts";
import { orderFiles } from "../support/orders.ts";

const ORDER = "juniper-headstall.yaml";
const cheek = dieOf(ORDER, "cheek").piece;
const crown = dieOf(ORDER, "crown").piece;
const settings = defaultDie();
const slugs = (piece: Piece): readonly string[] => sidesOf(piece, settings).map(({ slug }) => slug);

const round = cheek.holes.findIndex(({ kind }) => kind === "round");
/** The cheek with one round hole off its middle: no longer its own mirror image. */
const lopsided: Piece = {
  ...cheek,
  holes: cheek.holes.map((h, i) => (i === round ? { ...h, at: [h.at[0], h.at[1] + 2] } : h)),
  grain: 0.3,
};

const along = (path: Path): readonly Point[] =>
  Array.from({ length: 100 }, (_, i) => pointAt(path, (pathLength(path) * i) / 100));

describe("which dies a piece needs", () => {
  test("one when all are alike; one for both when it is its own mirror image; else a left and a right", () => {
    expect(slugs(crown)).toEqual(["as-drawn"]);
    expect(slugs(cheek)).toEqual(["left-and-right"]);
    expect(slugs(lopsided)).toEqual(["left", "right"]);
    expect(slugs({ ...lopsided, hand: "same" })).toEqual(["as-drawn"]);
  });

  test("the right is the left's mirror image, feature by feature, under the same names and letters", () => {
    const [left, right] = sidesOf(lopsided, settings).map(({ die }) => die);
    expect(right!.features.map(({ id, letter, made }) => [id, letter, made])).toEqual(
      left!.features.map(({ id, letter, made }) => [id, letter, made]),
    );
    for (const [i, feature] of left!.features.entries()) {
      const other = right!.features[i]!;
      expect(other.at[0]).toBeCloseTo(feature.at[0], 9);
      expect(other.at[1]).toBeCloseTo(-feature.at[1], 9);
      feature.paths.forEach((path, k) => {
        for (const [x, y] of along(path)) expect(distanceToPath([x, -y], other.paths[k]!)).toBeLessThan(1e-6);
      });
    }
    expect(right!.load.value).toBeCloseTo(left!.load.value, 3);
    expect(right!.piece.grain).toBe(-0.3);
  });

  test("each side has files of its own, and a nested pair is a left and a right", async () => {
    const { name, text } = orderFiles.find((o) => o.name === ORDER)!;
    const made = makeJob(text, name);
    if (!made.made) throw new Error("the demo order has faults");
    const dies = diesOf(made.job, made.die, lopsided);
    const files = await dieFiles(made.job, dies, { font, bold, nest: true });
    const names = files.map(({ path }) => path).filter((path) => !path.includes("-sheet-"));
    const own = (side: string): readonly string[] => [
      `die-cheek-${side}-A.pdf`,
      `die-cheek-${side}-A.svg`,
      `die-cheek-${side}-A.dxf`,
      `plotter-cheek-${side}-A.svg`,
    ];
    expect(names).toEqual([
      ...own("left"),
      ...own("right"),
      "template-cheek-A.pdf",
      "die-cheek-pair-A.pdf",
      "die-cheek-pair-A.svg",
      "die-cheek-pair-A.dxf",
    ]);
    const sheet = String(files.find(({ path }) => path === "die-cheek-pair-A.svg")!.data);
    expect(sheet).toContain("a left and a right");
    expect(sheet).toContain("turn it over about its x axis");
  });
});
