// Hand-made pieces of a bag for the tests of pictures and of job.json: large panels with long seams, a strip
// with clips, a wrap-round body. Their sizes are invented; no formula of the engine stands behind them.
import { pathLength, pointAt, subPath, tangentAt } from "../../src/geometry/length.ts";
import {
  arc,
  closedPath,
  cubic,
  line,
  openPath,
  type Path,
  type Point,
  polyline,
  rectanglePath,
} from "../../src/geometry/path.ts";
import type { SeamJoin } from "../../src/model/article.ts";
import type { Fold, Hole, Mark, Piece, SeamLine, Zone } from "../../src/model/piece.ts";
import { roundHole, samplePiece } from "./samplePieces.ts";

type Laid = { readonly seams: readonly SeamLine[]; readonly holes: readonly Hole[] };

/** Stitches along a path, so many in each run between the cuts (lengths along it); numbers go on. */
export function sewn(
  id: string,
  path: Path,
  stitches: readonly number[],
  cuts: readonly number[] = [],
  over: Partial<SeamLine> = {},
  kind: Hole["kind"] = "awl",
): Laid {
  const ends = [0, ...cuts, pathLength(path)];
  const holes: Hole[] = [];
  const at = (s: number): Hole => ({
    id: `${id}.${holes.length + 1}`,
    kind,
    at: pointAt(path, s),
    size: kind === "awl" ? 2 : 1.4,
    angle: kind === "awl" ? tangentAt(path, Math.min(s, pathLength(path) - 0.01)) + Math.PI / 4 : 0,
    use: "stitch",
  });
  holes.push(at(0));
  const seams = stitches.map((count, r): SeamLine => {
    const [from, to] = [ends[r]!, ends[r + 1]!];
    const first = holes.length;
    for (let i = 1; i <= count; i += 1) holes.push(at(from + ((to - from) * i) / count));
    return {
      id: stitches.length === 1 ? id : `${id}.${r + 1}`,
      path: subPath(path, from, to),
      pitchAsked: 4,
      pitch: (to - from) / count,
      stitches: count,
      inset: 4,
      holes: holes.slice(first - 1).map((h) => h.id),
      ...(first > 1 ? { numberFrom: first } : {}),
      ...over,
    };
  });
  return { seams, holes };
}

/** A short cut of 3 mm from an edge point inward. */
const cut = (kind: "notch" | "clip", id: string, at: Point, way: Point, label: string, long = 3): Mark => ({
  id,
  kind,
  path: polyline([at, [at[0] + way[0] * long, at[1] + way[1] * long]]),
  label,
});

/** A panel's edge inside its finished outline by `d`, top left round the base to top right. */
const uPath = (w: number, h: number, r: number, d: number, top = 0): Path =>
  openPath(
    [d - w / 2, h - top],
    [
      line([d - w / 2, r]),
      arc([r - w / 2, d], [r - w / 2, r], true),
      line([w / 2 - r, d]),
      arc([w / 2 - d, r], [w / 2 - r, r], true),
      line([w / 2 - d, h - top]),
    ],
  );

/** The band between two such edges. */
function uBand(w: number, h: number, r: number, d: number): Path {
  const [outer, inner] = [uPath(w, h, r, 0), uPath(w, h, r, d)];
  return closedPath(outer.start, [
    ...outer.segments,
    line([w / 2 - d, h]),
    line([w / 2 - d, r]),
    arc([w / 2 - r, d], [w / 2 - r, r], false),
    line([r - w / 2, d]),
    arc([d - w / 2, r], [r - w / 2, r], false),
    line(inner.start),
    line(outer.start),
  ]);
}

const NOTCH = "notch: meets the gusset's";

const panelMarks = (w: number, h: number): readonly Mark[] => [
  cut("notch", "centre", [0, 0], [0, 1], NOTCH),
  cut("notch", "quarter.left", [-w / 2, h / 2], [1, 0], NOTCH),
  cut("notch", "quarter.right", [w / 2, h / 2], [-1, 0], NOTCH),
];

