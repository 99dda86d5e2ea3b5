import type { PagePicture, PagePiece } from "../../job.ts";
import type { Moved } from "../state.ts";
import { pathData } from "./curves.ts";
import { moveOnto } from "./labels.ts";
import type { End } from "./look.ts";
import type { Mark } from "./marks.ts";
import { apart, outlineOf, type Point } from "./shapes.ts";
import type { Cell, Shelves } from "./shelves.ts";
import { group, itemSpecs, pathSpec, ringSpec, type Spec } from "./specs.ts";
import { onBench } from "./touch.ts";

/** Everything that the flat drawing shows. */
export type Scene = {
  readonly pieces: readonly PagePiece[];
  readonly shelves: Shelves;
  readonly turned: boolean;
  readonly labelsOf: (id: string) => PagePicture | undefined;
  readonly marks: readonly Mark[];
  readonly ends: readonly End[];
  readonly distance: string;
  readonly ghosts: ReadonlyMap<string, string>;
  readonly moved: readonly Moved[];
  /** Whether each piece's name stands above it. */
  readonly names: boolean;
};

const num = (n: number): string => `${Math.round(n * 1000) / 1000 || 0}`;

/** Turned over, a piece is mirrored within its box; `onBench` says the same of a point. */
function placeOf({ box, move }: Cell, turned: boolean): string {
  if (!turned) return `translate(${num(move[0])} ${num(move[1])})`;
  return `translate(${num(move[0] + box.minX + box.maxX)} ${num(move[1])}) scale(-1 1)`;
}

function linesOf(piece: PagePiece, scene: Scene): Spec {
  const picture = scene.labelsOf(piece.id);
  if (!picture) return group({ class: "lines" }, itemSpecs(piece.lines, `flat-${piece.id}`, scene.turned));
  const [x, y] = moveOnto(picture, piece);
  return group(
    { class: "lines", transform: `translate(${num(x)} ${num(y)})` },
    itemSpecs(picture.items, `flat-${piece.id}`, scene.turned),
  );
}

const markSpecs = ({ halo, ring }: Mark): readonly Spec[] => [
  ...(halo === undefined ? [] : [pathSpec("halo-under", halo), pathSpec("halo", halo)]),
  ...(ring === undefined ? [] : [ringSpec("ring-under", ring), ringSpec("ring", ring)]),
];

function pieceSpec(piece: PagePiece, cell: Cell, scene: Scene): Spec {
  const outline = outlineOf(piece.lines);
  const ghost = scene.ghosts.get(piece.id);
  return group({ class: "piece", "data-piece": piece.id, transform: placeOf(cell, scene.turned) }, [
    ...(outline ? [pathSpec("hide", pathData(outline.path))] : []),
    linesOf(piece, scene),
    ...(ghost === undefined ? [] : [pathSpec("ghost", ghost)]),
    ...scene.marks.filter((m) => m.piece === piece.id).flatMap(markSpecs),
  ]);
}

const upright = ([x, y]: Point): string => `translate(${num(x)} ${num(y)}) scale(1 -1)`;

function nameSpec(piece: PagePiece, cell: Cell, scene: Scene): Spec {
  const change = scene.moved.find((m) => m.piece === piece.id);
  const words = change ? ` – ${change.name}: ${change.before} → ${change.after}` : "";
  const at: Point = [cell.box.minX + cell.move[0], cell.box.maxY + cell.move[1]];
  return {
    tag: "text",
    attrs: { class: change ? "piece-name moved" : "piece-name", transform: upright(at), dy: "-0.4em" },
    text: `${piece.name}${words}`,
  };
}

/** The measured length: its ends, the line between them and its figure. */
function measureSpecs({ ends, shelves, turned, distance }: Scene): readonly Spec[] {
  const points = ends.flatMap(({ piece, at }): readonly Point[] => {
    const cell = shelves.cells.find((c) => c.id === piece);
    return cell ? [onBench(cell, turned, at)] : [];
  });
  const [a, b] = points;
  const rings = points.map((p) => ringSpec("end", p));
  if (!a || !b) return rings;
  const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const line = pathSpec("measured", `M${num(a[0])} ${num(a[1])}L${num(b[0])} ${num(b[1])}`);
  const figure: Spec = {
    tag: "text",
    attrs: { class: "figure", transform: upright(middle), "text-anchor": "middle", dy: "-0.5em" },
    text: distance,
  };
  return [line, ...rings, figure];
}

/** The drawing's elements; y is turned over once, for all of them. */
export function sceneSpecs(scene: Scene): readonly Spec[] {
  const laid = scene.pieces.flatMap((piece) => {
    const cell = scene.shelves.cells.find((c) => c.id === piece.id);
    return cell ? [{ piece, cell }] : [];
  });
  return [
    group({ class: "bench-top", transform: "scale(1 -1)" }, [
      ...laid.map(({ piece, cell }) => pieceSpec(piece, cell, scene)),
      ...(scene.names ? laid.map(({ piece, cell }) => nameSpec(piece, cell, scene)) : []),
      ...measureSpecs(scene),
    ]),
  ];
}

/** The length between two ends, mm; undefined while there are not two on one piece that is there. */
export function lengthOf(ends: readonly End[], pieces: readonly PagePiece[]): number | undefined {
  const [a, b] = ends;
  if (!a || !b || a.piece !== b.piece || !pieces.some((p) => p.id === a.piece)) return undefined;
  return apart(a.at, b.at);
}
