import { nearestOnPath } from "../../geometry/distance.ts";
import { pathLength } from "../../geometry/length.ts";
import { endPoint, type Point, polyline } from "../../geometry/path.ts";
import { apart } from "../../geometry/vector.ts";
import type { Made, SeamJoin } from "../../model/article.ts";
import type { Piece, SeamLine } from "../../model/piece.ts";
import { sayFigure, type Units } from "../../model/say.ts";
import { oneOf } from "../../model/words.ts";
import type { Item } from "../picture.ts";
import { sayId } from "../piece/say.ts";
import { stroke } from "../piece/strokes.ts";
import { type FoldedPicture, framed, GAP_MM, WORD_MM, words } from "./frame.ts";

// A seam laid out straight: the hole rows of its sides on parallel lines, at full size, run after run. Hole
// i of one side meets hole i of every other.

/** Between the rows, and a tick's length, mm. */
const APART_MM = 16;
const TICK_MM = 2;
const TENTH_MM = 4;
const TENTH = 10;
/** A corner this many insets from a run's end is where it ends; a square corner lies √2 insets off. */
const AT_CORNER = 3;

type SideRun = { readonly piece: Piece; readonly seam: SeamLine; readonly length: number };
/** One run with its sides; `from` is where the longest of them begins on the drawing. */
type Run = {
  readonly name: string;
  readonly sides: readonly SideRun[];
  readonly from: number;
  readonly length: number;
};

/** "front to gusset: edge" is the run "edge" of the seam "front to gusset". */
const seamOf = ({ name }: SeamJoin): string => name.split(":")[0] ?? name;
const runOf = ({ name }: SeamJoin): string => name.split(":").slice(1).join(":").trim();

function sidesOf(join: SeamJoin, made: Made): readonly SideRun[] {
  return join.sides.flatMap((side) => {
    const piece = made.pieces.find(({ id }) => id === side.piece);
    const seam = piece?.seams.find(({ id }) => id === side.seam);
    return piece && seam ? [{ piece, seam, length: pathLength(seam.path) }] : [];
  });
}

/** The runs of a seam, each beginning where the longest side of the one before it ends. */
function runsOf(joins: readonly SeamJoin[], made: Made): readonly Run[] {
  let from = 0;
  return joins.map((join) => {
    const sides = sidesOf(join, made);
    const length = Math.max(0, ...sides.map((s) => s.length));
    const run = { name: runOf(join), sides, from, length };
    from += length;
    return run;
  });
}

/** Where a side's holes lie along the drawing; a side that is shorter on the flat lies in the run's middle. */
function holesOf(
  { piece, seam, length }: SideRun,
  run: Run,
): readonly { id: string; number: number; x: number }[] {
  const start = run.from + (run.length - length) / 2;
  return seam.holes.flatMap((id, i) => {
    const hole = piece.holes.find((h) => h.id === id);
    const number = (seam.numberFrom ?? 1) + i;
    return hole ? [{ id, number, x: start + nearestOnPath(hole.at, seam.path).at }] : [];
  });
}

/** The corner of the piece at which a run's end lies. */
function cornerAt({ piece, seam }: SideRun, end: Point): string | undefined {
  const near = piece.corners
    .map(({ name, at }) => ({ name, off: apart(at, end) }))
    .sort((a, b) => a.off - b.off)[0];
  return near && near.off <= AT_CORNER * seam.inset ? near.name : undefined;
}

/** A piece that is on both sides of a seam is told by its own seam's name. */
function nameOf({ piece, seam }: SideRun, all: readonly SideRun[]): string {
  const twice = all.filter((s) => s.piece === piece).length > 1;
  return twice ? `${piece.name} (${sayId(seam.id.replace(/\.\d+$/, ""))})` : piece.name;
}

type Row = { readonly name: string; readonly y: number; readonly words: 1 | -1 };

