// Die drawings of real pieces for the tests, and what is looked for on them.
import { checkDie } from "../../src/die/checks/index.ts";
import { type Die, dieFor } from "../../src/die/die.ts";
import { type DieSettings, defaultDie } from "../../src/die/settings.ts";
import { flatten } from "../../src/geometry/flatten.ts";
import type { Point } from "../../src/geometry/path.ts";
import { makeJob } from "../../src/job.ts";
import type { Piece } from "../../src/model/piece.ts";
import type { Units } from "../../src/model/say.ts";
import { type DieDrawingInput, dieDrawing } from "../../src/picture/die/dieDrawing.ts";
import { flattenPicture } from "../../src/picture/flat.ts";
import type { Picture } from "../../src/picture/picture.ts";
import { textCorners } from "../../src/picture/words.ts";
import { orderFiles } from "./orders.ts";

export const LETTER = { width: 215.9, height: 279.4 };
export const A4 = { width: 210, height: 297 };
export const A3 = { width: 297, height: 420 };
export const MARGIN = 10;

export function inputFor(die: Die, units: Units, more: Partial<DieDrawingInput> = {}): DieDrawingInput {
  const pair = die.piece.hand === "pair";
  return {
    die,
    sheet: LETTER,
    margin: MARGIN,
    units,
    title: {
      owner: "Thornfield Saddlery, Hexham",
      article: "one-ear headstall",
      forWhom: "Juniper, bay mare, 15.1 hands",
      piece: die.piece.name,
      number: `TS-104-${die.piece.id}`,
      revision: "B",
      date: "2026-11-25",
      side: pair ? "left as drawn" : "no left or right",
      hand: pair ? `${die.piece.count}: a pair` : `${die.piece.count}, all alike`,
    },
    findings: checkDie(die, units),
    ...more,
  };
}

export type PieceOf = { readonly name: string; readonly piece: Piece; readonly units: Units };

/** Every piece of every order of the repository, or of those whose names are given. */
export const orderPieces = (
  named: readonly string[] = orderFiles.map(({ name }) => name),
): readonly PieceOf[] =>
  orderFiles
    .filter(({ name }) => named.includes(name))
    .flatMap(({ name, text }) => {
      const made = makeJob(text, name);
      if (!made.made) throw new Error(`${name} is not made`);
      const { units } = made.job.order;
      return made.job.made.pieces.map((piece) => ({ name: `${name}: ${piece.id}`, piece, units }));
    });

/** One piece's die. */
export function dieOf(order: string, id: string, settings: Partial<DieSettings> = {}): Die {
  const found = orderPieces([order]).find(({ piece }) => piece.id === id);
  if (!found) throw new Error(`${order} has no piece ${id}`);
  return dieFor(found.piece, { ...defaultDie(), ...settings });
}

export type DrawnDie = PieceOf & { readonly die: Die; readonly pictures: readonly Picture[] };

export function drawn({ name, piece, units }: PieceOf, more: Partial<DieDrawingInput> = {}): DrawnDie {
  const die = dieFor(piece, defaultDie());
  return { name, piece, units, die, pictures: dieDrawing(inputFor(die, units, more)) };
}

/** True when a ray to the right crosses the edges an odd number of times. */
function isInside(corners: readonly Point[], [x, y]: Point): boolean {
  let inside = false;
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length]!;
    if (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) inside = !inside;
  });
  return inside;
}

/** Words whose corners or middle lie on the piece, within what is shown of it. */
export function wordsOnPart(picture: Picture): readonly string[] {
  const flat = flattenPicture(picture);
  const parts = flat.flatMap(({ item, clips }) =>
    item.kind === "stroke" && item.id?.endsWith("die.outline")
      ? [{ corners: flatten(item.path, 0.1), clips }]
      : [],
  );
  return flat.flatMap(({ item }) => {
    if (item.kind !== "words" || item.text === "") return [];
    const [a, b, c, d] = textCorners(item);
    const points: readonly Point[] = [a, b, c, d, [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2]];
    const lies = parts.some(({ corners, clips }) =>
      points.some((p) => isInside(corners, p) && clips.every((clip) => isInside(clip, p))),
    );
    return lies ? [item.text] : [];
  });
}
