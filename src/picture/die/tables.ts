// The tables that define a die: the lines and arcs of its outline and openings, its holes, and what is left
// for the bench.
import type { Die } from "../../die/die.ts";
import type { DieFeature } from "../../die/feature.ts";
import { type HoleRow, holeTable } from "../../die/holeTable.ts";
import { figure, OUTLINE_COLUMNS, outlineCells } from "../../die/outlineCells.ts";
import { outlineTable } from "../../die/outlineTable.ts";
import type { RulePath } from "../../die/rulePaths.ts";
import { curveAt, curvesOf } from "../../geometry/curve.ts";
import { distanceToPath } from "../../geometry/distance.ts";
import { type Path, slotPath } from "../../geometry/path.ts";
import { printAngle } from "../../units/index.ts";
import { bothUnits, printAlike, sayLetters } from "./figures.ts";
import type { Table } from "./table.ts";

const WORDY: readonly string[] = ["kind", "turns"];
const outlineColumns = OUTLINE_COLUMNS.map((title) => ({ title, figures: !WORDY.includes(title) }));

/** The lines and arcs of a closed rule, mm. */
export const outlineTableOf = (path: Path): Table => ({
  columns: outlineColumns,
  rows: outlineTable(path).map(outlineCells),
});

/** What is less than this is printed as 0°, radians. */
const STRAIGHT = 1e-6;

/** Millimetres first, whatever the order works in: all tables are in millimetres. */
const inTable = (mm: number): string => bothUnits(mm, "mm");

function saySize({ size, kind }: HoleRow): string {
  if (!size) return "";
  if ("diameter" in size) return `Ø ${inTable(size.diameter)}`;
  if (kind === "notch") return `${inTable(size.length)} long`;
  const both = `${inTable(size.length)} × ${inTable(size.width)}`;
  return kind === "opening" ? `${both} over all` : both;
}

/** A long side has two directions: the one from 0° up to 180°, so that nobody reads a sign. */
const turnedUp = (angle: number): number => (angle < -STRAIGHT ? angle + Math.PI : angle);

/** The holes, slots and openings: middle, size and kind. */
export function holesTableOf(die: Die): Table {
  const shaped = new Set(shapedRules(die).map(({ feature }) => feature.id));
  return {
    columns: [
      { title: "letter" },
      { title: "x, mm", figures: true },
      { title: "y, mm", figures: true },
      { title: "size, mm [in]" },
      { title: "long side, from x anticlockwise" },
      { title: "kind" },
      { title: "made" },
    ],
    rows: holeTable(die.features).map((row) => [
      row.letter,
      figure(row.x),
      figure(row.y),
      saySize(row),
      row.angle === undefined ? "–" : printAngle(turnedUp(row.angle)),
      shaped.has(row.id) ? `${row.kind}, see its own table` : row.kind,
      row.made,
    ]),
  };
}

/** A slot is what its row says, with round ends, when its rule lies this near to that, mm. */
const SAME_SLOT_MM = 0.001;
const LOOKED_AT = 16;

function isPlainSlot({ at, size, angle }: DieFeature, path: Path): boolean {
  if (!size || "diameter" in size || angle === undefined || size.length <= size.width) return false;
  const plain = slotPath(at, size.length, size.width, angle);
  const points = curvesOf(path).flatMap((c) =>
    Array.from({ length: LOOKED_AT }, (_, i) => curveAt(c, i / LOOKED_AT)),
  );
  return points.every((p) => distanceToPath(p, plain) <= SAME_SLOT_MM);
}

export type InnerShape = { readonly feature: DieFeature; readonly rule: RulePath };

/** The slots and openings of the die that a middle and two sizes don't define: they have tables of their own. */
export const shapedRules = ({ rules, features }: Die): readonly InnerShape[] =>
  rules.flatMap((rule) => {
    const feature = features.find(({ id }) => id === rule.id);
    return rule.kind === "slot" && feature && !isPlainSlot(feature, rule.path) ? [{ feature, rule }] : [];
  });

/** Rows of holes are said by what they consist of, not one by one. */
const isRow = ({ kind }: DieFeature): boolean => kind === "stitch holes" || kind === "awl holes";
const SEWN = { "stitch holes": "pricked and sewn", "awl holes": "pricked" } as const;
const howOf = ({ kind, why }: DieFeature): string =>
  kind === "stitch holes" || kind === "awl holes" ? SEWN[kind] : why;

const slitsOf = ({ paths }: DieFeature): string =>
  paths.every(({ closed }) => !closed)
    ? "awl slit"
    : paths.every(({ closed }) => closed)
      ? "round hole"
      : "hole";

const many = (count: number, what: string): string => `${count} ${what}${count === 1 ? "" : "s"}`;

/** `24 awl slits in 2 rows of 12`, `23 awl slits in 2 rows: 12 and 11`; of other things how many. */
function sayCount(alike: readonly DieFeature[]): string {
  if (!isRow(alike[0]!)) return String(alike.length);
  const counts = alike.map(({ paths }) => paths.length);
  const all = counts.reduce((a, b) => a + b, 0);
  const holes = many(all, slitsOf(alike[0]!));
  if (counts.length === 1) return all === 1 ? holes : `${holes} in 1 row`;
  const same = counts.every((n) => n === counts[0]);
  if (same && counts[0] === 1) return holes;
  const each = same ? ` of ${counts[0]}` : `: ${counts.slice(0, -1).join(", ")} and ${counts.at(-1)}`;
  return `${holes} in ${many(counts.length, "row")}${each}`;
}

/** What is made by hand afterwards and has no letter: alike things together, each place named. */
export function byHandTableOf({ features }: Die): Table {
  const left = features.filter((f) => f.made === "by hand afterwards" && f.letter === undefined);
  const key = (f: DieFeature): string => `${f.kind}|${howOf(f)}|${isRow(f) ? slitsOf(f) : ""}`;
  const keys = [...new Set(left.map(key))];
  return {
    columns: [
      { title: "what" },
      { title: "how many", folds: true },
      { title: "middle at x, y, mm", folds: true },
      { title: "how", folds: true },
    ],
    rows: keys.map((k) => {
      const alike = left.filter((f) => key(f) === k);
      return [alike[0]!.kind, sayCount(alike), sayPlaces(alike), howOf(alike[0]!)];
    }),
  };
}

const sayPlaces = (alike: readonly DieFeature[]): string =>
  alike.map(({ at: [x, y] }) => `${printAlike(x, 1)}, ${printAlike(y, 1)}`).join("; ");

/** Slots and holes that a die maker might miss: how many of which are left for the bench, and why. */
export function sayLeftOut({ features }: Die): readonly string[] {
  const left = features.filter((f) => f.made === "by hand afterwards" && f.letter !== undefined);
  const whys = [...new Set(left.map(({ kind, why }) => `${kind}|${why}`))];
  return whys.map((k) => {
    const alike = left.filter(({ kind, why }) => `${kind}|${why}` === k);
    const { kind, why } = alike[0]!;
    const letters = sayLetters(alike.map(({ letter }) => letter!));
    return `${alike.length} ${kind}${alike.length === 1 ? "" : "s"} (${letters}) ${alike.length === 1 ? "is" : "are"} not in the die: ${why}.`;
  });
}
