import type { Fitting } from "../model/fitting.ts";
import type { Piece } from "../model/piece.ts";
import { counted } from "../model/words.ts";
import { countOf, namesOf, sumOf, type WorkInput } from "./draft.ts";
import { type About, partsOf } from "./joinAbout.ts";
import { phaseOf } from "./joinWords.ts";
import { PHASES } from "./phases.ts";

// What hangs in folded ends: a ring is taken by the first end that is folded round it, and hangs there for the next.

const isIn = (f: Fitting, a: About): boolean =>
  a.fold?.part === "fold" && partsOf(f).some((part) => a.parts.includes(part));

/** The folds round a fitting in the order in which they are done. */
export const foldsRound = (f: Fitting, all: readonly About[]): readonly About[] =>
  all
    .filter((a) => isIn(f, a))
    .map((a, i) => ({ a, i, rank: PHASES.indexOf(phaseOf(a, all)) }))
    .sort((x, y) => x.rank - y.rank || x.i - y.i)
    .map(({ a }) => a);

type Taken = {
  readonly fitting: Fitting;
  /** Ends that are folded, fittings that are new in them, and what those hang on that are not. */
  readonly ends: number;
  readonly fresh: number;
  readonly on: readonly Piece[];
};

/** What each fold takes of the fittings, for the whole order. */
function takenIn(
  a: About,
  fittings: readonly Fitting[],
  all: readonly About[],
  input: WorkInput,
): readonly Taken[] {
  const pieceOf = ({ fold }: About): readonly Piece[] =>
    input.made.pieces.filter((p) => p.id === fold?.piece);
  const endsOf = (x: About): number => sumOf(pieceOf(x).map((p) => countOf(p, input)));
  return fittings
    .filter((f) => isIn(f, a))
    .map((fitting) => {
      const folds = foldsRound(fitting, all);
      const before = folds.slice(0, folds.indexOf(a));
      const left = Math.max(0, fitting.count * input.quantity - sumOf(before.map(endsOf)));
      return {
        fitting,
        ends: endsOf(a),
        fresh: Math.min(left, endsOf(a)),
        on: before.flatMap(pieceOf),
      };
    });
}

/** "in the fold: 1 buckle", "in the fold: the ring that hangs on the buckle strap"; "" where nothing hangs. */
export const sayHung = (
  a: About,
  fittings: readonly Fitting[],
  all: readonly About[],
  input: WorkInput,
): string => takenIn(a, fittings, all, input).map(sayTaken).join("; ");

function sayTaken({ fitting, ends, fresh, on }: Taken): string {
  const { kind } = fitting;
  const where = ends === 1 ? "in the fold" : "in the folds";
  if (on.length === 0 || fresh === ends) return `${where}: ${counted(fresh, kind)}`;
  const hang = `${ends === 1 ? `the ${kind} that hangs` : `the ${kind}s that hang`} on the ${namesOf(on)}`;
  return `${where}: ${fresh > 0 ? `${counted(fresh, kind)}, and ` : ""}${hang}`;
}
