// Adding, taking away and intersecting areas. Curves stay curves: lines come back as lines, cubics as cubics;
// arcs come back as cubics within 0.0001 mm of them, and so do points (grid of 0.0001 mm).
import { signedArea } from "./area.ts";
import { boundsOf, boxesMeet, unionBox } from "./bounds.ts";
import { containsPoint } from "./contains.ts";
import { combined } from "./kernel.ts";
import { pathLength, pointAt } from "./length.ts";
import { type Box, type Path, SAME_POINT_MM } from "./path.ts";
import { reversed } from "./transform.ts";

/** An area: one closed outline, or outlines and holes as the functions here give them back. */
export type Region = Path | readonly Path[];

function isSliver(ring: Path): boolean {
  const { minX, minY, maxX, maxY } = boundsOf(ring);
  return Math.abs(signedArea(ring)) < SAME_POINT_MM * Math.max(maxX - minX, maxY - minY);
}

/** Outlines anticlockwise, holes clockwise: a hole lies inside an odd number of the other rings. */
function directed(rings: readonly Path[]): Path[] {
  return rings.map((ring) => {
    // Any point will do that is no joint, where rings may touch.
    const point = pointAt(ring, pathLength(ring) / Math.PI);
    const around = rings.filter((other) => other !== ring && containsPoint(other, point)).length;
    const clockwise = signedArea(ring) < 0;
    return clockwise === (around % 2 === 1) ? ring : reversed(ring);
  });
}

function ringsOf(region: Region): readonly Path[] {
  const rings = "segments" in region ? [region] : region;
  if (rings.some((ring) => !ring.closed)) throw new RangeError("an open path has no area");
  return directed(rings);
}

type Group = { readonly rings: readonly Path[]; readonly box: Box };

const boxOf = (rings: readonly Path[]): Box => unionBox(rings.map(boundsOf));

/** The groups with a region added; those that it touches become one, in the place of the first of them. */
function joined(groups: readonly Group[], rings: readonly Path[]): readonly Group[] {
  const box = boxOf(rings);
  const touched = groups.filter((group) => boxesMeet(group.box, box, SAME_POINT_MM));
  if (touched.length === 0) return [...groups, { rings, box }];
  const all = touched.slice(1).map((group) => group.rings);
  const sum = [...all, rings].reduce((a, b) => directed(combined("unite", a, b)), touched[0]!.rings);
  const group = { rings: sum, box: unionBox([box, ...touched.map((one) => one.box)]) };
  return groups.flatMap((one) => (one === touched[0] ? [group] : touched.includes(one) ? [] : [one]));
}

/** Rings that do not overlap: regions are united one by one with those whose boxes they touch. */
function united(regions: readonly Region[]): readonly Path[] {
  const shapes = regions.map(ringsOf).filter((rings) => rings.length > 0);
  return shapes.reduce<readonly Group[]>(joined, []).flatMap(({ rings }) => rings);
}

const tidied = (rings: readonly Path[]): Path[] => directed(rings.filter((ring) => !isSliver(ring)));

/**
 * All that lies in any of the regions: closed outlines anticlockwise, holes clockwise. A region's own
 * direction does not matter. Arcs that were joined to something come back as cubics. Throws a RangeError for
 * an open path.
 */
export const unite = (regions: readonly Region[]): Path[] => tidied(united(regions));

/** What is left of `a` without any of `bs`; otherwise as `unite`. */
export const subtract = (a: Region, bs: readonly Region[]): Path[] =>
  tidied(combined("subtract", ringsOf(a), united(bs)));

/** What lies in both; otherwise as `unite`. */
export const intersect = (a: Region, b: Region): Path[] =>
  tidied(combined("intersect", ringsOf(a), ringsOf(b)));
