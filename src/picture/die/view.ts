// One view of the piece with all that stands round it: sizes over all, the holes' letters and places.

import type { Die } from "../../die/die.ts";
import { type HoleRow, holeTable } from "../../die/holeTable.ts";
import { boundsOf, unionBox } from "../../geometry/bounds.ts";
import type { Box } from "../../geometry/path.ts";
import type { Units } from "../../model/say.ts";
import { roundMm } from "../../units/index.ts";
import type { Item } from "../picture.ts";
import { textBox } from "../words.ts";
import { drawnAlong } from "./drawnAlong.ts";
import { auxiliary, bothUnits, sayLetters } from "./figures.ts";
import { BEND_MM, type Ordinate, ordinateItems, type Row, reachOf } from "./ordinates.ts";
import { OVERALL_MM, overallItems, widthReach } from "./overall.ts";
import { outlineBox, partStrokes } from "./partLines.ts";

/** What stands at the holes: letters and places, letters alone, or nothing; the table has it all. */
export type Lettering = "places" | "letters" | "none";

export type View = {
  readonly items: readonly Item[];
  /** All that is drawn, in the piece's own frame on paper. */
  readonly box: Box;
  /** What the view leaves to be said beside it. */
  readonly notes: readonly string[];
};

export type ViewAsked = {
  readonly die: Die;
  readonly units: Units;
  /** Paper millimetres to a millimetre of the piece. */
  readonly k: number;
  readonly lettering: Lettering;
};

/** Places nearer to each other than this, mm on the piece, are one place. */
const SAME_PLACE_MM = 0.005;

type Place = { readonly value: number; readonly rows: readonly HoleRow[] };

/** Rows gathered by their place along an axis, in order. */
function placesOf(rows: readonly HoleRow[], value: (row: HoleRow) => number): readonly Place[] {
  const sorted = [...rows].sort((a, b) => value(a) - value(b));
  const places: { value: number; rows: HoleRow[] }[] = [];
  for (const row of sorted) {
    const open = places.at(-1);
    if (open && value(row) - open.value < SAME_PLACE_MM) open.rows.push(row);
    else places.push({ value: value(row), rows: [row] });
  }
  return places;
}

/** `A1 to A3`, and what of it is not in the die. */
function lettersOf(rows: readonly HoleRow[]): string {
  const of = (made: HoleRow["made"]): readonly string[] =>
    rows.filter((r) => r.made === made).map(({ letter }) => letter);
  const [die, hand] = [of("in the die"), of("by hand afterwards")];
  return [
    ...(die.length > 0 ? [sayLetters(die)] : []),
    ...(hand.length > 0 ? [`by hand ${sayLetters(hand)}`] : []),
  ].join("; ");
}

type Axis = {
  readonly along: "x" | "y";
  readonly rows: readonly HoleRow[];
  readonly value: (row: HoleRow) => number;
  readonly across: (row: HoleRow) => number;
  /** What stands at each place. */
  readonly says: "letters" | "places" | "both";
  /** The outline's side that the labels stand on, on paper. */
  readonly edge: number;
};

/** The datum's line and others that lead to no single hole begin this far off the outline, mm. */
const OFF_MM = 1;

/** The places along an axis as ordinates; the datum is always one of them. */
function ordinatesOf(axis: Axis, { die, k, units }: ViewAsked): readonly Ordinate[] {
  const { along, rows, value: placeOf, across, says, edge } = axis;
  const off = edge + OFF_MM;
  const each = placesOf(rows, placeOf).map(({ value, rows: here }): Ordinate => {
    const zero = Math.abs(value) < SAME_PLACE_MM;
    const figure = zero ? "0" : auxiliary(value, units);
    const letters = zero && says === "letters" ? `${lettersOf(here)}  0` : lettersOf(here);
    const text = { letters, places: figure, both: `${letters}  ${figure}` }[says];
    // A line that would lie on a fold or on the centre line begins off the piece: that line leads on.
    const hides = drawnAlong(die, along, value, k);
    const from = says === "places" || hides ? off : Math.min(...here.map(across)) * k;
    return { at: zero ? 0 : roundMm(value * k), text, from };
  });
  return each.some(({ at }) => at === 0) ? each : [...each, { at: 0, text: "0", from: off }];
}

/** What is drawn, in a box: lines and words. */
export function boxOfItems(items: readonly Item[]): Box {
  return unionBox(
    items.map((item) => {
      if (item.kind === "group") throw new Error("boxOfItems: groups are not looked into");
      return item.kind === "words" ? textBox(item) : boundsOf(item.path);
    }),
  );
}

