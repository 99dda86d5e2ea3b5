import type { AssemblyStep, FixedJoin, Join, SeamJoin } from "../model/article.ts";
import type { Piece } from "../model/piece.ts";
import { inOrder } from "../trade/assembly.ts";
import { closureOf, isTurned } from "./bagBodySections.ts";
import { bag } from "./bagSections.ts";
import type { Resolved } from "./definition.ts";

// In which order a bag is put together: what must be reached before the last seam shuts it.

const INSIDE = "inside of the bag";
const TURNED = "turn the bag right side out";

/** Closures that are no fitting, or whose straps are riveted by steps of their own. */
const NOTHING_TO_SET: readonly string[] = ["none", "tuck-in tongue", "strap and buckle"];

const seamName = (j: SeamJoin): string => j.name.split(":")[0]!;
const step = (s: Partial<AssemblyStep> & Pick<AssemblyStep, "name" | "does">): AssemblyStep => ({
  after: [],
  reaches: [],
  shuts: [],
  ...s,
});

/** The seams that join body and gusset; the last of them shuts the bag. */
const isShell = (name: string): boolean => /^(front|back|body) to /.test(name);

export function bagAssembly(
  done: Resolved,
  joins: readonly Join[],
  pieces: readonly Piece[],
): readonly AssemblyStep[] {
  const seams = [...new Set(joins.flatMap((j) => (j.kind === "seam" ? [seamName(j)] : [])))];
  const fixed = joins.filter((j): j is FixedJoin => j.kind === "fixed");
  const patches = pieces.filter((p) => p.id.startsWith("patch-")).map((p) => p.name);
  const shell = seams.filter(isShell);
  const inner = seams.filter((s) => !isShell(s));
  const closure = closureOf(done);
  const flat = [
    ...patches.map((name) => step({ name, does: "glue", reaches: [INSIDE] })),
    ...(NOTHING_TO_SET.includes(closure)
      ? []
      : [step({ name: `${closure} on flap and front`, does: "fix", after: patches, reaches: [INSIDE] })]),
    ...inner.map((name) => step({ name, does: "stitch", after: patches, reaches: [INSIDE] })),
    ...fixed
      .filter((j) => !patches.includes(j.name))
      .map((j) => step({ name: j.name, does: "rivet", after: patches, reaches: [INSIDE] })),
  ];
  const lined = done.of(bag).lining
    ? [step({ name: "linings", does: "glue", after: flat.map((s) => s.name), reaches: [INSIDE] })]
    : [];
  const before = [...flat, ...lined].map((s) => s.name);
  const closing = shell.map((name, i) =>
    step({
      name,
      does: "stitch",
      after: i === 0 ? before : [shell[i - 1]!],
      shuts: i === shell.length - 1 ? [INSIDE] : [],
    }),
  );
  const turn = isTurned(done) ? [step({ name: TURNED, does: "turn", after: shell })] : [];
  return inOrder([...flat, ...lined, ...closing, ...turn]);
}
