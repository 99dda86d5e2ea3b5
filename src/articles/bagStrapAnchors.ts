import type { Point } from "../geometry/path.ts";
import type { FixedJoin, Join } from "../model/article.ts";
import type { SeamEdge } from "../model/piece.ts";
import {
  type FixedEnd,
  type FixedEndInput,
  fixedHoles,
  footprint,
  type Placing,
  placingAt,
  stitchBox,
  throughSlot,
} from "../trade/fixedEnd.ts";
import { type Parts, together } from "../trade/parts.ts";

// What a strap that is fixed flat asks of the piece it is fixed to: holes, a box of stitches, a slot, and
// leather round them. The article says where; the holes' distances are the strap's own.

/** A strap's fixed end. */
export type StrapEnd = {
  readonly piece: string;
  readonly side: "left" | "right";
  readonly end: FixedEnd;
  readonly input: FixedEndInput;
  readonly by: "rivet" | "binding screw";
  /** What its holes are for, as their names say: "rivet" or "screw". */
  readonly use: "rivet" | "screw";
  /** "strap tab" */
  readonly label: string;
};

/** Where on the bag an anchor belongs. */
export type AnchorPlace = {
  readonly on: "gusset" | "front" | "back";
  /** The gusset's two ends; left and right as seen from outside. */
  readonly place: "start" | "end" | "left" | "right";
  /** From the piece's middle line, to the right as seen from outside, mm. */
  readonly x: number;
  /** From the top edge down to where the strap is fixed first, or goes in, mm. */
  readonly below: number;
};

/**
 * Placed by `at` and `angle`: `at` is where the strap is reckoned from (the fixing nearest its body, the
 * box's line there, or the slot's middle), `angle` the direction in which the strap leaves.
 */
export type Anchor = AnchorPlace & {
  readonly strap: StrapEnd;
  readonly how: "riveted" | "stitched" | "through a slot";
  /** Leather that must be there, kept clear of folds and seams, mm: across the strap, and from `at` up and down it. */
  readonly needs: { readonly width: number; readonly up: number; readonly down: number };
  /** Thickness of the strap there, mm; what it is fixed to comes on top. */
  readonly stack: number;
  /** Holes, slot and place mark on the piece; ids begin with `id`. */
  parts(at: Point, angle: number, id: string): Partial<Parts>;
  /** Names of its rivet or screw holes on the piece; none where it is stitched. */
  holes(id: string): readonly string[];
  /** The box of stitches on the piece, a mate of the strap's own. */
  edge(piece: string, at: Point, angle: number, id: string): SeamEdge | undefined;
};

/** From a hole's or a slot end's middle to any edge, in diameters; common practice, no source. */
const TO_EDGE = 1.5;

function needsOf({ end, input }: StrapEnd): Anchor["needs"] {
  const down = end.reach.value;
  const width = input.width.value;
  if (end.slot) {
    const across = end.slot.width.value;
    // A slot's end has its middle half its width inside, and keeps its distance from there.
    return {
      width: Math.max(width, end.slot.length.value + (2 * TO_EDGE - 1) * across),
      up: (TO_EDGE + 0.5) * across,
      down,
    };
  }
  if (end.kind === "stitched") return { width, up: input.inset.value, down };
  const hole = input.hole.value;
  return {
    width: Math.max(width, 2 * TO_EDGE * hole),
    up: Math.max(TO_EDGE * hole, input.head.value / 2),
    down,
  };
}

export function anchorOf(strap: StrapEnd, place: AnchorPlace): Anchor {
  const { end, input, use } = strap;
  const placing = (at: Point, angle: number): Placing => {
    const from = placingAt(at, angle);
    return (u, v) => from(u - end.reach.value, v);
  };
  const count = end.kind === "riveted" ? Math.round(input.rivets.value) : 0;
  return {
    ...place,
    strap,
    how: end.slot ? "through a slot" : end.kind,
    needs: needsOf(strap),
    stack: input.thickness.value,
    parts(at, angle, id) {
      const p = placing(at, angle);
      const slot = throughSlot(end, p, `${id}.slot`);
      return {
        holes: fixedHoles(end, input, p, id, use),
        cutouts: slot ? [slot] : [],
        // Through a slot the strap's end lies behind the leather: nothing to mark.
        marks: slot
          ? []
          : [{ id: `${id}.place`, kind: "place", path: footprint(end, input, p), label: strap.label }],
      };
    },
    holes: (id) => Array.from({ length: count }, (_, n) => `${id}.${n + 1}`),
    edge(piece, at, angle, id) {
      if (end.kind !== "stitched") return undefined;
      const path = stitchBox(end, input, placing(at, angle));
      return { piece, id: `${id}.box`, path, inset: input.inset.value, breaks: [] };
    },
  };
}

