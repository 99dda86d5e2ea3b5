import { boundsOf } from "../../geometry/bounds.ts";
import { type Box, polyline } from "../../geometry/path.ts";
import { apart } from "../../geometry/vector.ts";
import type { Piece, Zone } from "../../model/piece.ts";
import { chordsOf, keptChords } from "./chords.ts";
import { type Draft, type Ground, withItems } from "./draft.ts";
import { type Chord, grownBy, outsideBox, overlap, taken } from "./space.ts";
import { CROSS_BEYOND_MM, stroke } from "./strokes.ts";

// Fields to skive are filled with thin strokes at 45 degrees, so that where a field begins and ends is seen
// without colour. They fall where awl slits rise, and are drawn last: they give way to words and holes.

/** Strokes are this far apart, mm; in a field that ends at nothing they lie closer. */
const APART_MM = 4;
const FEATHER_APART_MM = 2;
/** Strokes keep this clear of words, holes and slots, mm. */
const CLEAR_MM = 0.7;
/** A shorter stroke could be taken for an awl mark, mm. */
const SHORTEST_MM = 3.5;

/** Where a falling line x + y = c crosses a field's edges, cut to the bits inside. */
function fallingLine(edges: readonly Chord[], c: number): readonly Chord[] {
  const crossed = edges.flatMap(([a, b]): readonly number[] => {
    const [u, v] = [a[0] + a[1] - c, b[0] + b[1] - c];
    if (u > 0 === v > 0) return [];
    return [a[0] + ((b[0] - a[0]) * u) / (u - v)];
  });
  const xs = crossed.sort((p, q) => p - q);
  return Array.from({ length: Math.floor(xs.length / 2) }, (_, i): Chord => {
    const [from, to] = [xs[2 * i]!, xs[2 * i + 1]!];
    return [
      [from, c - from],
      [to, c - to],
    ];
  });
}

function strokesIn(zone: Zone): readonly Chord[] {
  const edges = chordsOf(zone.outline);
  const step = (zone.to === 0 ? FEATHER_APART_MM : APART_MM) * Math.SQRT2;
  const box = boundsOf(zone.outline);
  const [least, most] = [box.minX + box.minY, box.maxX + box.maxY];
  const count = Math.max(0, Math.ceil((most - least) / step) - 1);
  // From the middle outward, so that a field's strokes lie evenly in it.
  const first = (least + most - (count - 1) * step) / 2;
  return Array.from({ length: count }, (_, i) => fallingLine(edges, first + i * step)).flat();
}

/** Holes and cutouts, on the flat piece. */
function punched(piece: Piece): readonly Box[] {
  const holes = piece.holes.map(({ at: [x, y], size, kind, use }): Box => {
    const r = size / 2 + (kind === "awl" || use === "stitch" ? 0 : CROSS_BEYOND_MM);
    return { minX: x - r, maxX: x + r, minY: y - r, maxY: y + r };
  });
  return [...holes, ...piece.cutouts.map((c) => boundsOf(c.outline))].map((b) => grownBy(b, CLEAR_MM));
}

const without = (chords: readonly Chord[], boxes: readonly Box[]): readonly Chord[] =>
  boxes.reduce((rest, box) => rest.flatMap((c) => outsideBox(c, box)), chords);

/** Fills the fields to skive, clear of words, holes and the strips where sheets are glued. */
export function withHatching(draft: Draft, ground: Ground): Draft {
  const { piece, kept, joints } = ground;
  const holes = punched(piece);
  const strokes = piece.zones
    .filter((z) => z.kind === "skive")
    .flatMap((z) => keptChords(without(strokesIn(z), holes), kept));
  if (strokes.length === 0) return draft;
  const words = draft.space.boxes.map((b) => grownBy(b, CLEAR_MM));
  const blocked = [...words, ...joints].filter((b) => overlap(b, ground.room));
  const bits = without(strokes, blocked).filter(([a, b]) => apart(a, b) >= SHORTEST_MM);
  const items = bits.map((bit) => stroke("skive", "01.1", polyline(bit)));
  return withItems(draft, items, taken(draft.space, { chords: bits }));
}
