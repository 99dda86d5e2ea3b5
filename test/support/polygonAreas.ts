import type { Polygon } from "polygon-clipping";
import { flatten } from "../../src/geometry/flatten.ts";
import type { Path } from "../../src/geometry/path.ts";

/** As the clipping library takes it; arcs followed from inside within 0.0005 mm. */
export const ring = (path: Path, within = 0.0005): Polygon => [
  flatten(path, within).map(([x, y]): [number, number] => [x, y]),
];
const shoelace = (p: readonly (readonly [number, number])[]): number =>
  Math.abs(
    p.reduce((s, [x, y], i) => {
      const [u, v] = p[(i + 1) % p.length]!;
      return s + x * v - u * y;
    }, 0) / 2,
  );
/** Areas of outlines less their holes, by the shoelace formula. */
export const areaOf = (all: readonly Polygon[]): number =>
  all.reduce((s, [outer, ...holes]) => s + shoelace(outer!) - holes.reduce((h, r) => h + shoelace(r), 0), 0);
