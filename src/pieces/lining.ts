import { anticlockwise, signedArea } from "../geometry/area.ts";
import { boundsOf } from "../geometry/bounds.ts";
import { cornerTurns } from "../geometry/corners.ts";
import { crossings } from "../geometry/crossing.ts";
import { nearestOnPath } from "../geometry/distance.ts";
import { pathLength, pointAt, subPath } from "../geometry/length.ts";
import { offsetPath } from "../geometry/offset.ts";
import { closedPath, line, openPath, type Path, type Point } from "../geometry/path.ts";
import { mirroredInX, reversed } from "../geometry/transform.ts";
import type { Values } from "../model/dimension.ts";
import type { Mark, Piece, Zone } from "../model/piece.ts";
import { greatest, named, type Quantity, sum, times } from "../model/quantity.ts";
import { GLUE_CAUTION } from "../trade/finish.ts";
import { NO_PARTS } from "../trade/parts.ts";
import type { dimensions } from "./liningTable.ts";

export { dimensions } from "./liningTable.ts";

// A lining, developed from the outline of the piece it lines. Both are drawn grain side up and lie flesh to
// flesh, so the lining is that outline mirrored left to right. It has no holes: they are made through it.

export type LiningValues = Values<typeof dimensions>;

/** Below this an allowance is none, mm: less than a knife can follow. */
const NO_ALLOWANCE_MM = 0.01;
/** A sharper turn of the cut line is a corner, 1°; the same as the outline's check has it. */
const CORNER_RAD = Math.PI / 180;

/** Draws the lining of a piece, cut `allowance` outside its edge. */
export function shape(
  d: LiningValues,
  order: { readonly leather: string; readonly count: number },
  of: Piece,
  id: string,
): Piece {
  const finished = anticlockwise(mirroredInX(of.outline));
  const cut = cutLine(finished, d.allowance.value);
  const what = of.name.toLowerCase();
  return {
    id,
    name: `Lining of the ${what}`,
    count: order.count,
    hand: of.hand,
    leather: { kind: order.leather, thickness: d.thickness.value, thickest: d.thickest.value },
    outline: cut,
    corners: cornerTurns(cut)
      .filter(({ turn }) => Math.abs(turn) > CORNER_RAD)
      .map(({ at }, i) => ({ name: `corner ${i + 1}`, at })),
    ...NO_PARTS,
    zones: trimZones(cut, finished, d.allowance.value),
    marks: marksOf(d, of, finished, cut),
    grain: mirroredGrain(of.grain),
    straight: false,
    controls: [],
    sizes: sizesOf(d, of, cut),
    notes: notesOf(d, of, what),
  };
}

/** The finished edge grown or shrunk; where it falls apart, the largest ring. */
function cutLine(finished: Path, allowance: number): Path {
  if (Math.abs(allowance) < NO_ALLOWANCE_MM) return finished;
  const rings = offsetPath(finished, -allowance);
  const size = (p: Path): number => Math.abs(signedArea(p));
  return rings.reduce<Path | undefined>((a, b) => (a && size(a) >= size(b) ? a : b), undefined) ?? finished;
}

/** A direction of the backbone has no sense: from 0 up to half a turn. */
const mirroredGrain = (angle: number): number => (((Math.PI - angle) % Math.PI) + Math.PI) % Math.PI;

/** What is trimmed off, in two halves, so that each is a plain shape without a hole. */
function trimZones(cut: Path, finished: Path, allowance: number): readonly Zone[] {
  if (allowance < NO_ALLOWANCE_MM) return [];
  const length = pathLength(cut);
  return [0, 1].map((k) => {
    const [from, to] = [(k * length) / 2, ((k + 1) * length) / 2];
    const outer = subPath(cut, from, to);
    const [a, b] = [from, to].map((s) => nearestOnPath(pointAt(cut, s), finished).at) as [number, number];
    const inner = reversed(subPath(finished, a, b));
    const outline = closedPath(outer.start, [...outer.segments, line(inner.start), ...inner.segments]);
    return { id: `trim.${k + 1}`, kind: "trim", outline, label: "trim" };
  });
}

const across = ([x, y]: Point): Point => [0 - x, y];

/** The part of a straight mark that lies on the lining. */
function onLining(cut: Path, path: Path): Path {
  const met = crossings(cut, path);
  if (met.length < 2) return path;
  const along = met.map((p) => ({ p, at: nearestOnPath(p, path).at })).sort((a, b) => a.at - b.at);
  return openPath(along[0]!.p, [line(along.at(-1)!.p)]);
}

/** Prongs and studs are set before the lining goes in; what a strap or tongue goes through is cut in it too. */
const THROUGH = new Set(["strap slot", "tuck-in slot"]);

function marksOf(d: LiningValues, of: Piece, finished: Path, cut: Path): readonly Mark[] {
  const what = of.name.toLowerCase();
  const edge: Mark = { id: "edge", kind: "place", path: finished, label: `edge of the ${what}` };
  const folds = of.folds.map(
    (f): Mark => ({
      id: `fold.${f.id}`,
      kind: "crease",
      path: onLining(cut, openPath(across(f.from), [line(across(f.to))])),
      label: f.label,
    }),
  );
  const slots = of.cutouts
    .filter((c) => THROUGH.has(c.use))
    .map(
      (c): Mark => ({
        id: `slot.${c.id}`,
        kind: "place",
        path: anticlockwise(mirroredInX(c.outline)),
        label: `${c.use}: cut it through after glueing`,
      }),
    );
  return [...(d.allowance.value > NO_ALLOWANCE_MM ? [edge] : []), ...folds, ...slots];
}

/** Sizes over all that the allowance adds to; a piece that comes to a tip grows otherwise there. */
function sizesOf(d: LiningValues, of: Piece, cut: Path): readonly Quantity[] {
  const [was, is] = [boundsOf(of.outline), boundsOf(cut)];
  const near = (a: number, b: number): boolean => Math.abs(a - b) < NO_ALLOWANCE_MM;
  const grown = (name: string, before: number, after: number): readonly Quantity[] => {
    // Where several sizes are that large, whichever grows decides.
    const alike = of.sizes.filter((q) => near(q.value, before));
    const [first] = alike;
    const size = first && { ...greatest(first, ...alike), inputs: alike };
    if (!size || !near(before + 2 * d.allowance.value, after)) return [];
    return [named(`lining of the ${of.name.toLowerCase()}, ${name}`, sum(size, times(2, d.allowance)))];
  };
  return [
    ...grown("width", was.maxX - was.minX, is.maxX - is.minX),
    ...grown("height", was.maxY - was.minY, is.maxY - is.minY),
    d.allowance,
  ];
}

function notesOf(d: LiningValues, of: Piece, what: string): readonly string[] {
  const a = d.allowance.value;
  return [
    a > NO_ALLOWANCE_MM
      ? `glue it in flesh to flesh, then trim it flush with the ${what}; make its stitch holes through the ${what}'s`
      : `glue it in flesh to flesh, its edge ${a < -NO_ALLOWANCE_MM ? "inside" : "on"} the edge of the ${what}`,
    ...(of.folds.length > 0
      ? [`glue it with the ${what} bent as in use: laid flat it wrinkles in the folds`]
      : []),
    GLUE_CAUTION,
  ];
}
