import type { AssemblyStep } from "../model/article.ts";
import type { Piece, TurnBack } from "../model/piece.ts";

// How straps are put together at their folded ends: the fold, the keepers, and what closes it.

/** A step with what it is about: the piece, its turn-back, the keepers in it. */
export type FoldStep = {
  readonly step: AssemblyStep;
  readonly part: "fold" | "close" | "join keeper" | "staple keeper" | "slide keeper";
  readonly piece: string;
  readonly turnBack?: string;
  readonly keepers: readonly string[];
};

const plain = (s: Pick<AssemblyStep, "name" | "does"> & Partial<AssemblyStep>): AssemblyStep => ({
  after: [],
  reaches: [],
  shuts: [],
  ...s,
});

/** Ends of a strap that are told by their side. */
const SIDES: readonly string[] = ["left", "right"];

/** "the cheek", "the buckle strap" */
const the = (piece: Piece): string => `the ${piece.name.toLowerCase()}`;

/** "the buckle bar": what the leather is folded round, from the fold's label; what is said there of how to fold is left. */
function aroundOf(piece: Piece, t: TurnBack): string {
  const label = piece.folds.find((f) => f.id === t.fold)?.label ?? "";
  return /round (the [^;,]+)/.exec(label)?.[1]?.trim() ?? `the ${t.id}`;
}

/** "the cheek round the buckle bar", "the left end of the strap round the buckle bar" */
const foldName = (p: Piece, t: TurnBack): string =>
  `${SIDES.includes(t.id) ? `the ${t.id} end of ` : ""}${the(p)} round ${aroundOf(p, t)}`;

/** "the cheek's turn-back at the buckle bar", "the strap's left turn-back" */
const closeName = (p: Piece, t: TurnBack): string =>
  SIDES.includes(t.id) ? `${the(p)}'s ${t.id} turn-back` : `${the(p)}'s turn-back at ${aroundOf(p, t)}`;

const fixedKeeperIn = (p: Piece, t: TurnBack): boolean =>
  p.zones.some((z) => z.kind === "keeper" && z.id === `${t.id}.keeper`);

const hasTongueSlot = (p: Piece, t: TurnBack): boolean =>
  p.cutouts.some((c) => c.id === `${t.id}.slot` && c.use === "tongue slot");

type Keepers = { readonly fixed?: Piece; readonly running?: Piece };

/**
 * The steps of every turn-back of the pieces, in the order they are done: a running keeper is joined, then slid on
 * while the end is still open; a fixed keeper's ends are laid between the legs before anything closes them.
 */
export function foldAssembly(pieces: readonly Piece[]): readonly FoldStep[] {
  const fixed = pieces.find((p) => p.id === "keeper-fixed");
  const running = pieces.find((p) => p.id === "keeper-running");
  const ends = pieces.flatMap((p) => p.turnBacks.map((t) => ({ p, t })));
  const caught = ends.find(({ p, t }) => fixedKeeperIn(p, t));
  const buckled = caught ?? ends.find(({ p, t }) => hasTongueSlot(p, t));
  return [
    ...keeperJoins(fixed, running),
    ...ends.flatMap(({ p, t }) =>
      endSteps(p, t, {
        ...(fixed && fixedKeeperIn(p, t) ? { fixed } : {}),
        ...(running && p === buckled?.p && t === buckled.t ? { running } : {}),
      }),
    ),
  ];
}

const stapled = (p: Piece | undefined): boolean => p?.holes.some((h) => h.use === "staple") ?? false;
const stapleName = (p: Piece): string => `the staple of ${the(p)}`;
const joinName = (p: Piece): string => `the ends of ${the(p)}`;

function keeperJoins(fixed: Piece | undefined, running: Piece | undefined): readonly FoldStep[] {
  return [fixed, running].flatMap((p): readonly FoldStep[] => {
    if (!p) return [];
    const of = { piece: p.id, keepers: [p.id] };
    if (stapled(p))
      return [{ ...of, part: "staple keeper", step: plain({ name: stapleName(p), does: "fix" }) }];
    if (p.seams.length === 0) return [];
    return [{ ...of, part: "join keeper", step: plain({ name: joinName(p), does: "stitch" }) }];
  });
}

function endSteps(p: Piece, t: TurnBack, { fixed, running }: Keepers): readonly FoldStep[] {
  const open = `open ${SIDES.includes(t.id) ? `${t.id} end` : "end"} of ${the(p)} at ${aroundOf(p, t)}`;
  const of = { piece: p.id, turnBack: t.id };
  const between = fixed ? `, ${joinName(fixed)} between its legs` : "";
  const fold = plain({
    name: `fold ${foldName(p, t)}${between}`,
    does: "fold",
    after: fixed && stapled(fixed) ? [stapleName(fixed)] : [],
  });
  const slide =
    running &&
    plain({
      name: `slide ${the(running)} onto ${the(p)}`,
      does: "slide",
      after: [fold.name, stapled(running) ? stapleName(running) : joinName(running)],
      reaches: [open],
    });
  const close = { ...closing(p, t), after: [fold.name], shuts: [open] };
  return [
    { ...of, part: "fold", step: fold, keepers: fixed ? [fixed.id] : [] },
    ...(slide && running
      ? [{ ...of, part: "slide keeper" as const, step: slide, keepers: [running.id] }]
      : []),
    { ...of, part: "close", step: close, keepers: fixed ? [fixed.id] : [] },
  ];
}

/** Rows of stitches close it, or what goes through its holes. */
function closing(p: Piece, t: TurnBack): AssemblyStep {
  const uses = p.holes.filter((h) => h.id.startsWith(`${t.id}.${h.use}.`)).map((h) => h.use);
  if (uses.includes("rivet")) return plain({ name: closeName(p, t), does: "rivet" });
  if (uses.includes("screw")) return plain({ name: `${closeName(p, t)} with its screws`, does: "fix" });
  return plain({ name: closeName(p, t), does: "stitch" });
}
