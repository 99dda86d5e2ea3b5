import { signedArea } from "../geometry/area.ts";
import { boundsOf } from "../geometry/bounds.ts";
import { pathLength } from "../geometry/length.ts";
import type { Capacity } from "../model/article.ts";
import { ENGINE_VERSION, JOB_FORMAT, type Job } from "../model/job.ts";
import type { Hole, Piece, SeamLine } from "../model/piece.ts";
import type { Quantity } from "../model/quantity.ts";
import { type Mates, matesIn } from "./mates.ts";

// job.json: the whole job in millimetres, for other programs and for the same order next year.

/** Numbers in job.json keep this many decimals. */
const DECIMALS = 6;

const rounded = (n: number): number => {
  const r = Math.round(n * 10 ** DECIMALS + 1e-6) / 10 ** DECIMALS;
  return r === 0 ? 0 : r;
};

const size = (q: Quantity) => ({ name: q.name ?? "", value: q.value, kind: q.kind });

/** The hole of the same piece that a hole meets when its turn-back is folded. */
function foldedMates(piece: Piece): ReadonlyMap<string, string> {
  const pairs = piece.turnBacks.flatMap((t) => t.mates);
  return new Map(pairs.flatMap(([front, back]) => [[front, back] as const, [back, front] as const]));
}

const some = <T>(mates: readonly T[]): { readonly mates?: readonly T[] } =>
  mates.length > 0 ? { mates } : {};

const seamOf = (s: SeamLine, piece: string, mates: Mates) => ({
  ...s,
  length: pathLength(s.path),
  ...some(mates.ofSeam(piece, s.id)),
});

function holeOf(h: Hole, piece: string, folded: ReadonlyMap<string, string>, mates: Mates) {
  const mate = folded.get(h.id);
  return { ...h, ...(mate === undefined ? {} : { mate }), ...some(mates.ofHole(piece, h.id)) };
}

const MM3_PER_LITRE = 1e6;

const capacityOf = ({ volume, ...rest }: Capacity) => ({
  volume: volume.value,
  litres: volume.value / MM3_PER_LITRE,
  ...rest,
});

function pieceOf(piece: Piece, mates: Mates) {
  const folded = foldedMates(piece);
  const box = boundsOf(piece.outline);
  return {
    ...piece,
    holes: piece.holes.map((h) => holeOf(h, piece.id, folded, mates)),
    seams: piece.seams.map((s) => seamOf(s, piece.id, mates)),
    sizes: piece.sizes.map(size),
    sections: piece.sections.map((s) => ({ name: s.name, newtons: s.estimate.value })),
    extent: { length: box.maxX - box.minX, width: box.maxY - box.minY },
    area:
      signedArea(piece.outline) - piece.cutouts.reduce((sum, c) => sum + Math.abs(signedArea(c.outline)), 0),
  };
}

/** The job as plain data, before rounding; see `jobSchema` for its shape. */
export function jobData(job: Job) {
  const { made, layout } = job;
  const mates = matesIn(made);
  const pieces = made.pieces.map((p) => pieceOf(p, mates));
  return {
    format: JOB_FORMAT,
    engine: ENGINE_VERSION,
    units: "mm",
    order: job.order,
    dimensions: job.dimensions,
    derivations: job.derivations,
    pieces,
    joins: made.joins,
    sizes: made.sizes.map(size),
    ...(made.fit ? { fit: made.fit } : {}),
    ...(made.capacity ? { capacity: capacityOf(made.capacity) } : {}),
    ...(made.assembly ? { assembly: made.assembly } : {}),
    ...(made.fittings ? { fittings: made.fittings } : {}),
    findings: job.findings,
    bench: job.bench,
    sheets: layout,
    totals: {
      pieces: made.pieces.reduce((sum, p) => sum + p.count, 0),
      sheets: layout.sheets.length,
      area: pieces.reduce((sum, p) => sum + p.area * p.count, 0),
    },
  };
}

/** job.json as text: sorted as built, numbers at most 6 decimals, one line feed at its end. */
export function jobJson(job: Job): string {
  const text = JSON.stringify(jobData(job), (_, v) => (typeof v === "number" ? rounded(v) : v), 1);
  return `${text}\n`;
}
