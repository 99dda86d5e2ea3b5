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
  (s.does === "punchHole" && !s.id.startsWith("punch.folded")) ||
  (s.does === "prick" && s.id !== "prick.lining");
const ownSlot = (s: Draft): boolean => s.does === "punchSlot" && s.id !== "slot.lining";
/** Moulding has no fold of its own. */
const mould = (s: Draft): boolean => s.id.startsWith("mould.");
const isTrue = (s: Draft): boolean => s.id === "true";
const edgeSewn = (s: Draft): boolean => s.id.startsWith("edge.sewn");
const edgeFree = (s: Draft): boolean => s.does === "edge" && !edgeSewn(s);
const trimSewn = (s: Draft): boolean => s.id === "trim";

/** Rules between two kinds of work on one piece. */
const BEFORE: readonly (readonly [string, (s: Draft) => boolean, (s: Draft) => boolean])[] = [
  [
    "cut first",
    does("cutStrap", "cutByDie", "cutByKnife"),
    (s) => !does("cutStrap", "cutByDie", "cutByKnife")(s),
  ],
  ["tool before folding", does("tool"), does("fold")],
  ["tool before dyeing", does("tool"), does("dye")],
  ["holes flat before folding", flatHoles, does("fold")],
  ["slots before folding", ownSlot, does("fold")],
  ["skive before folding", does("skive"), does("fold")],
  ["skive before holes", does("skive"), flatHoles],
  ["skive before slots", does("skive"), ownSlot],
  ["mark before skiving", does("mark"), does("skive")],
  ["groove before pricking", does("groove"), does("prick")],
  ["dye before finishing", does("dye"), does("finish")],
  ["dye before hardware", does("dye"), does("fix", "fold")],
  ["trim before truing", trimSewn, isTrue],
  ["true before edging what is sewn", isTrue, edgeSewn],
  ["true before finishing", isTrue, does("finish")],
  ["edge free edges before stitching", edgeFree, does("stitch")],
  ["stitch before truing", does("stitch"), isTrue],
  ["stitch before edging what is sewn", does("stitch"), edgeSewn],
  ["fold before moulding", (s) => s.does === "fold" && !mould(s), mould],
  ["mould before stitching", mould, does("stitch")],
  ["mould before glueing", mould, does("glue")],
  ["fold before glueing", does("fold"), does("glue")],
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
    const stitched = whereIs(steps, p.id, does("stitch"));
    for (const t of p.turnBacks) turnBackRules(steps, p, t.id, must);
    for (const z of p.zones.filter((one) => one.kind === "glue")) {
      const glued = serving(steps, key("zone", p.id, z.id));
      must(`glue before sewing: ${p.id}`, glued, last(stitched));
    }
  }
  assemblyRules(steps, made, must);
  return [
    ...broken,
    ...dampRules(steps, made),
    ...gatherRules(steps, made),
    ...liningRules(steps, made),
    ...hungRules(steps, made),
  ];
}

/** Damp right before what is done damp; dry before anything is glued on. */
function dampRules(steps: Steps, made: Made): readonly string[] {
  const isDamping = does("case");
  const idle = steps.flatMap((s, i) => {
    const next = steps[i + 1];
    const used = next && does("fold", "tool")(next) && next.pieces[0] === s.pieces[0];
    return isDamping(s) && !used ? [`damp right before its work: ${s.pieces[0]}`] : [];
  });
  const dry = steps.flatMap((s, i) => {
    const bent = made.pieces.some(
      (p) =>
        p.id === s.pieces[0] &&
        (p.turnBacks.some((t) => s.serves.includes(key("turn-back", p.id, t.id))) ||
          p.folds.some((f) => f.bend && s.serves.includes(key("fold", p.id, f.id)))),
    );
    const before = steps[i - 1];
    const damped = before && isDamping(before) && before.pieces[0] === s.pieces[0];
    return (bent || mould(s) || s.does === "tool") && !damped ? [`damp before it is bent: ${s.id}`] : [];
  });
  const glued = steps.flatMap((s, i) =>
    s.does !== "glue"
      ? []
      : s.pieces.flatMap((id) => {
          const damped = last(whereIs(steps, id, isDamping).filter((at) => at < i));
          const dried = steps
            .slice(damped + 1, i)
            .some((x) => x.pieces.includes(id) && /let it dry/.test(x.says));
          return damped >= 0 && !dried ? [`dry before glueing: ${id}`] : [];
        }),
  );
  return [...idle, ...dry, ...glued];
}

/** A gathered gusset's flanges and the edges of its bodies are sewn to one edge; wet-moulded it is moulded. */
function gatherRules(steps: Steps, made: Made): readonly string[] {
  return made.joins.flatMap((j) => {
    if (j.kind !== "gather") return [];
    const trued = [j.gusset, j.body].flatMap((id) =>
      whereIs(steps, id, isTrue).length === 1 ? [] : [`true the sewn edges: ${id}`],
    );
    const moulded = whereIs(steps, j.gusset, mould).length;
    return [...trued, ...(moulded === (j.wetMoulded ? 1 : 0) ? [] : [`mould the gusset: ${j.gusset}`])];
  });
}

/** Linings are trimmed once they are glued in, and get their holes before the last seam; their edges are edged after. */
function liningRules(steps: Steps, made: Made): readonly string[] {
  const trimmed = made.pieces.filter((p) => p.id.startsWith("lining-") && isTrimmed(p));
  return trimmed.flatMap((l) => {
    const glued = last(whereIs(steps, l.id, does("glue")));
    const trim = last(whereIs(steps, l.id, does("trim")));
    const holes = last(whereIs(steps, l.id, does("prick")));
    const piece = l.id.slice("lining-".length);
    const seams = whereIs(steps, piece, does("stitch")).filter((i) => i > glued);
    return [
      ...(glued < trim ? [] : [`trim the lining once it is in: ${l.id}`]),
      ...(seams.length > 0 && !(trim < holes && holes < first(seams))
        ? [`lining's holes before its seams: ${l.id}`]
        : []),
      ...(first(whereIs(steps, piece, does("edge"))) < trim ? [`edge with the lining: ${piece}`] : []),
    ];
  });
}

/** Every fitting that folds go round is taken as often as it is there, and is said to hang where it was taken. */
function hungRules(steps: Steps, made: Made): readonly string[] {
  return (made.fittings ?? []).flatMap((f) => {
    const folds = f.serves.flatMap((s) =>
      s.ids.map((id) => serving(steps, key("turn-back", s.piece, id))).filter((at) => at >= 0),
    );
    const says = [...folds].sort((a, b) => a - b).map((at) => steps[at]!);
    if (says.length === 0) return [];
    const fresh = says.map((s) => Number(new RegExp(`(\\d+) ${f.kind}`).exec(s.says)?.[1] ?? 0));
    const hangs = says.map((s) => new RegExp(`${f.kind}s? that hangs? on the (.*?);`).exec(s.says)?.[1]);
    const before = (i: number): readonly string[] =>
      says.slice(0, i).map((s) => made.pieces.find((p) => p.id === s.pieces[0])!.name.toLowerCase());
    const total = fresh.reduce((a, b) => a + b, 0);
    return [
      ...(total === f.count ? [] : [`${f.name} is taken ${total} times, not ${f.count}`]),
      ...says.flatMap((s, i) => {
        if (fresh[i]! > 0) return [];
        return hangs[i] !== undefined && before(i).every((name) => hangs[i]!.includes(name)) && i > 0
          ? []
          : [`hangs on what took it: ${f.name}, ${s.id}`];
      }),
    ];
  });
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
