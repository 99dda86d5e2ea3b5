// The safety net under the exact offset: the same outline as a polygon, offset by clipper2-ts. Coarser
// (chords, no arcs), but it always knows into how many pieces a shape falls.
import { EndType, inflatePathsD, JoinType } from "clipper2-ts";
import { flatten } from "./flatten.ts";
import { type Path, polyline } from "./path.ts";

/** Chords of outline and of rounded corners stray by no more than this, together half of 0.01 mm. */
const CHORD_MM = 0.002;
/** Decimals of a millimetre that the polygon is worked in. */
const DECIMALS = 5;
/** Mitres are not used; the library wants a value. */
const MITRE = 2;

/** The anticlockwise outline grown by `grow` mm (shrunk if below 0), as polygons. */
export function polygonOffset(outline: Path, grow: number): Path[] {
  const points = flatten(outline, CHORD_MM).map(([x, y]) => ({ x, y }));
  const rings = inflatePathsD([points], grow, JoinType.Round, EndType.Polygon, MITRE, DECIMALS, CHORD_MM);
  return rings.map((ring) =>
    polyline(
      ring.map(({ x, y }) => [x, y] as const),
      true,
    ),
  );
}
