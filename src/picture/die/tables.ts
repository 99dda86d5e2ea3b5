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
import type { Units } from "../../model/say.ts";
import { printAngle, printNumber } from "../../units/index.ts";
import { sayId } from "../piece/say.ts";
import { bothUnits } from "./figures.ts";
import type { Table } from "./table.ts";

const WORDY: readonly string[] = ["kind", "turns"];
const outlineColumns = OUTLINE_COLUMNS.map((title) => ({ title, figures: !WORDY.includes(title) }));

/** The lines and arcs of a closed rule, mm. */
export const outlineTableOf = (path: Path): Table => ({
  columns: outlineColumns,
  rows: outlineTable(path).map(outlineCells),
});

function saySize({ size, kind }: HoleRow, units: Units): string {
  if (!size) return "";
  if ("diameter" in size) return `Ø ${bothUnits(size.diameter, units)}`;
  const both = `${bothUnits(size.length, units)} × ${bothUnits(size.width, units)}`;
  return kind === "opening" ? `${both} over all` : both;
}

/** The holes, slots and openings: middle, size and kind. */
export function holesTableOf(die: Die, units: Units): Table {
  const shaped = new Set(shapedRules(die).map(({ feature }) => feature.id));
  return {
    columns: [
      { title: "letter" },
      { title: "x", figures: true },
      { title: "y", figures: true },
      { title: `size, ${units === "in" ? "in [mm]" : "mm [in]"}` },
      { title: "long side" },
      { title: "kind" },
      { title: "made" },
      { title: "name on the piece", folds: true },
    ],
    rows: holeTable(die.features).map((row) => [
      row.letter,
      figure(row.x),
      figure(row.y),
      saySize(row, units),
      row.angle === undefined ? "–" : `${printAngle(row.angle)} from x`,
      shaped.has(row.id) ? `${row.kind}, see its own table` : row.kind,
      row.made,
      sayId(row.id),
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

/** What is made by hand afterwards and has no letter: alike things together. */
export function byHandTableOf({ features }: Die): Table {
  const left = features.filter((f) => f.made === "by hand afterwards" && f.letter === undefined);
  const key = ({ kind, why }: DieFeature): string => `${kind}|${why}`;
  const keys = [...new Set(left.map(key))];
  return {
    columns: [
      { title: "what" },
      { title: "how many", figures: true },
      { title: "middle at x, y" },
      { title: "why it is not in the die", folds: true },
    ],
    rows: keys.map((k) => {
      const alike = left.filter((f) => key(f) === k);
      return [alike[0]!.kind, String(alike.length), sayPlaces(alike), alike[0]!.why];
    }),
  };
}

/** Of many alike the first few places are named: the view shows them all. */
const PLACES = 2;

function sayPlaces(alike: readonly DieFeature[]): string {
  const places = alike.slice(0, PLACES).map(({ at: [x, y] }) => `${printNumber(x, 1)}, ${printNumber(y, 1)}`);
  return `${places.join("; ")}${alike.length > PLACES ? "; …" : ""}`;
}

/** Slots and holes that a die maker might miss: how many of which are left for the bench, and why. */
export function sayLeftOut({ features }: Die): readonly string[] {
  const left = features.filter((f) => f.made === "by hand afterwards" && f.letter !== undefined);
  const whys = [...new Set(left.map(({ kind, why }) => `${kind}|${why}`))];
  return whys.map((k) => {
    const alike = left.filter(({ kind, why }) => `${kind}|${why}` === k);
    const { kind, why } = alike[0]!;
    return `${alike.length} ${kind}${alike.length === 1 ? " is" : "s are"} not in the die: ${why}.`;
  });
}
