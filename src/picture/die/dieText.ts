// What the drawing says beside its view: facts, findings, tables, the press, the lines.

import type { Die } from "../../die/die.ts";
import type { Finding } from "../../model/finding.ts";
import type { Units } from "../../model/say.ts";
import { capital } from "../../model/words.ts";
import { blockSize, blockWords, paragraph } from "../piece/block.ts";
import { SMALL_MM } from "../piece/title.ts";
import { type Flowing, heading, text, together } from "../sheet/flow.ts";
import { bevelSketch, SKETCH_MM } from "./bevelSketch.ts";
import type { DieTitle } from "./dieTitle.ts";
import { sayScale } from "./figures.ts";
import { lineKey } from "./lineKey.ts";
import { loadWorked, pressCautions, ROUNDED, sayLoad } from "./press.ts";
import type { Sheeted } from "./sheeted.ts";
import { isLong } from "./stretches.ts";
import { type Table, tableLines } from "./table.ts";
import { byHandTableOf, holesTableOf, outlineTableOf, sayLeftOut, shapedRules } from "./tables.ts";
import { factsOf } from "./words.ts";

type Said = {
  readonly die: Die;
  readonly units: Units;
  readonly title: DieTitle;
  readonly findings: readonly Finding[];
};

type Set = { readonly width: number; readonly tight: boolean };

const SEVERITIES = { error: "ERROR, do not make it", caution: "Caution", note: "Note" } as const;

const bare = (sentence: string): string => sentence.replace(/[.\s]+$/, "");

/** How an order is mended is for who wrote it: here stands what is so. */
const sayFinding = ({ severity, message }: Finding): string => `${SEVERITIES[severity]}: ${bare(message)}.`;

/** Each once: places that are alike have one message between them. */
const sayFindings = (all: readonly Finding[]): readonly string[] => [...new Set(all.map(sayFinding))];

const ASK = "If any of this can't be made as drawn, or looks like a slip, ask before you make the die.";
/** The table of holes says it already. */
const SAID_THERE = "die-left-for-hand";

/** A headed table; nothing when it has no rows. */
function headed(
  title: string,
  table: Table,
  { width, tight }: Set,
  notes: readonly string[] = [],
  whole = false,
): readonly Sheeted[] {
  if (table.rows.length === 0) return [];
  return [
    heading(title),
    ...notes.map((note) => ({ ...text(note, width), keep: true })),
    { height: 1.2, keep: true, draw: () => [] },
    ...tableLines(table, width, { tight, whole }),
  ];
}

function factLines({ die, units, title }: Said, reduced: number, set: Set): readonly Sheeted[] {
  const whole = isLong(die)
    ? "the next sheets show it at true scale, in stretches"
    : "the piece at true scale comes with this drawing, as a template in sheets to join";
  const scale =
    reduced === 1
      ? "The view is at true scale. Measure its 50 mm square on the print before anything else."
      : `The view is reduced ${sayScale(reduced)}; ${whole}. The tables say what to make. Measure the 50 mm square on the print: it is 50 mm on paper whatever the view's scale.`;
  const facts = [...factsOf(die, units, title), ["Scale", scale] as const];
  const table: Table = {
    columns: [{ title: "about" }, { title: "what is asked for", folds: true }],
    rows: facts,
  };
  return headed("What is ordered", table, set);
}

function definitions({ die }: Said, set: Set): readonly Sheeted[] {
  const outline = die.rules[0]!;
  const counted =
    "Millimetres from the datum. An arc runs from its start to its end about its centre, as its last column says.";
  const holes = [
    "Letters stand for a kind and a size. x and y, in millimetres from the datum, are those of the middle. A slot's length is over its ends, each a half circle as wide as the slot.",
  ];
  return [
    ...headed("Outline: lines and arcs, in order", outlineTableOf(outline.path), set, [
      `${counted} The last row ends where the first begins.`,
    ]),
    ...headed("Holes, slots and openings", holesTableOf(die), set, [...holes, ...sayLeftOut(die)]),
    ...shapedRules(die).flatMap(({ feature, rule }) =>
      headed(
        `${capital(feature.kind)} ${feature.letter ?? ""}: lines and arcs, in order`,
        outlineTableOf(rule.path),
        set,
        [counted],
      ),
    ),
    ...headed("By hand afterwards: not in the die", byHandTableOf(die), set, [
      "Middles of holes' rows, lines and fields, in millimetres from the datum, to 0.1.",
    ]),
  ];
}

/** Words that only who doubts a figure reads. */
function smallPrint(words: string, width: number): Flowing {
  const block = paragraph(words, SMALL_MM, width);
  const { width: wide, height } = blockSize(block);
  return {
    height: height + SMALL_MM / 2,
    draw: (left, top) =>
      blockWords(block, {
        minX: left,
        maxX: left + wide,
        minY: top - SMALL_MM / 2 - height,
        maxY: top - SMALL_MM / 2,
      }),
  };
}

const APART_MM = 6;
/** The key to the lines needs this much beside the sketch. */
const KEY_MM = 85;

/** The key to the lines, and how the rule is ground: side by side where there is room. */
function keyAndSketch(die: Die, width: number): readonly Sheeted[] {
  const beside = width - SKETCH_MM - APART_MM;
  const key = (wide: number): readonly Sheeted[] => [
    heading("Lines, numbered as in ISO 128-2"),
    ...lineKey(die, wide),
  ];
  const sketch: readonly Sheeted[] = [
    heading("How the rule is ground"),
    { ...text("A section through the outline, not to scale.", SKETCH_MM), keep: true },
    bevelSketch(die.settings),
  ];
  if (beside < KEY_MM) return [...key(width), ...sketch];
  const [left, right] = [together(key(beside)), together(sketch)];
  return [
    {
      height: Math.max(left.height, right.height),
      draw: (x, top) => [...left.draw(x, top), ...right.draw(x + beside + APART_MM, top)],
    },
  ];
}

/** All that is said of the press: it stays together. */
function atPress(die: Die, set: Set): readonly Sheeted[] {
  const { width } = set;
  const load = loadWorked(die);
  const words = [...pressCautions, sayLoad(die)].map((s) => ({ ...text(s, width), keep: true }));
  return [
    heading("At the press"),
    ...words,
    ...headed("Press load, an estimate", load.table, set, [ROUNDED], true),
    smallPrint(load.sources, width),
  ];
}

/** All the drawing's text for a column of this width; `reduced` as the view is; `tight` to save a sheet. */
export function dieText(said: Said, reduced: number, width: number, tight = false): readonly Sheeted[] {
  const { die, findings } = said;
  const set = { width, tight };
  const grave = findings.filter(({ severity }) => severity !== "note");
  const notes = findings.filter(({ severity, rule }) => severity === "note" && rule !== SAID_THERE);
  const list = (title: string, says: readonly string[]): readonly Sheeted[] =>
    says.length === 0 ? [] : [heading(title), ...says.map((s) => text(s, width))];
  return [
    ...list("Look here first", grave.length === 0 ? [] : [...sayFindings(grave), ASK]),
    ...factLines(said, reduced, set),
    ...keyAndSketch(die, width),
    ...definitions(said, set),
    ...list("To know", sayFindings(notes)),
    ...atPress(die, set),
  ];
}