/** Rows of labels keep this far from what lies beside them, mm. */
const APART_MM = 1.5;
/** From the line of dimensions to the datum's 0, when it stands alone, mm. */
const SHORT_BEND_MM = 2;

/** The row to the right of the view: places along y, with letters where they differ. */
function acrossRow(asked: ViewAsked, box: Box, rows: readonly HoleRow[], levels: number): Row {
  const here = asked.lettering === "places" ? rows : [];
  const line = Math.max(box.maxX, 0) + OVERALL_MM;
  const axis: Axis = {
    along: "y",
    rows: here,
    value: (r) => r.y,
    across: (r) => r.x,
    says: levels > 1 ? "both" : "places",
    edge: box.maxX,
  };
  const bend = here.length > 0 ? BEND_MM : SHORT_BEND_MM;
  return { along: "y", line, labelsFrom: line + bend, ordinates: ordinatesOf(axis, asked) };
}

/** The row above the view: letters, and places along x. */
function alongRow(asked: ViewAsked, box: Box, rows: readonly HoleRow[], top: number): Row {
  const says = asked.lettering === "places" ? "both" : "letters";
  const axis: Axis = { along: "x", rows, value: (r) => r.x, across: (r) => r.y, says, edge: box.maxY };
  const line = top + OVERALL_MM;
  const bare = says === "letters" ? { bare: true, ring: true } : {};
  return { along: "x", line, labelsFrom: line + BEND_MM, ordinates: ordinatesOf(axis, asked), ...bare };
}

/** More sizes than this are left to the table. */
const SIZES = 5;

/** `A: round hole (Ø 5.2 [0.205])`: what the letters stand for, since no size stands on the piece. */
function sizesNote(rows: readonly HoleRow[], units: Units): readonly string[] {
  const letterOf = ({ letter }: HoleRow): string => letter.replace(/\d+$/, "");
  const letters = [...new Set(rows.map(letterOf))];
  if (letters.length === 0 || letters.length > SIZES) return [];
  const says = letters.map((letter) => {
    const { kind, size } = rows.find((row) => letterOf(row) === letter)!;
    const inWords = !size
      ? ""
      : "diameter" in size
        ? ` (Ø ${bothUnits(size.diameter, units)})`
        : kind === "notch"
          ? ` (${bothUnits(size.length, units)} long)`
          : ` (${bothUnits(size.length, units)} × ${bothUnits(size.width, units)})`;
    return `${letter}: ${kind}${inWords}`;
  });
  return [`${says.join("; ")}.`];
}

/** What the view does not show by itself. */
function notesOf(
  { lettering, units }: ViewAsked,
  rows: readonly HoleRow[],
  levels: readonly Place[],
): readonly string[] {
  if (rows.length === 0) return [];
  const sizes = sizesNote(rows, units);
  if (lettering === "none")
    return [
      ...sizes,
      "Letters and places of the holes: there is no room for them beside the view; the table of holes has them.",
    ];
  if (lettering === "letters")
    return [
      ...sizes,
      "Places of the holes: there is no room for them beside the view at this scale; the table of holes has them.",
    ];
  const [level] = levels;
  if (levels.length > 1 || rows.length === 1) return sizes;
  const y = Math.abs(level!.value) < SAME_PLACE_MM ? "0" : auxiliary(level!.value, units);
  return [...sizes, `All holes (${lettersOf(rows)}) at y ${y}.`];
}

/** The piece at a scale with its dimensions, and what is to be said beside it. */
export function viewOf(asked: ViewAsked): View {
  const { die, units, k, lettering } = asked;
  const box = outlineBox(die, k);
  const rows = holeTable(die.features);
  const shown = lettering === "none" ? [] : rows;
  const levels = placesOf(shown, ({ y }) => y);
  const says = {
    length: auxiliary((box.maxX - box.minX) / k, units),
    width: auxiliary((box.maxY - box.minY) / k, units),
  };
  const across = acrossRow(asked, box, shown, levels.length);
  const side = reachOf(across);
  const middle = (box.minY + box.maxY) / 2;
  const [high, low] = [middle + widthReach(says.width), middle - widthReach(says.width)];
  const top = Math.max(box.maxY, 0, side.high - OVERALL_MM + APART_MM, high - OVERALL_MM);
  const under = Math.min(box.minY - OVERALL_MM, -OVERALL_MM, side.low - APART_MM, low);
  const items = [
    ...overallItems(box, says, under),
    ...ordinateItems(across),
    ...ordinateItems(alongRow(asked, box, shown, top)),
    ...partStrokes(die, k),
  ];
  return { items, box: boxOfItems(items), notes: notesOf(asked, rows, levels) };
}
