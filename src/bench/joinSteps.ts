import type { Fitting } from "../model/fitting.ts";
import { sayValue } from "../model/say.ts";
import { capital, counted } from "../model/words.ts";
import { mustPrecede } from "../trade/assembly.ts";
import { LET_DRY } from "./dampSteps.ts";
import { countOf, type Draft, listed, mm, namesOf, served, sumOf, unique, type WorkInput } from "./draft.ts";
import { foldWords } from "./foldWords.ts";
import { foldsRound, sayHung } from "./hungIn.ts";
import { type About, aboutOf, assemblyOf, partsOf } from "./joinAbout.ts";
import { phaseOf, TOOLS, WORK_OF } from "./joinWords.ts";
import { LININGS, sayGlueLinings } from "./liningSteps.ts";
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
    foldsRound(f, abouts)[0] ?? abouts.find((a) => partsOf(f).some((part) => a.parts.includes(part)));
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
const backStitchesOf = (s: Sewing): number => s.times * sumOf(s.stretches.map((r) => r.backStitches));
/** Stitches and those sewn back: both take time. */
const allStitchesOf = (s: Sewing): number => stitchesOf(s) + backStitchesOf(s);
const seamsServed = (s: Sewing): readonly string[] => s.lines.flatMap((l) => served("seam", l.piece, l.line));

function draftOf(a: About, all: readonly About[], fittings: readonly Fitting[], input: WorkInput): Draft {
  const { step, fold } = a;
  const piece = input.made.pieces.find((p) => p.id === fold?.piece);
  const turnBack = fold?.part === "fold" ? piece?.turnBacks.find((t) => t.id === fold.turnBack) : undefined;
  return {
    id: joinId(step.name),
    phase: phaseOf(a, all),
    does: WORK_OF[step.does],
    says: sayJoin(a, all, fittings, input),
    pieces: a.pieces,
    tool: TOOLS[step.does],
    setting: a.sewings.length > 0 ? saySewings(a.sewings, input) : "",
    amount: amountOf(a, fittings, input),
    after: unique([
      ...all.filter((o) => o !== a && mustPrecede(o.step, step)),
      ...foldsBefore(a, all, input),
    ]).map((o) => joinId(o.step.name)),
    serves: [
      ...a.sewings.flatMap(seamsServed),
      ...fittings.flatMap((f) => served("fitting", "", f.name)),
      ...(fold && turnBack
        ? [...served("turn-back", fold.piece, turnBack.id), ...served("fold", fold.piece, turnBack.fold)]
        : []),
    ],
    ...(piece && turnBack
      ? { damp: `Damp the ${namesOf([piece])} at the ${foldWords(piece, turnBack.id) ?? turnBack.id}` }
      : {}),
  };
}

/** Ends that are folded round the same fitting before: it hangs on them. */
const foldsBefore = (a: About, all: readonly About[], { made }: WorkInput): readonly About[] =>
  (made.fittings ?? []).flatMap((f) => {
    const folds = foldsRound(f, all);
    return folds.slice(0, Math.max(0, folds.indexOf(a)));
  });

/** "Fold the cheek round the bit ring; in the folds: 1 bit; let it dry in that shape" */
function sayJoin(a: About, all: readonly About[], fittings: readonly Fitting[], input: WorkInput): string {
  const { step, fold } = a;
  if (step.name === LININGS && step.does === "glue") return sayGlueLinings(input);
  if (step.does === "glue")
    return `Glue on the ${uncapital(step.name)}, flesh to flesh, its holes on those it backs; fresh air, and as its maker says`;
  const name = capital(
    step.name.toLowerCase().startsWith(step.does) ? step.name : `${step.does} ${uncapital(step.name)}`,
  );
  if (fold?.part === "fold") {
    const hung = sayHung(a, input.made.fittings ?? [], all, input);
    return [name, ...(hung === "" ? [] : [hung]), LET_DRY].join("; ");
  }
  return fittings.length === 0 ? name : `${name}: ${listed(fittings.map((f) => sayFitting(f, input)))}`;
}

/** "patch behind the stud" of "Patch behind the stud". */
const uncapital = (name: string): string =>
  /^[A-Z][a-z]/.test(name) ? name.slice(0, 1).toLowerCase() + name.slice(1) : name;

/** "2 buckles", "1 bit" */
const sayFitting = (f: Fitting, { quantity }: WorkInput): string => counted(f.count * quantity, f.kind);

/** "127 stitches and 4 sewn back; 3.62 mm a stitch, through 5.6 mm", of the whole order. */
function saySewings(sewings: readonly Sewing[], { quantity, units }: WorkInput): string {
  const stitches = quantity * sumOf(sewings.map(stitchesOf));
  const back = quantity * sumOf(sewings.map(backStitchesOf));
  const how = sewings.map((s) => `${sayValue(s.pitch, "pitch", units)} a stitch, through ${mm(s.stack)}`);
  return [
    `${counted(stitches, "stitch", "stitches")}${back > 0 ? ` and ${back} sewn back` : ""}`,
    ...unique(how),
  ].join("; ");
}

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
      return quantity * sumOf(a.sewings.map(allStitchesOf));
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

const looseSewing = (s: Sewing, input: WorkInput): Draft => ({
  id: `stitch.${s.name}`,
  phase: "put together",
  does: "stitch",
  says: `Stitch the ${uncapital(s.name)}`,
  pieces: unique(s.lines.map((l) => l.piece)),
  tool: TOOLS.stitch,
  setting: saySewings([s], input),
  amount: input.quantity * allStitchesOf(s),
  after: [],
  serves: seamsServed(s),
});
