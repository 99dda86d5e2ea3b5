import type { Point } from "../../geometry/path.ts";
import { apart } from "../../geometry/vector.ts";
import type { Piece, SeamLine } from "../../model/piece.ts";
import { printNumber } from "../../units/index.ts";
import { sayMate, saySeam } from "./say.ts";
import { pointsOn, SAME_PLACE_MM, type Tag } from "./tag.ts";

// What a seam is: with what it is sewn, its stitches, and how their places are made.

const seamPoints = (s: SeamLine, piece: Piece): readonly Point[] => {
  const marks = piece.holes.filter((h) => s.holes.includes(h.id)).map((h) => h.at);
  return marks.length > 0
    ? [marks[Math.floor(marks.length / 2)]!, marks[0]!, marks.at(-1)!]
    : pointsOn(s.path);
};

/** A seam's points, and those of a near one of which the same is said: either may be pointed at. */
function rowPoints(s: SeamLine, piece: Piece): readonly Point[] {
  const own = seamPoints(s, piece);
  const twin = piece.seams.find(
    (o) =>
      o.id !== s.id &&
      o.note === s.note &&
      saySeam(o) === saySeam(s) &&
      apart(seamPoints(o, piece)[0]!, own[0]!) < SAME_PLACE_MM,
  );
  return [...own, ...(twin ? seamPoints(twin, piece) : [])];
}

/** The runs of one side of a mated seam, or a seam by itself. */
type Runs = readonly [SeamLine, ...SeamLine[]];

/** `edge.3` is a run of `edge`. */
const edgeOf = ({ id }: SeamLine): string => id.replace(/\.\d+$/, "");
const seamName = (s: SeamLine): string | undefined => s.joins?.split(":")[0]?.trim();

function groupsOf(seams: readonly SeamLine[]): readonly Runs[] {
  const groups = new Map<string, SeamLine[]>();
  for (const s of seams) {
    const name = seamName(s);
    const key = name === undefined ? `one|${s.id}` : `mated|${name}|${edgeOf(s)}`;
    groups.set(key, [...(groups.get(key) ?? []), s]);
  }
  return [...groups.values()] as unknown as readonly Runs[];
}

/** `150 stitches of 4 mm`, `150 stitches of 3.98 to 4.02 mm` */
function sayStitches(runs: Runs): string {
  const stitches = runs.reduce((sum, s) => sum + s.stitches, 0);
  const pitches = runs.map((s) => s.pitch);
  const [least, most] = [Math.min(...pitches), Math.max(...pitches)].map((p) => printNumber(p, 2));
  return least === most
    ? saySeam({ ...runs[0], stitches })
    : `${stitches} stitches of ${least} to ${most} mm`;
}

/** What stands for the holes, where they are no awl marks. */
function sayHoles(runs: Runs, piece: Piece): string {
  if (runs.every((s) => s.groove)) return ", a groove without holes";
  const punched = piece.holes.find((h) => h.kind === "round" && runs[0].holes.includes(h.id));
  return punched ? `, holes ${printNumber(punched.size, 1)} mm` : "";
}

function runsTag(runs: Runs, piece: Piece): Tag {
  const said = `${sayStitches(runs)}${sayHoles(runs, piece)}`;
  const name = seamName(runs[0]);
  const words = name === undefined ? said : `${sayMate(name, piece)}: ${said}`;
  // The longest run's middle is where a seam is looked for.
  const byLength = [...runs].sort((a, b) => b.stitches - a.stitches);
  const anchors =
    name === undefined ? rowPoints(runs[0], piece) : byLength.flatMap((s) => seamPoints(s, piece));
  return { words, anchors };
}

/** One tag for every seam, whatever its runs, then their notes, each once. */
export function seamTags(piece: Piece): readonly Tag[] {
  const groups = groupsOf(piece.seams);
  return [
    ...groups.map((runs) => runsTag(runs, piece)),
    ...groups.flatMap((runs) => {
      const noted = runs.filter((s) => s.note !== undefined);
      const notes = [...new Set(noted.map((s) => s.note!))];
      return notes.map((words): Tag => {
        const s = noted.find((one) => one.note === words)!;
        return { words, anchors: rowPoints(s, piece) };
      });
    }),
  ];
}
