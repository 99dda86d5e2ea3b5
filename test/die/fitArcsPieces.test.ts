import { readdirSync, readFileSync } from "node:fs";
import { svgPathProperties } from "svg-path-properties";
import { describe, expect, test } from "vitest";
import { ARC_FIT_MM, fitArcs } from "../../src/die/fitArcs.ts";
import { outlineTable } from "../../src/die/outlineTable.ts";
import { mirrorAxis } from "../../src/die/symmetry.ts";
import { distanceToPath, type Path, type Point, withStarts } from "../../src/geometry/index.ts";
import { makeJob } from "../../src/job.ts";
import { svgData } from "../geometry/shapes.ts";

// Every piece with a curve of every demo order and every order of the tests.

const pieces = ["templates", "fixtures/orders"].flatMap((folder) =>
  readdirSync(folder)
    .filter((file) => file.endsWith(".yaml"))
    .flatMap((file) => {
      const made = makeJob(readFileSync(`${folder}/${file}`, "utf8"), file);
      // A shop's own settings stand beside the orders and make nothing.
      if (!made.made) return [];
      return made.job.made.pieces
        .filter(({ outline }) => outline.segments.some(({ kind }) => kind === "cubic"))
        .map((piece) => [`${file} ${piece.id}`, piece.outline] as const);
    }),
);

/** Points about 1 mm apart along each segment by itself, found by another library. */
function outsidePoints(path: Path): readonly Point[] {
  return withStarts(path).flatMap(({ from, segment }) => {
    const outside = new svgPathProperties(svgData({ start: from, segments: [segment], closed: false }));
    const total = outside.getTotalLength();
    const count = Math.min(Math.ceil(total), 150);
    return Array.from({ length: count + 1 }, (_, i) => {
      const { x, y } = outside.getPointAtLength((total * i) / count);
      return [x, y] as const;
    });
  });
}

/** Rows of the longest table that was reached. */
const MOST_ROWS = 18;

test("the orders have pieces with curves", () => {
  expect(pieces.length).toBeGreaterThan(15);
});

describe.each(pieces)("%s", (_, outline) => {
  const { path, error } = fitArcs(outline);

  test("within 0.05 mm both ways, and in few arcs", () => {
    const there = Math.max(...outsidePoints(outline).map((p) => distanceToPath(p, path)));
    const back = Math.max(...outsidePoints(path).map((p) => distanceToPath(p, outline)));
    expect(Math.max(there, back)).toBeLessThanOrEqual(0.05);
    expect(error).toBeLessThanOrEqual(ARC_FIT_MM);
    expect(outlineTable(path).length).toBeLessThanOrEqual(MOST_ROWS);
  });

  test("no arc or line is a sliver", () => {
    for (const { from, segment } of withStarts(path))
      expect(Math.hypot(segment.to[0] - from[0], segment.to[1] - from[1])).toBeGreaterThan(0.5);
  });

  test("both halves are alike to 0.001 mm, radii to the last digit", () => {
    const axis = mirrorAxis(outline, [])!;
    expect(axis).toBeDefined();
    const upright = Math.abs(Math.cos(axis.angle)) < 0.5 ? 0 : 1;
    const middle = outline.segments.map(({ to }) => to[upright]);
    const twice = Math.min(...middle) + Math.max(...middle);
    const rows = outlineTable(path);
    const image = ([x, y]: Point): Point => (upright === 0 ? [twice - x, y] : [x, twice - y]);
    const near = (p: Point, q: Point): boolean => Math.hypot(p[0] - q[0], p[1] - q[1]) < 0.0016;
    for (const row of rows) {
      const twin = rows.find(
        (other) => near(other.start, image(row.end)) && near(other.end, image(row.start)),
      );
      expect(twin?.kind, `row ${row.number}`).toBe(row.kind);
      if (row.kind === "arc" && twin?.kind === "arc") {
        expect(twin.radius).toBe(row.radius);
        expect(near(twin.centre, image(row.centre))).toBe(true);
      }
    }
  });
});
