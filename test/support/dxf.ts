// DXF files as ezdxf reads them, which is not ours.
import { execFileSync } from "node:child_process";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { arc, closedPath, line, openPath, type Path, type Point } from "../../src/geometry/index.ts";
// @ts-expect-error a plain script without types
import { pythonWithEzdxf } from "../tools/python.mjs";

export type Segment = {
  readonly from: Point;
  readonly to: Point;
  readonly centre?: Point;
  readonly radius?: number;
  readonly anticlockwise?: boolean;
};
export type Entity = {
  readonly type: string;
  readonly layer: string;
  readonly closed?: boolean;
  readonly segments?: readonly Segment[];
  readonly centre?: Point;
  readonly radius?: number;
  readonly text?: string;
};
export type Reach = readonly [least: Point, greatest: Point];
export type Audited = {
  readonly errors: readonly string[];
  readonly fixes: readonly string[];
  readonly units: string;
  readonly layers: Readonly<Record<string, { readonly colour: number; readonly line: string }>>;
  /** Line types: lengths drawn and, below 0, left out. */
  readonly lines: Readonly<Record<string, readonly number[]>>;
  /** By the header, and by what is drawn. */
  readonly extents: Reach;
  readonly reach: Reach;
  readonly entities: readonly (Entity & { readonly reach: Reach })[];
};

/** The layers that a file has of its own: 0 belongs to every file, and ezdxf adds one that it needs. */
export const ownLayers = ({ layers }: Audited): readonly string[] =>
  Object.keys(layers).filter((name) => name !== "0" && name !== "Defpoints");

export function audited(texts: readonly string[]): readonly Audited[] {
  const folder = mkdtempSync(join(tmpdir(), "whittaw-dxf-"));
  for (const [i, text] of texts.entries()) writeFileSync(join(folder, `${i}.dxf`), text);
  const python = pythonWithEzdxf() as string;
  const out = execFileSync(python, [join("test", "tools", "audit.py"), folder, String(texts.length)], {
    encoding: "utf8",
    maxBuffer: 1e9,
  });
  return JSON.parse(out) as readonly Audited[];
}

/** A path from the segments that a reader gave. */
export function pathOf(segments: readonly Segment[], closed = true): Path {
  const all = segments.map(({ to, centre, anticlockwise }) =>
    centre ? arc(to, centre, anticlockwise === true) : line(to),
  );
  return (closed ? closedPath : openPath)(segments[0]!.from, all);
}
