import type { Draft } from "../../src/bench/draft.ts";
import type { Made } from "../../src/model/article.ts";
import type { Piece } from "../../src/model/piece.ts";
import type { WorkKind } from "../../src/model/work.ts";

// The trade's rules of order, read from the steps and pieces alone; says which are broken.

type Steps = readonly Draft[];
const key = (kind: string, piece: string, id: string): string => JSON.stringify([kind, piece, id]);
const serving = (steps: Steps, k: string): number => steps.findIndex((s) => s.serves.includes(k));

const whereIs = (steps: Steps, piece: string, test: (s: Draft) => boolean): readonly number[] =>
  steps.flatMap((s, i) => (s.pieces.includes(piece) && test(s) ? [i] : []));
const last = (list: readonly number[]): number => Math.max(-1, ...list);
const first = (list: readonly number[]): number => Math.min(Number.POSITIVE_INFINITY, ...list);

const does =
  (...kinds: readonly WorkKind[]) =>
  (s: Draft): boolean =>
    kinds.includes(s.does);
const flatHoles = (s: Draft): boolean =>
  (s.does === "punchHole" && !s.id.startsWith("punch.folded")) || s.does === "prick";
const ownSlot = (s: Draft): boolean => s.does === "punchSlot" && s.id !== "slot.lining";
const tooling = (s: Draft): boolean => s.does === "case" && s.id === "case";

/** Rules between two kinds of work on one piece. */
const BEFORE: readonly (readonly [string, (s: Draft) => boolean, (s: Draft) => boolean])[] = [
  [
    "cut first",
    does("cutStrap", "cutByDie", "cutByKnife"),
    (s) => !does("cutStrap", "cutByDie", "cutByKnife")(s),
  ],
  ["case before tooling", tooling, does("tool")],
  ["tool before folding", does("tool"), does("fold")],
  ["tool before dyeing", does("tool"), does("dye")],
  ["holes flat before folding", flatHoles, does("fold")],
  ["slots before folding", ownSlot, does("fold")],
  ["skive before folding", does("skive"), does("fold")],
  ["dye before finishing", does("dye"), does("finish")],
  ["dye before hardware", does("dye"), does("fix", "fold")],
  ["trim before edging", (s) => s.does === "trim" && s.id === "trim", (s) => s.id.startsWith("edge.trimmed")],
  ["edge before finishing", does("edge"), does("finish")],
];

const isTrimmed = (p: Piece): boolean => p.zones.some((z) => z.kind === "trim");

/** What is done too early or too late, in words; nothing when the order is sound. */
export function brokenRules(steps: Steps, made: Made): readonly string[] {
  const broken: string[] = [];
  const must = (what: string, early: number, late: number): void => {
    if (early >= 0 && late >= 0 && early > late) broken.push(what);
  };
  for (const p of made.pieces) {
    for (const [name, early, late] of BEFORE)
      if (last(whereIs(steps, p.id, early)) > first(whereIs(steps, p.id, late)))
        broken.push(`${name}: ${p.id}`);
    const mates = made.joins.flatMap((j) =>
      j.kind === "seam" && j.sides.some((s) => s.piece === p.id) ? j.sides.map((s) => s.piece) : [],
    );
    const withTrimmed = [p.id, ...mates].some((id) =>
      made.pieces.some((o) => o.id === id && !o.id.startsWith("lining-") && isTrimmed(o)),
    );
    const stitched = whereIs(steps, p.id, does("stitch"));
    const edged = whereIs(steps, p.id, does("edge"));
    if (!withTrimmed && last(edged) > first(stitched)) broken.push(`edge before stitching: ${p.id}`);
    if (isTrimmed(p) && !p.id.startsWith("lining-") && first(edged) < last(stitched))
      broken.push(`edge trimmed edges after stitching: ${p.id}`);
    for (const t of p.turnBacks) turnBackRules(steps, p, t.id, must);
    for (const z of p.zones.filter((one) => one.kind === "glue")) {
      const glued = serving(steps, key("zone", p.id, z.id));
      must(`glue before sewing: ${p.id}`, glued, last(stitched));
    }
  }
  assemblyRules(steps, made, must);
  return broken;
}

type Must = (what: string, early: number, late: number) => void;

function turnBackRules(steps: Steps, p: Piece, t: string, must: Must): void {
  const folded = serving(steps, key("turn-back", p.id, t));
  for (const row of p.seams.filter((s) => s.turnBack === t))
    must(`fold before its stitching: ${p.id} ${t}`, folded, serving(steps, key("seam", p.id, row.id)));
  const punched = steps.findIndex((s) => s.id === `punch.folded.${p.id}.${t}`);
  must(`punch the back leg once folded: ${p.id} ${t}`, folded, punched);
  if (!p.zones.some((z) => z.id === `${t}.keeper`)) return;
  const caught = steps.findIndex((s) => s.does === "fold" && s.pieces.includes("keeper-fixed"));
  const slid = steps.findIndex((s) => s.says.startsWith("Slide the running keeper"));
  const closed = steps.findIndex((s) => s.pieces.includes("keeper-fixed") && s.says.includes("turn-back"));
  must(`keeper caught before its row is closed: ${p.id}`, caught, closed);
  must(`running keeper on before it is closed: ${p.id}`, slid, closed);
}

function assemblyRules(steps: Steps, made: Made, must: Must): void {
  const at = (name: string): number => steps.findIndex((s) => s.id === `join.${name}`);
  const given = made.assembly ?? [];
  for (const step of given) {
    for (const name of step.after) must(`${step.name} after ${name}`, at(name), at(step.name));
    for (const other of given)
      if (other.reaches.some((place) => step.shuts.includes(place)))
        must(`${other.name} before ${step.name} shuts it in`, at(other.name), at(step.name));
  }
}