const bagLeather = { kind: "bag leather", thickness: 2, thickest: 2.2 };

/** A front of 250 × 200 with clipped corners: five runs, a hole in every corner, 150 stitches. */
export function front(over: Partial<Piece> = {}): Piece {
  const [w, h, c] = [250, 200, 30];
  const edge = (d: number): readonly Point[] => {
    const k = d * 0.4142;
    return [
      [d - w / 2, h],
      [d - w / 2, c + k],
      [c + k - w / 2, d],
      [w / 2 - c - k, d],
      [w / 2 - d, c + k],
      [w / 2 - d, h],
    ];
  };
  const seam = polyline(edge(4).map(([x, y]): Point => [x, Math.min(y, h - 8)]));
  const cuts = [1, 2, 3, 4].map((n) => pathLength(polyline(edge(4).slice(0, n + 1))) - 8);
  const laid = sewn("gusset", seam, [41, 10, 48, 10, 41], cuts, { joins: "front to gusset: edge" });
  const inner = [...edge(3)].reverse();
  return samplePiece("front", polyline(edge(0), true), {
    name: "Front",
    leather: bagLeather,
    ...laid,
    holes: [...laid.holes, { ...roundHole("stud", 0, 5, 130), use: "stud" }],
    zones: [{ id: "glue", kind: "glue", outline: polyline([...edge(0), ...inner], true), label: "glue" }],
    marks: panelMarks(w, h),
    controls: [{ from: [-w / 2, h], to: [w / 2, h], words: "along the top" }],
    grain: Math.PI / 2,
    ...over,
  });
}

/** A back with its flap in one, 360 wide and 640 high: 300 stitches, two folds. */
export function back(over: Partial<Piece> = {}): Piece {
  const [w, h, r, top] = [360, 300, 50, 640];
  const edge = uPath(w, h, r, 0);
  const outline = closedPath(edge.start, [
    ...edge.segments,
    line([w / 2, 540]),
    cubic([w / 2, 600], [110, top], [0, top]),
    cubic([-110, top], [-w / 2, 600], [-w / 2, 540]),
    line(edge.start),
  ]);
  const seam = uPath(w, h, r, 4, 8);
  const laid = sewn("gusset", seam, [300], [], { joins: "back to gusset: edge" });
  const bend = { angle: Math.PI / 2, thickness: 2, neutral: 0.4, inside: "flesh" } as const;
  const fold = (id: string, y: number, label: string, inner: number): Fold => ({
    id,
    from: [-w / 2, y],
    to: [w / 2, y],
    label,
    bend: { ...bend, inner },
  });
  return samplePiece("back", outline, {
    name: "Back and flap",
    leather: bagLeather,
    ...laid,
    holes: [...laid.holes, { ...roundHole("cap", 0, 6, 600), use: "stud" }],
    folds: [fold("back", 308, "fold over the back", 4), fold("front", 390, "fold over the front", 6)],
    zones: [{ id: "glue", kind: "glue", outline: uBand(w, h, r, 3), label: "glue" }],
    marks: panelMarks(w, h),
    controls: [{ from: [-w / 2, h], to: [w / 2, h], words: "across at the seam's ends" }],
    grain: Math.PI / 2,
    ...over,
  });
}

const bentAt = (s: number): boolean => (s > 150 && s < 230) || (s > 470 && s < 550);

