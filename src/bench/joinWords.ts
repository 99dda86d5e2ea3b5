import type { AssemblyStep } from "../model/article.ts";
import type { WorkKind } from "../model/work.ts";
import type { About } from "./joinAbout.ts";
import type { Phase } from "./phases.ts";

// What a step of putting together is as a step of the work: its kind, its stage, its tool.

export const WORK_OF: Readonly<Record<AssemblyStep["does"], WorkKind>> = {
  stitch: "stitch",
  rivet: "fix",
  glue: "glue",
  fix: "fix",
  turn: "turn",
  fold: "fold",
  slide: "fix",
  thread: "fix",
};

/** An end that is screwed or riveted is hung once the edges are finished; one that is sewn before. */
export function phaseOf({ step, fold }: About, all: readonly About[]): Phase {
  if (!fold) return "put together";
  switch (fold.part) {
    case "fold": {
      const close = all.find(
        (a) => a.fold?.part === "close" && a.fold.piece === fold.piece && a.fold.turnBack === fold.turnBack,
      );
      return close?.step.does === "stitch" ? "fold" : "hang";
    }
    case "close":
      return step.does === "stitch" ? "sew end" : "fix end";
    case "join keeper":
      return "join keeper";
    case "staple keeper":
      return "staple";
    case "slide keeper":
      return "slide";
  }
}

export const TOOLS: Readonly<Record<AssemblyStep["does"], string>> = {
  stitch: "two needles, awl and clam",
  rivet: "rivet setter",
  glue: "glue",
  fix: "setting tools, screwdriver",
  turn: "hands",
  fold: "hands, bone folder",
  slide: "hands",
  thread: "hands",
};