/** An anchor on a piece of the bag. Two anchors of one piece and id are one: a piece that is cut twice. */
export type Placed = {
  readonly anchor: Anchor;
  readonly piece: string;
  readonly id: string;
  readonly at: Point;
  readonly angle: number;
  /** Thickness of all that it is fixed to, mm. */
  readonly thickness: number;
};

/** What the placed anchors add to one piece. */
export function placedParts(placed: readonly Placed[], piece: string): Partial<Parts> {
  const own = placed.filter((p) => p.piece === piece);
  const once = own.filter((p, i) => own.findIndex((o) => o.id === p.id) === i);
  return together(...once.map((p) => p.anchor.parts(p.at, p.angle, p.id)));
}

/** A box of stitches through a strap and what it is sewn to: to be laid as one closed seam. */
export type BoxMates = {
  readonly name: string;
  readonly sides: readonly SeamEdge[];
  readonly stack: number;
  readonly dimension: string;
};
export type Fixings = { readonly joins: readonly Join[]; readonly boxes: readonly BoxMates[] };

const strapKey = ({ anchor }: Placed): string => `${anchor.strap.piece}:${anchor.strap.side}`;
const placeKey = (p: Placed): string => `${p.piece}:${p.id}`;

/** Anchors that share a strap's end or a place: their holes are all the same ones. */
function groups(placed: readonly Placed[]): readonly (readonly Placed[])[] {
  return placed.reduce<readonly (readonly Placed[])[]>((found, p) => {
    const joins = (g: readonly Placed[]): boolean =>
      g.some((o) => strapKey(o) === strapKey(p) || placeKey(o) === placeKey(p));
    return [...found.filter((g) => !joins(g)), [...found.filter(joins).flat(), p]];
  }, []);
}

const unique = <T>(list: readonly T[], key: (t: T) => string): readonly T[] =>
  list.filter((a, i) => list.findIndex((b) => key(a) === key(b)) === i);

/** How the placed anchors join the straps to the bag: rivets and slots, and boxes of stitches still to be laid. */
export function fixAnchors(placed: readonly Placed[], strapEdges: readonly SeamEdge[]): Fixings {
  const all = groups(placed).map((group) => {
    const ends = unique(group, strapKey);
    const places = unique(group, placeKey);
    const stack = Math.max(...group.map((p) => p.anchor.stack + p.thickness));
    const straps = unique(ends, (p) => p.anchor.strap.label).map((p) => p.anchor.strap.label);
    const name = `${straps.join(" and ")}${endWords(ends)} to ${[...new Set(places.map((p) => p.piece.replaceAll("-", " ")))].join(" and ")}`;
    return { ends, places, stack, name };
  });
  return {
    joins: all.flatMap((g) => [...riveted(g), ...g.places.flatMap(slotJoin)]),
    boxes: all.flatMap((g) => boxOf(g, strapEdges)),
  };
}

type Group = {
  readonly ends: readonly Placed[];
  readonly places: readonly Placed[];
  readonly stack: number;
  readonly name: string;
};

/** A handle has two fixed ends: said which. */
const endWords = (ends: readonly Placed[]): string =>
  ends.length === 1 && ends[0]!.anchor.strap.piece === "handle" ? ` ${ends[0]!.anchor.strap.side} end` : "";

function riveted({ ends, places, stack, name }: Group): readonly FixedJoin[] {
  const { strap } = ends[0]!.anchor;
  if (strap.end.kind !== "riveted") return [];
  return [
    {
      kind: "fixed",
      name,
      by: strap.by,
      sides: [
        ...ends.map(({ anchor: a }) => ({
          piece: a.strap.piece,
          holes: a.holes(`${a.strap.side}.${a.strap.use}`),
        })),
        ...places.map((p) => ({ piece: p.piece, holes: p.anchor.holes(p.id) })),
      ],
      stack,
      dimension: "hardware.fixing.spacing",
    },
  ];
}

function slotJoin(p: Placed): readonly Join[] {
  const { end, input } = p.anchor.strap;
  if (!end.slot || !input.throughSlot) return [];
  return [
    {
      kind: "strap in slot",
      piece: p.piece,
      cutout: `${p.id}.slot`,
      strapWidth: input.width.value,
      strapThickness: input.throughSlot.value,
      dimension: "leather.strap.thickness",
    },
  ];
}

function boxOf({ ends, places, stack, name }: Group, strapEdges: readonly SeamEdge[]): readonly BoxMates[] {
  if (ends[0]!.anchor.strap.end.kind !== "stitched") return [];
  const own = ends.flatMap(({ anchor: { strap } }) =>
    strapEdges.filter((e) => e.piece === strap.piece && e.id === `${strap.side}.box`),
  );
  const theirs = places.flatMap((p) => p.anchor.edge(p.piece, p.at, p.angle, p.id) ?? []);
  return [{ name, sides: [...own, ...theirs], stack, dimension: "straps.box-length" }];
}
