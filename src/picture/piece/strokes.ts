import { circlePath, line, openPath, type Path, type Point, polyline } from "../../geometry/path.ts";
import type { Hole, Piece, SeamLine } from "../../model/piece.ts";
import type { Layer, LineType, Stroke } from "../picture.ts";

// The lines of one piece, in its own coordinates. Which line type means what stands in the legend of the
// first sheet (sheet/legend.ts); both follow ISO 128-2.

/** The cross at a hole's middle reaches this far past its edge, to set a punch by. */
export const CROSS_BEYOND_MM = 1.2;
/** Every tenth stitch hole has a tick this long, so that two rows can be counted against each other. */
const TENTH_MM = 2.5;

export const stroke = (layer: Layer, line: LineType, path: Path, id?: string): Stroke => ({
  kind: "stroke",
  layer,
  line,
  path,
  ...(id === undefined ? {} : { id }),
});

const across = (at: Point, half: number, angle: number): Path => {
  const [dx, dy] = [half * Math.cos(angle), half * Math.sin(angle)];
  return polyline([
    [at[0] - dx, at[1] - dy],
    [at[0] + dx, at[1] + dy],
  ]);
};

function holeStrokes({ id, kind, at, size, angle }: Hole): readonly Stroke[] {
  if (kind === "awl") return [stroke("stitch", "01.1", across(at, size / 2, angle), `hole.${id}`)];
  const arm = size / 2 + CROSS_BEYOND_MM;
  return [
    stroke("hole", "01.1", circlePath(at, size / 2), `hole.${id}`),
    stroke(
      "hole",
      "01.1",
      polyline([
        [at[0] - arm, at[1]],
        [at[0] + arm, at[1]],
      ]),
    ),
    stroke(
      "hole",
      "01.1",
      polyline([
        [at[0], at[1] - arm],
        [at[0], at[1] + arm],
      ]),
    ),
  ];
}

/** Every tenth hole of a seam, with its number from the start. */
export function tenths(
  seam: SeamLine,
  holes: ReadonlyMap<string, Hole>,
): readonly { readonly hole: Hole; readonly number: number }[] {
  return seam.holes.flatMap((id, i) => {
    const hole = (i + 1) % 10 === 0 ? holes.get(id) : undefined;
    return hole ? [{ hole, number: i + 1 }] : [];
  });
}

/** The direction of a seam at one of its holes, from the holes beside it; undefined for a lone hole. */
export function seamDirection(
  seam: SeamLine,
  holes: ReadonlyMap<string, Hole>,
  number: number,
): number | undefined {
  const a = holes.get(seam.holes[number - 2] ?? "");
  const b = holes.get(seam.holes[number] ?? "") ?? holes.get(seam.holes[number - 1] ?? "");
  return a && b ? Math.atan2(b.at[1] - a.at[1], b.at[0] - a.at[0]) : undefined;
}

function tenthStrokes(seam: SeamLine, holes: ReadonlyMap<string, Hole>): readonly Stroke[] {
  return tenths(seam, holes).map(({ hole, number }) => {
    const angle = (seamDirection(seam, holes, number) ?? 0) + Math.PI / 2;
    return stroke("stitch", "01.1", across(hole.at, TENTH_MM / 2, angle));
  });
}

const ZONE_LINES = { skive: "07.1", tooling: "07.1", keeper: "05.1", overlap: "05.1" } as const;
const MARK_LINES = { crease: "03.1", centre: "04.1", place: "05.1" } as const;

export const holesById = (piece: Piece): ReadonlyMap<string, Hole> =>
  new Map(piece.holes.map((h) => [h.id, h]));

/** Every line of a piece, from what lies underneath to what is cut. */
export function strokesOf(piece: Piece): readonly Stroke[] {
  const holes = holesById(piece);
  return [
    ...piece.zones.map((z) =>
      stroke(z.kind === "skive" ? "skive" : "mark", ZONE_LINES[z.kind], z.outline, `zone.${z.id}`),
    ),
    ...piece.folds.map((f) => stroke("fold", "02.1", openPath(f.from, [line(f.to)]), `fold.${f.id}`)),
    ...piece.marks.map((m) => stroke("mark", MARK_LINES[m.kind], m.path, `mark.${m.id}`)),
    ...piece.seams.map((s) => stroke("stitch", "01.1", s.path, `seam.${s.id}`)),
    ...piece.seams.flatMap((s) => tenthStrokes(s, holes)),
    ...piece.holes.flatMap(holeStrokes),
    ...piece.cutouts.map((c) => stroke("cut", "01.2", c.outline, `cutout.${c.id}`)),
    ...(piece.rough ? [stroke("cut", "02.1", piece.rough, "rough")] : []),
    stroke("cut", "01.2", piece.outline, "outline"),
  ];
}
