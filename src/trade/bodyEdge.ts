import { pathLength } from "../geometry/length.ts";
import { closedPath, line, openPath, type Path, type Point, rectanglePath } from "../geometry/path.ts";
import { reversed } from "../geometry/transform.ts";
import type { Mark, SeamEdge, Zone } from "../model/piece.ts";
import type { Part, Quantity } from "../model/quantity.ts";
import { printNumber } from "../units/index.ts";
import { acrossSeam } from "./clips.ts";

// What lies along a seam of a bag's body before it is stitched: the strip to glue, and notches; and
// what is said and marked on each piece.

const GLUE = "glue, flesh side";

/** The strip to glue between a cut edge and a line inside it, both run the same way, the leather to their left. */
export function glueAlong(id: string, cut: Path, inner: Path): Zone {
  const back = reversed(inner);
  return {
    id,
    kind: "glue",
    outline: closedPath(cut.start, [...cut.segments, line(back.start), ...back.segments]),
    label: GLUE,
  };
}

/** The strips to glue along an upright edge at `x`, `width` into the leather (positive to the right); mm. */
export const glueStrips = (
  id: string,
  x: number,
  width: number,
  runs: readonly (readonly [from: number, to: number])[],
): readonly Zone[] =>
  runs.map(([from, to], i) => ({
    id: runs.length === 1 ? id : `${id}.${i + 1}`,
    kind: "glue",
    outline: rectanglePath([Math.min(x, x + width), from], Math.abs(width), to - from),
    label: GLUE,
  }));

/** A notch is no deeper than this, mm, and stops halfway to the stitches; common practice, no source. */
const NOTCH_MM = 3;

/** A notch in the middle of a seam, in the cut edge `edge` mm beside it (positive: to its left). */
export function middleNotch({ id, path }: SeamEdge, edge: number): Mark {
  const near = edge - Math.sign(edge) * Math.min(NOTCH_MM, Math.abs(edge) / 2);
  return {
    id: `${id}.notch`,
    kind: "notch",
    path: acrossSeam(path, pathLength(path) / 2, edge, near),
    label: "centre",
  };
}

/** A length read off the drawing, with all that shapes it. */
export function measuredOn(what: string, value: number, inputs: readonly Quantity[]): Quantity {
  const listed = inputs.flatMap((q, i): readonly Part[] => (i === 0 ? [q] : [", ", q]));
  return { value, kind: "length", parts: [`measured ${what}, drawn from `, ...listed], inputs };
}

export const centreLine = (from: Point, to: Point): Mark => ({
  id: "centre",
  kind: "centre",
  path: openPath(from, [line(to)]),
  label: "centre line",
});

/** Radii print to a tenth: a bend is no sharper than what prints alike; mm. */
const SAME_RADIUS_MM = 0.05;

/** What to do at a bend of leather that is `thickest` at its thickest place. */
export function bendNote(what: string, inner: Quantity, thickest: Quantity): string {
  const sharp = inner.value < thickest.value - SAME_RADIUS_MM;
  const groove = sharp ? "; sharper than the leather is thick: groove the flesh side first" : "";
  return `${what}: damp, then bend grain side out to an inner radius of ${printNumber(inner.value, 1)} mm${groove}`;
}

const EDGE_NOTE = "mark the notches on the flesh side; don't cut into an edge that shows";

/** The same words where a die cuts the piece and its notches with it. */
export const notesByDie = (notes: readonly string[]): readonly string[] => [
  ...notes.filter((note) => note !== EDGE_NOTE),
  "the die cuts the notches, as slits in the edge: don't mark them; in an edge that shows they stay visible",
];

/** Words for the bench on a panel's edge, stitched as it lies or inside out. */
export const panelNotes = (turned: boolean): readonly string[] =>
  turned
    ? [
        "lay on the gusset grain side to grain side, stitch, then turn",
        "notch the allowance at the corners after stitching",
      ]
    : [EDGE_NOTE];