function sideItems(side: SideRun, run: Run, row: Row, last: boolean): readonly Item[] {
  const holes = holesOf(side, run);
  const start = run.from + (run.length - side.length) / 2;
  const tick = (x: number, half: number): ReturnType<typeof polyline> =>
    polyline([
      [x, row.y - half],
      [x, row.y + half],
    ]);
  const wordsY = row.y + (row.words > 0 ? TENTH_MM : -TENTH_MM - WORD_MM);
  const corners = [
    { x: start, name: cornerAt(side, side.seam.path.start) },
    { x: start + side.length, name: last ? cornerAt(side, endPoint(side.seam.path)) : undefined },
  ];
  return [
    stroke(
      "stitch",
      "01.1",
      polyline([
        [start, row.y],
        [start + side.length, row.y],
      ]),
      `${side.piece.id}.${side.seam.id}`,
    ),
    ...holes.flatMap(({ id, number, x }, i): readonly Item[] => {
      // The hole where two runs meet has its number from the first of them.
      const tenth = number % TENTH === 0 && (i > 0 || run.from === 0);
      return [
        stroke("stitch", "01.1", tick(x, (tenth ? TENTH_MM : TICK_MM) / 2), `${side.piece.id}.hole.${id}`),
        ...(tenth ? [words(String(number), [x, wordsY], "centre")] : []),
      ];
    }),
    ...corners.flatMap(({ x, name }): readonly Item[] =>
      name === undefined
        ? []
        : [
            stroke("mark", "01.1", tick(x, TENTH_MM)),
            words(name, [x, wordsY + row.words * (WORD_MM + GAP_MM)], x === 0 ? "left" : "right"),
          ],
    ),
  ];
}

/** Thin lines from each tenth hole to its mates, so that rows of unlike length can be followed. */
function mateLines(run: Run, rows: readonly Row[]): readonly Item[] {
  const all = run.sides.map((side) => holesOf(side, run));
  return (all[0] ?? []).flatMap((hole, i) => {
    if (hole.number % TENTH !== 0) return [];
    const points = all.flatMap((holes, k): readonly Point[] => (holes[i] ? [[holes[i].x, rows[k]!.y]] : []));
    return points.length > 1 ? [stroke("mark", "07.1", polyline(points))] : [];
  });
}

const countOf = (runs: readonly Run[], k: number): number =>
  new Set(runs.flatMap(({ sides }) => sides[k]?.seam.holes ?? [])).size;

function inWords(runs: readonly Run[], rows: readonly Row[], units: Units): readonly string[] {
  const size = (mm: number): string => sayFigure(mm, "length", units);
  const counts = rows.map(({ name }, k) => `${countOf(runs, k)} holes on ${name}`);
  return [
    `${counts.join(", ")}; every tenth is numbered.`,
    ...runs.map((run) => {
      const lengths = run.sides.map((s, k) => `${size(s.length)} on ${rows[k]?.name ?? s.piece.name}`);
      const ends = run.sides.flatMap((s) =>
        [s.seam.path.start, endPoint(s.seam.path)].flatMap((p) => cornerAt(s, p) ?? []),
      );
      const corners =
        ends.length === 0
          ? ""
          : `; it ends at ${oneOf([...new Set(ends)]).replace(/ or (?=[^,]*$)/, " and ")}`;
      return `${run.name === "" ? "The seam" : `Run ${run.name}`}: ${lengths.join(", ")}${corners}.`;
    }),
  ];
}

function seamPicture(name: string, joins: readonly SeamJoin[], made: Made, units: Units): FoldedPicture {
  const runs = runsOf(joins, made);
  const sides = runs[0]?.sides ?? [];
  const rows = sides.map(
    (side, k): Row => ({ name: nameOf(side, sides), y: -k * APART_MM, words: k === 0 ? 1 : -1 }),
  );
  const drawn = runs.flatMap((run, r): readonly Item[] => [
    ...mateLines(run, rows),
    ...run.sides.flatMap((side, k) => (rows[k] ? sideItems(side, run, rows[k], r === runs.length - 1) : [])),
    ...(run.name === "" ? [] : [words(run.name, [run.from + run.length / 2, APART_MM * 0.75], "centre")]),
  ]);
  const names = rows.map((row) => words(row.name, [-GAP_MM * 2, row.y - WORD_MM / 3], "right"));
  const below = (rows.at(-1)?.y ?? 0) - APART_MM;
  return framed(
    name,
    [...drawn, ...names],
    inWords(runs, rows, units),
    below,
    "its sides laid straight, hole row beside hole row",
  );
}

/** Each seam that joins pieces, its runs end to end; lengths as the leather lies, at full size. */
export function seamRowPictures(made: Made, units: Units): readonly FoldedPicture[] {
  const seams = new Map<string, SeamJoin[]>();
  for (const join of made.joins)
    if (join.kind === "seam") seams.set(seamOf(join), [...(seams.get(seamOf(join)) ?? []), join]);
  return [...seams].map(([name, joins]) => seamPicture(`Seam: ${name}`, joins, made, units));
}
