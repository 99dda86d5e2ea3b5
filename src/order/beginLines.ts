import { type Dimension, isMeasured, orderKey, type Value } from "../model/dimension.ts";
import { leaf } from "../model/quantity.ts";
import { MM_PER_OUNCE } from "../units/index.ts";
import { allowedWords, boundOf, defaultWords, type Known, sentence, textOf } from "./about.ts";
import { type Branch, nameOf, tableOf } from "./branch.ts";
import { under } from "./entry.ts";
import { scalarText } from "./scalar.ts";

// The lines of a new file: every setting with its meaning, range and default.

/** Fits a window and a printed page. */
const LINE_LENGTH = 100;
const STEP = "  ";

/** Words as lines of comment, none longer than a line may be. */
export function comment(words: string, indent: string): readonly string[] {
  const lines: string[] = [];
  let line = `${indent}#`;
  for (const word of words.split(" ").filter(Boolean)) {
    if (line.length + 1 + word.length > LINE_LENGTH && line !== `${indent}#`) {
      lines.push(line);
      line = `${indent}#`;
    }
    line += ` ${word}`;
  }
  return [...lines, line];
}

/** Steps of round sizes, mm and radians. */
const ROUND_STEPS: Partial<Record<Dimension["kind"], number>> = {
  length: 25.4 / 8,
  thickness: MM_PER_OUNCE / 2,
  hands: 101.6,
  pitch: 0.5,
  angle: Math.PI / 36,
  count: 1,
  ratio: 0.01,
};

/** The example that a meaning ends with: "price of a tube, set, as in 2.50". */
const exampleIn = (means: string): string | undefined => /, as in (\d+(?:\.\d+)?)$/.exec(means)?.[1];

/** The meaning's own example, or a round size from the middle of the range: something to overwrite. */
function example(d: Dimension, known: Known): string {
  if (!isMeasured(d)) return "";
  const own = exampleIn(d.means);
  if (own !== undefined) return own;
  const least = boundOf(d.least, known) ?? 0;
  const most = boundOf(d.most, known) ?? least;
  const middle = (least + most) / 2;
  const step = ROUND_STEPS[d.kind] ?? 1;
  const near = Math.round(middle / step) * step;
  const round = d.odd && near % 2 === 0 ? near + 1 : near;
  return textOf(d, round >= least && round <= most ? round : middle, known);
}

type Setting = { readonly d: Dimension; readonly known: Known; readonly value: Value | undefined };

/** What a new file is written from. */
export type Beginning = {
  /** The resolved values of a branch's own section; undefined where no section has any. */
  readonly valuesOf: (branch: Branch) => Known["values"];
  /** Values that are set, by path. */
  readonly sample: Readonly<Record<string, string>>;
  /** What stands on a line that is not set and has no default, by path. */
  readonly examples: Readonly<Record<string, string>>;
  /** A setting that stands at the top, before all others. */
  readonly first: string;
  /** Branches whose settings are explained further up. */
  readonly explainedElsewhere: (branch: Branch) => boolean;
  /** Lines of an open branch, as examples. */
  readonly openLines: (branch: Branch) => readonly string[];
};

/** What is set for a setting, or what its line shows as an example. */
type Texts = { readonly sample: string | undefined; readonly shown: string | undefined };

/** Its meaning on a line, and on the next its range and its default. */
function explained({ d, known, value }: Setting, { sample, shown }: Texts): readonly string[] {
  const byDefault = defaultWords(d, known);
  const followed =
    byDefault === "" && typeof value === "object" && value.origin?.kind !== "given" && value.name;
  const otherwise = followed
    ? `Default ${textOf(d, value, known)}, from ${value.name}`
    : byDefault || `Must be given${sample === undefined ? "" : ". An example: put your own"}`;
  const words =
    shown === undefined ? [allowedWords(d, known), otherwise] : [otherwise, "An example: put your own"];
  return [sentence(d.means), words.map(sentence).filter(Boolean).join(" ")];
}

/** One setting's line, with a # before it unless the sample gives it. */
function settingLine(s: Setting, key: string, { sample, shown }: Texts): string {
  const own = shown ?? (s.value === undefined ? example(s.d, s.known) : textOf(s.d, s.value, s.known));
  return `${sample === undefined ? "#" : ""}${key}: ${scalarText(sample ?? own, false)}`;
}

/** A default of a top level, which no section resolves. */
const topDefault = (name: string, d: Dimension): Value =>
  isMeasured(d)
    ? leaf(orderKey(name), d.default as number, "length", { kind: "default", source: d.source })
    : (d.default as Value);

/** The settings of a branch, each with its explanation above it unless that stands elsewhere. */
export function settings(branch: Branch, file: Beginning, indent: string): readonly string[] {
  const table = tableOf(branch);
  const values = file.valuesOf(branch);
  const short = file.explainedElsewhere(branch);
  const lines: string[] = [];
  for (const [name, d] of Object.entries(table)) {
    const path = under(branch.path, orderKey(name));
    if (d.handed || path === file.first) continue;
    const s = { d, known: { table, values }, value: values ? values[name] : topDefault(name, d) };
    const texts = { sample: file.sample[path], shown: file.examples[path] };
    if (lines.length > 0 && !short) lines.push("");
    if (!short) lines.push(...explained(s, texts).flatMap((words) => comment(words, indent)));
    lines.push(`${indent}${settingLine(s, orderKey(name), texts)}`);
  }
  return [...lines, ...file.openLines(branch).map((line) => `${indent}#${line}`)];
}

/** A branch with its title, its settings, and the branches under it. */
export function sectionLines(branch: Branch, file: Beginning, indent: string): readonly string[] {
  const title = branch.section?.title ?? "";
  const inner = `${indent}${STEP}`;
  const own = settings(branch, file, inner);
  const elsewhere = file.explainedElsewhere(branch) ? "; the lines are explained above" : "";
  return [
    "",
    ...(title === "" ? [] : comment(sentence(`${title}${elsewhere}`), indent)),
    `${indent}${nameOf(branch)}:`,
    ...own,
    ...branch.branches.flatMap((b, i) =>
      sectionLines(b, file, inner).slice(own.length === 0 && i === 0 ? 1 : 0),
    ),
  ];
}
