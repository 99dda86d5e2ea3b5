import { boundsOf } from "../geometry/bounds.ts";
import { pathLength, pointAt } from "../geometry/length.ts";
import type { Path, Point } from "../geometry/path.ts";
import type { Hole, Mark, Piece, SeamLine } from "../model/piece.ts";
import type { Units } from "../model/say.ts";
import { sayCutout, sayFold, sayHoleSize, saySeam, sayZone } from "../picture/piece/say.ts";
import { grooveHoles } from "../picture/piece/strokes.ts";
import type { PagePiece } from "./pageData.ts";

// What stands on a piece, in plain names. Each part has the id of the line that shows it.

type Part = PagePiece["parts"][number];

const middleOf = (path: Path): Point => {
  const { minX, minY, maxX, maxY } = boundsOf(path);
  return [(minX + maxX) / 2, (minY + maxY) / 2];
};
const halfWay = (path: Path): Point => pointAt(path, pathLength(path) / 2);

const spaced = (id: string): string => id.replaceAll(/[.-]+/g, " ").trim();

/** `near.3` is 3 of `near`; `poll` and `closure.flap.` have no number. */
function numbered(id: string): { readonly row: string; readonly number: string } {
  const found = /^(.*?)\.?(\d+)$/.exec(id);
  return found ? { row: spaced(found[1] ?? ""), number: found[2] ?? "" } : { row: spaced(id), number: "" };
}

/** "hole 3 of the near end", "screw hole 1, front of the bit end", by what the piece's own names say. */
function holeName({ id, use }: Hole): string {
  const { row, number } = numbered(id);
  const what = use === "buckle" ? "hole" : `${use} hole`;
  const rest = row
    .split(" ")
    .filter((word) => word !== use)
    .join(" ");
  return [[what, number].filter(Boolean).join(" "), rest].filter(Boolean).join(", ");
}

function holePart(hole: Hole, units: Units): Part {
  const size = hole.kind === "awl" ? "" : `: ${sayHoleSize(hole, units).replace(/^hole /, "")}`;
  return { id: `hole.${hole.id}`, says: `${holeName(hole)}${size}`, at: hole.at };
}

/** A seam's holes are numbered as on the template. */
function seamHoles(piece: Piece): ReadonlyMap<string, Part> {
  const holes = new Map(piece.holes.map((h) => [h.id, h]));
  return new Map(
    piece.seams.flatMap((seam) =>
      seam.holes.flatMap((id, i): readonly [string, Part][] => {
        const hole = holes.get(id);
        const says = `stitch hole ${(seam.numberFrom ?? 1) + i} of ${seamName(seam)}`;
        return hole ? [[id, { id: `hole.${id}`, says, at: hole.at }]] : [];
      }),
    ),
  );
}

const seamName = (s: SeamLine): string =>
  s.joins === undefined ? `the seam ${spaced(s.id)}` : `the seam ${s.joins}`;

const markName = ({ kind, label }: Mark): string => {
  if (kind === "place") return `place of ${label}`;
  return label === kind ? label : label.includes(kind) ? label : `${kind}, ${label}`;
};

/** Everything on a piece that has a name: holes, slots, seams, folds, zones, marks, corners. */
export function partsOf(piece: Piece, units: Units): PagePiece["parts"] {
  const hidden = grooveHoles(piece);
  const sewn = seamHoles(piece);
  return [
    ...piece.holes
      .filter(({ id }) => !hidden.has(id))
      .map((hole) => sewn.get(hole.id) ?? holePart(hole, units)),
    ...piece.cutouts.map((c) => ({ id: `cutout.${c.id}`, says: sayCutout(c), at: middleOf(c.outline) })),
    ...piece.seams.map((s) => ({
      id: `seam.${s.id}`,
      says: `${seamName(s)}: ${saySeam(s)}`,
      at: halfWay(s.path),
    })),
    ...piece.folds.map((f): Part => {
      const at: Point = [(f.from[0] + f.to[0]) / 2, (f.from[1] + f.to[1]) / 2];
      return { id: `fold.${f.id}`, says: sayFold(f), at };
    }),
    ...piece.zones.map((z) => ({ id: `zone.${z.id}`, says: sayZone(z), at: middleOf(z.outline) })),
    ...piece.marks.map((m) => ({ id: `mark.${m.id}`, says: markName(m), at: halfWay(m.path) })),
    ...piece.corners.map(({ name, at }) => ({
      id: `corner.${name}`,
      says: `${name} corner`.replace(/corner corner$/, "corner"),
      at,
    })),
  ];
}
