// What the drawing says beside its view: facts, findings, tables, the press, the lines.
import type { Die } from "../../die/die.ts";
import type { Finding } from "../../model/finding.ts";
import type { Units } from "../../model/say.ts";
import { heading, text } from "../sheet/flow.ts";
import { bevelSketch } from "./bevelSketch.ts";
import { sayScale } from "./figures.ts";
import { lineKey } from "./lineKey.ts";
import { loadTable, pressCautions, sayLoad } from "./press.ts";
import type { Sheeted } from "./sheeted.ts";
import { isLong } from "./stretches.ts";
import { type Table, tableLines } from "./table.ts";
import { byHandTableOf, holesTableOf, outlineTableOf, sayLeftOut, shapedRules } from "./tables.ts";
import type { DieTitle } from "./titleRows.ts";
import { factsOf } from "./words.ts";

type Said = {
  readonly die: Die;
  readonly units: Units;
  readonly title: DieTitle;
  readonly findings: readonly Finding[];
};

type Set = { readonly width: number };

const SEVERITIES = { error: "ERROR, do not make it", caution: "Caution", note: "Note" } as const;

const capital = (words: string): string => words.slice(0, 1).toUpperCase() + words.slice(1);
const bare = (sentence: string): string => sentence.replace(/[.\s]+$/, "");

const sayFinding = ({ severity, message, mend }: Finding): string =>
  `${SEVERITIES[severity]}: ${bare(message)}. To mend: ${bare(mend)}.`;

/** A headed table; nothing when it has no rows. */
function headed(
  title: string,
  table: Table,
  { width }: Set,
  notes: readonly string[] = [],
): readonly Sheeted[] {
  if (table.rows.length === 0) return [];
  return [
    heading(title),
    ...notes.map((note) => ({ ...text(note, width), keep: true })),
    { height: 1.2, keep: true, draw: () => [] },
    ...tableLines(table, width),
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
  const facts = [...factsOf(die, units, title.hand, title.side), ["Scale", scale] as const];
  const table: Table = {
    columns: [{ title: "about" }, { title: "what is asked for", folds: true }],
    rows: facts,
  };
  return headed("What is ordered", table, set);
}

function definitions({ die, units }: Said, set: Set): readonly Sheeted[] {
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
    ...headed("Holes, slots and openings", holesTableOf(die, units), set, [...holes, ...sayLeftOut(die)]),
    ...shapedRules(die).flatMap(({ feature, rule }) =>
      headed(
        `${capital(feature.kind)} ${feature.letter ?? ""}: lines and arcs, in order`,
        outlineTableOf(rule.path),
        set,
        [counted],
      ),
    ),
    ...headed("By hand afterwards: not in the die", byHandTableOf(die), set),
  ];
}

/** All the drawing's text for a column of this width; `reduced` as the view is. */
export function dieText(said: Said, reduced: number, width: number): readonly Sheeted[] {
  const { die, units, findings } = said;
  const set = { width };
  const grave = findings.filter(({ severity }) => severity !== "note");
  const notes = findings.filter(({ severity }) => severity === "note");
  const list = (title: string, says: readonly string[]): readonly Sheeted[] =>
    says.length === 0 ? [] : [heading(title), ...says.map((s) => text(s, width))];
  return [
    ...list("Look here first", grave.map(sayFinding)),
    ...factLines(said, reduced, set),
    heading("Lines, numbered as in ISO 128-2"),
    ...lineKey(die, width),
    heading("How the rule is ground: a section through the outline, not to scale"),
    bevelSketch(die.settings),
    ...definitions(said, set),
    ...list("To know", notes.map(sayFinding)),
    ...list("At the press", [...pressCautions, sayLoad(die)]),
    ...headed("Press load, an estimate", loadTable(die, units), set),
  ];
}
