import type { Fitting } from "../model/fitting.ts";
import { mustPrecede } from "../trade/assembly.ts";
import {
  capital,
  counted,
  countOf,
  type Draft,
  listed,
  served,
  sumOf,
  unique,
  type WorkInput,
} from "./draft.ts";
import { type About, aboutOf, assemblyOf, partsOf } from "./joinAbout.ts";
import { phaseOf, TOOLS, WORK_OF } from "./joinWords.ts";
import type { Sewing } from "./sewing.ts";
import { sewingsOf } from "./sewings.ts";

// Putting together: the article's own order, with the ends of straps where it says nothing of them.

/** The id of the step of work that is one of putting together. */
export const joinId = (name: string): string => `join.${name}`;

/** The steps of putting together, each with its fittings and sewings, and what is left of both. */
export function joinSteps(input: WorkInput): readonly Draft[] {
  const sewings = sewingsOf(input.made);
  const abouts = assemblyOf(input).map(({ step, fold }) => aboutOf(step, fold, sewings, input));
  const fittings = input.made.fittings ?? [];
  const hostOf = (f: Fitting): About | undefined =>
    abouts.find((a) => partsOf(f).some((part) => a.parts.includes(part)));
  const drafts = abouts.map((a) =>
    draftOf(
      a,
      abouts,
      fittings.filter((f) => hostOf(f) === a),
      input,
    ),
  );
  const sewn = new Set(abouts.flatMap((a) => a.sewings));
  return [
    ...drafts,
    ...fittings.filter((f) => !hostOf(f)).map((f) => looseFitting(f, input)),
    ...sewings.filter((s) => !sewn.has(s)).map((s) => looseSewing(s, input)),
  ];
}

const stitchesOf = (s: Sewing): number => s.times * sumOf(s.stretches.map((r) => r.stitches));
const seamsServed = (s: Sewing): readonly string[] => s.lines.flatMap((l) => served("seam", l.piece, l.line));

function draftOf(a: About, all: readonly About[], fittings: readonly Fitting[], input: WorkInput): Draft {
  const { step, fold } = a;
  const with_ =
    fittings.length === 0
      ? ""
      : `${fold?.part === "fold" ? "; in the fold" : ""}: ${listed(fittings.map((f) => sayFitting(f, input)))}`;
  const name = step.name.toLowerCase().startsWith(step.does)
    ? step.name
    : `${step.does} ${/^[A-Z][a-z]/.test(step.name) ? step.name.slice(0, 1).toLowerCase() + step.name.slice(1) : step.name}`;
  const turnBack = input.made.pieces
    .find((p) => p.id === a.fold?.piece)
    ?.turnBacks.find((t) => t.id === a.fold?.turnBack);
  return {
    id: joinId(step.name),
    phase: phaseOf(a, all),
    does: WORK_OF[step.does],
    says: `${capital(name)}${with_}`,
    pieces: a.pieces,
    tool: TOOLS[step.does],
    setting: a.sewings.length > 0 ? saySewings(a.sewings) : "",
    amount: amountOf(a, fittings, input),
    after: all.filter((o) => o !== a && mustPrecede(o.step, step)).map((o) => joinId(o.step.name)),
    serves: [
      ...a.sewings.flatMap(seamsServed),
      ...fittings.flatMap((f) => served("fitting", "", f.name)),
      ...(fold?.part === "fold" && turnBack
        ? [...served("turn-back", fold.piece, turnBack.id), ...served("fold", fold.piece, turnBack.fold)]
        : []),
    ],
  };
}

/** "2 buckles", "1 bit" */
const sayFitting = (f: Fitting, { quantity }: WorkInput): string => counted(f.count * quantity, f.kind);

const saySewings = (sewings: readonly Sewing[]): string =>
  unique(sewings.map((s) => `${s.pitch.toFixed(2)} mm a stitch, through ${s.stack.toFixed(1)} mm`)).join(
    "; ",
  );

/** How much of what WORK counts by, for the whole order. */
function amountOf(a: About, fittings: readonly Fitting[], input: WorkInput): number {
  const { quantity, made } = input;
  const cut = (id: string): number => {
    const piece = made.pieces.find((p) => p.id === id);
    return piece ? countOf(piece, input) : 0;
  };
  const glued = a.pieces.filter((id) => id.startsWith("patch-") || id.startsWith("lining-"));
  switch (a.step.does) {
    case "stitch":
      return quantity * sumOf(a.sewings.map(stitchesOf));
    case "rivet":
    case "fix":
      return quantity * sumOf(fittings.map((f) => f.count));
    case "glue":
      return sumOf(glued.map(cut));
    case "fold":
    case "slide":
      return cut(a.fold?.piece ?? "");
    case "thread":
      return a.pieces.includes("cheek") ? cut("cheek") : quantity;
    case "turn":
      return quantity;
  }
}

/** What no step of putting together is about: tips, and the fixings of an end that goes on something else. */
const looseFitting = (f: Fitting, input: WorkInput): Draft => ({
  id: `fix.${f.name}`,
  phase: "fix end",
  does: "fix",
  says: `Fix ${sayFitting(f, input)}: ${f.name}`,
  pieces: f.pieces,
  tool: "setting tools, screwdriver",
  setting: "",
  amount: f.count * input.quantity,
  after: [],
  serves: served("fitting", "", f.name),
});

const looseSewing = (s: Sewing, { quantity }: WorkInput): Draft => ({
  id: `stitch.${s.name}`,
  phase: "put together",
  does: "stitch",
  says: `Stitch the ${s.name.slice(0, 1).toLowerCase()}${s.name.slice(1)}`,
  pieces: unique(s.lines.map((l) => l.piece)),
  tool: TOOLS.stitch,
  setting: saySewings([s]),
  amount: quantity * stitchesOf(s),
  after: [],
  serves: seamsServed(s),
});
