import {
  bag,
  bodyLeather,
  gussetLeather,
  keeperLeather,
  measures,
  stitching,
  strapLeather,
} from "../../src/articles/bagSections.ts";
import {
  fixAnchors,
  makeStraps,
  type Placed,
  placedParts,
  strapSections,
} from "../../src/articles/bagStraps.ts";
import type { ArticleDefinition, Resolved } from "../../src/articles/definition.ts";
import { rectanglePath } from "../../src/geometry/path.ts";
import type { Made } from "../../src/model/article.ts";
import { layMates, withSeams } from "../../src/trade/mates.ts";
import { barePiece } from "./soundPiece.ts";

// A bag that is nothing but its straps and plain rectangles that they are fixed to.

export const GUSSET_LENGTH = 600;
const PANEL = { width: 900, height: 700 };

/** Anchors as an article would place them: on a strip along x, and on panels hung from their top edge. */
export function placeAll(straps: ReturnType<typeof makeStraps>): readonly Placed[] {
  return straps.anchors.map((anchor) => {
    const id = `${anchor.strap.label.replaceAll(" ", "-")}.${anchor.place}`;
    const common = { anchor, piece: anchor.on, id, thickness: 2 };
    if (anchor.on !== "gusset")
      return { ...common, at: [anchor.x, PANEL.height - anchor.below], angle: Math.PI / 2 } as const;
    return anchor.place === "start"
      ? ({ ...common, at: [anchor.below, 0], angle: Math.PI } as const)
      : ({ ...common, at: [GUSSET_LENGTH - anchor.below, 0], angle: 0 } as const);
  });
}

function make(done: Resolved): Made {
  const straps = makeStraps(done);
  const placed = placeAll(straps);
  const s = done.of(stitching);
  const { joins, boxes } = fixAnchors(placed, straps.edges);
  const laid = boxes.map((box) =>
    layMates({
      ...box,
      pitch: s.pitch.value,
      mode: "spread",
      marks: "awl slits",
      markSize: 2,
      backStitches: [0, 0],
      pitchDimension: "stitching.pitch",
    }),
  );
  const names = [...joins.flatMap((j) => (j.kind === "fixed" ? [j.name] : [])), ...boxes.map((b) => b.name)];
  const panel = rectanglePath([-PANEL.width / 2, 0], PANEL.width, PANEL.height);
  const plates = [
    barePiece("gusset", rectanglePath([0, -150], GUSSET_LENGTH, 300)),
    barePiece("front", panel),
    barePiece("back", panel),
  ].map((p) => ({ ...p, ...placedParts(placed, p.id) }));
  return {
    article: "bag of straps",
    pieces: [...straps.pieces, ...plates].map((p) =>
      withSeams(
        p,
        laid.flatMap((l) => l.sides),
      ),
    ),
    joins: [...straps.joins, ...joins, ...laid.flatMap((l) => l.joins)],
    ...(straps.fit ? { fit: straps.fit } : {}),
    assembly: names.map((name) => ({ name, does: "fix", after: [], reaches: [], shuts: [] })),
    findings: [...straps.findings, ...laid.flatMap((l) => l.findings)],
    sizes: straps.sizes,
    cautions: [],
  };
}

export const bagOfStraps: ArticleDefinition = {
  name: "bag of straps",
  slug: "bag-of-straps",
  means: "straps alone",
  sections: [
    measures,
    bag,
    bodyLeather,
    gussetLeather,
    strapLeather,
    keeperLeather,
    stitching,
    ...strapSections,
  ],
  make,
  measuring: [],
  sample: {},
  told: { sentences: [], rest: [] },
};

/** The straps of an order, placed. */
export const place = (done: Resolved): readonly Placed[] => placeAll(makeStraps(done));
