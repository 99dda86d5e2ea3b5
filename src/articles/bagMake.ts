import type { Join, Made } from "../model/article.ts";
import type { Piece } from "../model/piece.ts";
import { named, over, type Quantity } from "../model/quantity.ts";
import { type Laid, layMates, withSeams } from "../trade/mates.ts";
import { type Parts, together } from "../trade/parts.ts";
import { placeAnchors } from "./bagAnchors.ts";
import { bagAssembly } from "./bagAssembly.ts";
import { isWrapped } from "./bagBodySections.ts";
import { bagCapacity } from "./bagCapacity.ts";
import { makeClosureStraps } from "./bagClosureStraps.ts";
import { bagFindings, handlesUnderFlap } from "./bagFindings.ts";
import {
  closureJoins,
  closureOn,
  closureSizesOf,
  makeLinings,
  makePatches,
  makePocket,
  pocketOnPanel,
  tuckJoins,
} from "./bagFittings.ts";
import { bagFittingsList } from "./bagFittingsList.ts";
import { bag } from "./bagSections.ts";
import { type Extras, makeShell, stitchesAsked } from "./bagShell.ts";
import { fixAnchors, makeStraps, NO_STRAPS, type Placed, placedParts } from "./bagStraps.ts";
import type { Resolved } from "./definition.ts";

// Makes a bag: straps and where they are fixed, body and gusset with what that asks of them, the seams.

export function makeBag(done: Resolved): Made {
  const straps = handlesUnderFlap(done) ? NO_STRAPS : makeStraps(done);
  const placed = placeAnchors(done, straps.anchors);
  const closing = makeClosureStraps(done);
  const shell = makeShell(done, extrasOf(done, placed));
  const pocket = makePocket(done);
  const fixings = fixAnchors(placed, straps.edges);
  const boxes = fixings.boxes.map((b) =>
    layMates({ ...stitchesAsked(done), backStitches: overlapping(done), ...b }),
  );
  const laid: readonly Laid[] = [...shell.laid, ...boxes, ...(pocket ? [pocket.laid] : [])];
  const sewn = (pieces: readonly Piece[]): readonly Piece[] =>
    pieces.map((p) =>
      withSeams(
        p,
        laid.flatMap((l) => l.sides),
      ),
    );
  const shellMade = sewn(shell.pieces);
  const others = sewn([...(pocket ? [pocket.piece] : []), ...straps.pieces, ...closing.pieces]);
  const patches = makePatches(done, placed, shellMade);
  const joins: readonly Join[] = [
    ...laid.flatMap((l) => l.joins),
    ...[shell, closing, straps, fixings, patches].flatMap((made): readonly Join[] => made.joins),
    ...closureJoins(done),
    ...tuckJoins(done),
  ];
  const capacity = bagCapacity(done);
  const pieces = [...shellMade, ...others, ...makeLinings(done, shellMade), ...patches.pieces];
  return {
    article: "bag",
    pieces,
    joins,
    capacity,
    assembly: bagAssembly(done, joins, patches.pieces),
    ...(straps.fit ? { fit: straps.fit } : {}),
    fittings: bagFittingsList(done, { pieces, joins }),
    findings: [...bagFindings(done), ...straps.findings, ...laid.flatMap((l) => l.findings)],
    sizes: [litres(capacity.volume), ...straps.sizes, ...closing.sizes, ...closureSizesOf(done)],
    cautions: CAUTIONS,
  };
}

const MM3_PER_LITRE = 1e6;
const litres = (volume: Quantity): Quantity =>
  named("volume of the bag in litres", over(volume, MM3_PER_LITRE), { kind: "number" });

const CAUTIONS = [
  "Strength figures are estimates for comparing designs. Try a strap under load before the bag is carried.",
  "Cut away from your hand, on a firm board. Use dyes and glues with fresh air, as their makers say.",
];

/** A closed row is sewn on over its first stitches, one more than a row is sewn back. */
const overlapping = (done: Resolved): readonly [number, number] => [
  0,
  stitchesAsked(done).backStitches[1] + 1,
];

/** What closure, pocket and straps add to each piece of body and gusset. */
const extrasOf =
  (done: Resolved, placed: readonly Placed[]): Extras =>
  (piece): Partial<Parts> => {
    const wrapped = isWrapped(done);
    const pocket = done.of(bag).pocket === "none" ? undefined : pocketOnPanel(done);
    const carries = (id: "front" | "back"): boolean => piece === (wrapped ? "body" : id);
    return together(
      placedParts(placed, piece),
      ...(carries("back") ? [closureOn(done, "flap")] : []),
      ...(carries("front") ? [closureOn(done, "front")] : []),
      ...(pocket && pocket.edge.piece === piece ? [pocket.parts] : []),
    );
  };
