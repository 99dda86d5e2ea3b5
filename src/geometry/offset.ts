import { anticlockwise, signedArea } from "./area.ts";
import { boundsOf } from "./bounds.ts";
import { type Curve, curvesOf, pathOf } from "./curve.ts";
import { pathLength } from "./length.ts";
import { type Chain, chainPieces } from "./offset-chain.ts";
import { rawOffset } from "./offset-curves.ts";
import { polygonOffset } from "./offset-net.ts";
import { type OffsetPiece, offsetPieces } from "./offset-pieces.ts";
import { circlePath, type Path, SAME_POINT_MM } from "./path.ts";
import { reversed } from "./transform.ts";
import { apart } from "./vector.ts";

/** A ring thinner than this over its length is nothing: a blade cannot cut inside it. */
const THINNEST_MM = 5 * SAME_POINT_MM;
/** Left-over pieces shorter than this in all are slivers between cuts that lie a hair apart. */
const SLIVER_MM = 0.1;
/** Exact rings and polygons that stand apart by less than this all round are the same. */
const AGREES_MM = 0.005;

function chainPath({ pieces, closed }: Chain): Path {
  const curves = pieces.map(({ curve }) => curve);
  const start = curves[0]!.p0;
  if (!closed) return pathOf(start, curves);
  // A ring ends exactly where it began, also where a crumb dropped out.
  return pathOf(start, [...curves.slice(0, -1), { ...curves.at(-1)!, p1: start }], true);
}

/** The line all round an open path at the distance of the offset: its other side and its ends. */
function otherSides(curves: readonly Curve[], d: number): readonly Curve[] {
  const ends = [curves[0]!.p0, curves.at(-1)!.p1].flatMap((end) => curvesOf(circlePath(end, Math.abs(d))));
  return [...rawOffset(curves, false, -d), ...ends];
}

function isThin(ring: Path): boolean {
  const { minX, minY, maxX, maxY } = boundsOf(ring);
  return Math.abs(signedArea(ring)) < THINNEST_MM * Math.max(maxX - minX, maxY - minY);
}

const lengthOf = (pieces: readonly OffsetPiece[]): number =>
  pieces.reduce((sum, { curve }) => sum + apart(curve.p0, curve.p1), 0);

function offsetOpen(path: Path, d: number): Path[] {
  const source = curvesOf(path);
  const raw = rawOffset(source, false, d);
  const pieces = offsetPieces(raw, otherSides(source, d), source, Math.abs(d), true);
  return chainPieces(pieces, d).chains.map(chainPath);
}

function offsetClosed(path: Path, d: number): Path[] {
  const source = curvesOf(path);
  const raw = rawOffset(source, true, d);
  const { chains, leftOver } = chainPieces(offsetPieces(raw, [], source, Math.abs(d), false), d);
  const area = signedArea(path);
  const shrinks = area * d > 0;
  const rings = chains
    .map(chainPath)
    .filter((ring) => !isThin(ring) && !(shrinks && signedArea(ring) * area < 0));
  return lengthOf(leftOver) > SLIVER_MM ? checked(rings, path, d) : rings;
}

/** The rings if they agree with the polygon offset in number and area; its rings if not. */
function checked(rings: Path[], path: Path, d: number): Path[] {
  const clockwise = signedArea(path) < 0;
  const polygons = polygonOffset(anticlockwise(path), clockwise ? d : -d).filter((ring) => !isThin(ring));
  const areaOf = (all: readonly Path[]): number =>
    all.reduce((sum, ring) => sum + Math.abs(signedArea(ring)), 0);
  const round = polygons.reduce((sum, ring) => sum + pathLength(ring), 0);
  const agree =
    rings.length === polygons.length && Math.abs(areaOf(rings) - areaOf(polygons)) <= AGREES_MM * round;
  return agree ? rings : clockwise ? polygons.map(reversed) : polygons;
}

/**
 * The line at distance |d| (mm) beside the path, to its left for d > 0 and to its right for d < 0. So for an
 * anticlockwise outline d > 0 lies inside and d < 0 outside; for a clockwise hole d > 0 lies in the material.
 *
 * Lines stay lines, arcs stay arcs, cubics become cubics within 0.001 mm. Corners that close are cut at the
 * crossing, corners that open are rounded with an arc. A closed path may fall into several rings, enclose
 * holes when it grows (these run the other way), or vanish ([]). An open path gives open paths (no caps),
 * without what would come nearer than |d| to any part of it. Every point lies at |d| from the path, within
 * 0.002 mm for cubics and 0.0001 mm otherwise. Should the exact rings not close (seen on no shape so far),
 * polygons within 0.005 mm stand in for them.
 *
 * The path must not cross itself. Throws a RangeError when d is not a finite number.
 */
export function offsetPath(path: Path, d: number): Path[] {
  if (!Number.isFinite(d)) throw new RangeError(`offsetPath: cannot offset by ${d} mm`);
  if (curvesOf(path).length === 0) return [];
  if (d === 0) return [path];
  return path.closed ? offsetClosed(path, d) : offsetOpen(path, d);
}