/** A strip of 700 × 80: a seam along either edge, folds, clips where it goes round the corners, a trim. */
export function gusset(over: Partial<Piece> = {}): Piece {
  const [length, half] = [700, 40];
  const row = (id: string, y: number, joins: string, groove: boolean): Laid =>
    sewn(id, openPath([8, y], [line([length - 8, y])]), [150], [], {
      joins,
      ...(groove ? { groove: true as const } : {}),
    });
  const [up, down] = [
    row("front", half - 4, "front to gusset: edge", false),
    row("back", 4 - half, "back to gusset: edge", true),
  ];
  const clips = Array.from({ length: 46 }, (_, i) => 10 + i * 15)
    .filter(bentAt)
    .flatMap((x): readonly Mark[] => [
      cut("clip", `clip.front.${x}`, [x, half], [0, -1], "", 2.4),
      cut("clip", `clip.back.${x}`, [x, -half], [0, 1], "", 2.4),
    ]);
  const notches = [175, 350, 525].flatMap((x): readonly Mark[] => [
    cut("notch", `notch.front.${x}`, [x, half], [0, -1], "notch: meets the front's"),
    cut("notch", `notch.back.${x}`, [x, -half], [0, 1], "notch: meets the back's"),
  ]);
  const bend = { inner: 1, angle: Math.PI / 2, thickness: 1.6, neutral: 0.4, inside: "grain" } as const;
  const folds = [half - 10, 10 - half].map(
    (y, i): Fold => ({
      id: `flange.${i + 1}`,
      from: [0, y],
      to: [length, y],
      label: "fold the flange",
      bend,
    }),
  );
  const trims = [half - 1.5, -half].map(
    (y, i): Zone => ({
      id: `trim.${i + 1}`,
      kind: "trim",
      outline: rectanglePath([0, y], length, 1.5),
      label: "trim flush after stitching",
    }),
  );
  return samplePiece("gusset", rectanglePath([0, -half], length, 2 * half), {
    name: "Gusset",
    leather: { ...bagLeather, thickness: 1.6, thickest: 1.7 },
    holes: [...up.holes, ...down.holes],
    seams: [...up.seams, ...down.seams],
    marks: [...clips, ...notches],
    folds,
    zones: trims,
    controls: [{ from: [0, 0], to: [length, 0], words: "end to end" }],
    ...over,
  });
}

/** A wrap-round body of 300 × 760 with punched stitch holes and a flap: three straight runs on either side. */
export function body(over: Partial<Piece> = {}): Piece {
  const [w, low, high] = [300, -240, 300];
  const outline = closedPath(
    [-w / 2, low],
    [
      line([w / 2, low]),
      line([w / 2, high + 160]),
      arc([w / 2 - 60, high + 220], [w / 2 - 60, high + 160], true),
      line([60 - w / 2, high + 220]),
      arc([-w / 2, high + 160], [60 - w / 2, high + 160], true),
      line([-w / 2, low]),
    ],
  );
  const side = (id: string, x: number): Laid =>
    sewn(
      id,
      openPath([x, low + 8], [line([x, high - 8])]),
      [49, 10, 62],
      [192, 232],
      { joins: `body ${id} to side gusset: edge` },
      "round",
    );
  const [left, right] = [side("left", 4 - w / 2), side("right", w / 2 - 4)];
  const bend = { inner: 3, angle: Math.PI / 2, thickness: 2, neutral: 0.4, inside: "flesh" } as const;
  const folds = [
    ["base.front", -32, "fold, base to front"],
    ["base.back", 32, "fold, base to back"],
    ["flap.back", 308, "fold over the back"],
    ["flap.front", 372, "fold over the front"],
  ] as const;
  return samplePiece("body", outline, {
    name: "Body",
    leather: bagLeather,
    holes: [...left.holes, ...right.holes],
    seams: [...left.seams, ...right.seams],
    folds: folds.map(([id, y, label]): Fold => ({ id, from: [-w / 2, y], to: [w / 2, y], label, bend })),
    grain: Math.PI / 2,
    controls: [{ from: [w / 2, low], to: [w / 2, high + 160], words: "along the side" }],
    ...over,
  });
}

export const bagPieces = (): readonly Piece[] => [front(), back(), gusset(), body()];

/** The seam of front and gusset as a join: hole i meets hole i, run by run. */
export const frontJoins = (): readonly SeamJoin[] => [
  {
    kind: "seam",
    name: "front to gusset: edge",
    sides: [
      { piece: "front", seam: "gusset.1" },
      { piece: "gusset", seam: "front" },
    ],
    stack: 3.6,
    backStitches: [2, 2],
    dimension: "measures.height",
  },
];
