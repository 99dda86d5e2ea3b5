// A path as SVG writes it: millimetres, y turned over.
import { type Path, type Point, type Segment, withStarts } from "../geometry/path.ts";
import { shortArcs } from "./curves.ts";
import { num } from "./number.ts";

const at = ([x, y]: Point, height: number): string => `${num(x)} ${num(height - y)}`;

function segmentData(from: Point, segment: Segment, height: number): string {
  if (segment.kind === "line") return `L${at(segment.to, height)}`;
  if (segment.kind === "cubic")
    return `C${[segment.c1, segment.c2, segment.to].map((p) => at(p, height)).join(" ")}`;
  // With y turned over, an arc that ran anticlockwise still looks so: SVG's sweep 0.
  const turn = segment.ccw ? 0 : 1;
  return shortArcs(from, segment)
    .map(({ to, radius }) => `A${num(radius)} ${num(radius)} 0 0 ${turn} ${at(to, height)}`)
    .join("");
}

/** The data of a path on a drawing of that height, mm. */
export const pathData = (path: Path, height: number): string =>
  `M${at(path.start, height)}${withStarts(path)
    .map(({ from, segment }) => segmentData(from, segment, height))
    .join("")}${path.closed ? "Z" : ""}`;
