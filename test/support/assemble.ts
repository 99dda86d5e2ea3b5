import type { Closure, FixedJoin, SeamJoin } from "../../src/model/article.ts";
import { boxOff, closureOff, fixedOff, pocketOff, rootsOff } from "./assembleFlat.ts";
import type { Flat, Off } from "./assembleJob.ts";
import { panelBag } from "./assemblePanels.ts";
import { wrappedBag } from "./assembleWrap.ts";

const seamOf = (j: SeamJoin): string => j.name.split(":")[0]!;

/** Puts a bag together from its flat pieces; how far off everything is that should meet. */
export function assemble(f: Flat): readonly Off[] {
  const seams = f.joins.filter((j): j is SeamJoin => j.kind === "seam");
  const isShell = (j: SeamJoin): boolean =>
    /^(front|back|body) to (gusset|side gussets|end panels)$/.test(seamOf(j));
  const isPocket = (j: SeamJoin): boolean => j.name.startsWith("pocket to ");
  const boxes = seams.filter((j) => !isShell(j) && !isPocket(j));
  const wrapped = f.pieces.some((p) => p.id === "body");
  return [
    ...(wrapped ? wrappedBag : panelBag)(f, seams.filter(isShell)),
    ...seams.filter(isPocket).flatMap((j) => pocketOff(f, j)),
    ...[...new Set(boxes.map(seamOf))].flatMap((name) =>
      boxOff(
        f,
        boxes.filter((j) => seamOf(j) === name),
      ),
    ),
    ...f.joins.filter((j): j is FixedJoin => j.kind === "fixed").flatMap((j) => fixedOff(f, j)),
    ...rootsOff(f),
    ...f.joins.filter((j): j is Closure => j.kind === "closure").flatMap((j) => closureOff(f, j)),
  ];
}
