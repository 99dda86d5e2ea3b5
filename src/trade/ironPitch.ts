import type { Finding } from "../model/finding.ts";
import { sayValue, type Units } from "../model/say.ts";
import type { Spacing } from "./stitchSpacing.ts";

/** A left-over that no eye sees: a fiftieth of the pitch in all. */
const UNSEEN = 0.02;

type IronSeam = {
  readonly name: string;
  readonly pitch: number;
  readonly dimension: string;
  readonly pitchDimension: string;
  readonly sides: readonly { readonly piece: string }[];
  readonly units?: Units;
};
type IronRun = {
  readonly run: { readonly name: string };
  readonly spacing: Spacing;
  readonly longest: number;
};

/** One run in words: how long it is, what is left over, and the nearest whole length. */
function sayRun(
  { pitch, units = "mm" }: IronSeam,
  { run, spacing, longest }: IronRun,
): { readonly is: string; readonly whole: string } {
  const { mm, over } = spacing.leftOver!;
  const length = (value: number): string => sayValue(value, "length", units);
  const most = `${Math.round(Math.abs(mm / over) * 100) / 100} mm ${mm > 0 ? "more" : "less"}`;
  const last = over === 1 ? "the last takes" : `each of the last ${over} takes`;
  return {
    is: `"${run.name}" is ${length(longest)}, ${spacing.stitches} stitches; ${last} ${most}`,
    whole: `"${run.name}" ${length(spacing.stitches * pitch)}`,
  };
}

/**
 * What a seam pricked with an iron leaves over in its runs, and the lengths that would leave nothing: one
 * note for the seam; none where every run takes whole pitches.
 */
export function ironFindings(seam: IronSeam, runs: readonly IronRun[]): readonly Finding[] {
  const odd = runs.filter((r) => Math.abs(r.spacing.leftOver?.mm ?? 0) > UNSEEN * seam.pitch);
  if (odd.length === 0) return [];
  const said = odd.map((r) => sayRun(seam, r));
  const pitch = sayValue(seam.pitch, "pitch", seam.units ?? "mm");
  return [
    {
      rule: "iron-pitch",
      severity: "note",
      piece: seam.sides[0]!.piece,
      place: `seam ${seam.name}`,
      message: `The iron's pitch of ${pitch} leaves something over in the seam ${seam.name}: ${said.map((s) => s.is).join("; ")}.`,
      value: pitch,
      limit: "whole pitches from corner to corner",
      mend: `Leave it so, or make the run a whole number of pitches (${said.map((s) => s.whole).join(", ")}: ${seam.dimension}), or prick with another iron (${seam.pitchDimension}).`,
    },
  ];
}
