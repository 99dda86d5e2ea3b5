import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { checkDie } from "../../src/die/checks/index.ts";
import { dieFor } from "../../src/die/die.ts";
import { outlineCells, readOutlineCells } from "../../src/die/outlineCells.ts";
import { outlineFromTable, outlineTable } from "../../src/die/outlineTable.ts";
import { defaultDie } from "../../src/die/settings.ts";
import { distanceToPath, type Path, pathLength, pointAt } from "../../src/geometry/index.ts";
import { makeJob } from "../../src/job.ts";

// Real pieces: a die for each piece of a demo order.

const file = "templates/juniper-headstall.yaml";
const made = makeJob(readFileSync(file, "utf8"), file);
if (!made.made) throw new Error(`${file} is not made`);

function furthest(a: Path, b: Path): number {
  const from = (p: Path, q: Path): number =>
    Math.max(
      ...Array.from({ length: 300 }, (_, i) => distanceToPath(pointAt(p, (pathLength(p) * i) / 300), q)),
    );
  return Math.max(from(a, b), from(b, a));
}

describe.each(made.job.made.pieces.map((piece) => [piece.id, piece] as const))("%s", (_, piece) => {
  const die = dieFor(piece, defaultDie());

  test("its outline comes back from the table's words within 0.05 mm", () => {
    const words = outlineTable(die.rules[0]!.path).map((row) => outlineCells(row).join(" | "));
    const back = outlineFromTable(words.map((text) => readOutlineCells(text.split(" | "))));
    expect(furthest(back, piece.outline)).toBeLessThanOrEqual(0.05);
  });

  test("every hole, cutout, fold and skive is marked, once", () => {
    const marked = die.features.flatMap(({ holes }) => holes);
    expect([...marked].sort()).toEqual([...piece.holes, ...piece.cutouts].map(({ id }) => id).sort());
    const others = [...piece.folds, ...piece.zones.filter(({ kind }) => kind === "skive")].map(
      ({ id }) => id,
    );
    for (const id of others) expect(die.features.filter((f) => f.id === id).length, id).toBe(1);
  });

  test("a strap's die is its own mirror image, and nothing in it is too near", () => {
    expect(die.axis).toBeDefined();
    expect(checkDie(die, "in").filter(({ severity }) => severity !== "note")).toEqual([]);
  });
});
