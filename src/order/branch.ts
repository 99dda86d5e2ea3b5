import type { Section } from "../articles/definition.ts";
import { type DimensionTable, orderKey } from "../model/dimension.ts";
import { under } from "./entry.ts";

/** A place in an order where values or further sections may stand. The top level is a branch as well. */
export type Branch = {
  /** "" for the top level. */
  readonly path: string;
  /** Undefined where only further sections may stand, e.g. "pieces". */
  readonly section: Section | undefined;
  /** Names of values that an order may set here. */
  readonly settable: readonly string[];
  /** Names of values that the article sets. */
  readonly handed: readonly string[];
  /** True where the names are the writer's own: any may stand here, each with one value. */
  readonly open: boolean;
  readonly branches: readonly Branch[];
};

export const nameOf = (branch: Branch): string => branch.path.split(".").at(-1) ?? "";
export const tableOf = (branch: Branch): DimensionTable => branch.section?.table ?? {};
/** All the names that may stand here. */
export const namesIn = (branch: Branch): readonly string[] => [
  ...branch.settable,
  ...branch.branches.map(nameOf),
];
/** A branch and all those under it. */
export const withAllUnder = (branch: Branch): readonly Branch[] => [
  branch,
  ...branch.branches.flatMap(withAllUnder),
];

/** Paths of all values of a branch and those under it. */
export const valuesUnder = (branch: Branch): readonly string[] =>
  withAllUnder(branch).flatMap((b) => b.settable.map((name) => under(b.path, name)));

/** A section of a file; an open one takes names of the writer's own, each with one value. */
export type FileSection = Section & { readonly open?: true };

function branchAt(path: string, sections: readonly FileSection[]): Branch {
  const section = sections.find((s) => s.path === path);
  const inside = path === "" ? "" : `${path}.`;
  const below = sections.filter((s) => s.path !== path && s.path.startsWith(inside));
  const children = new Set(below.map((s) => s.path.slice(inside.length).split(".")[0] ?? ""));
  const names = Object.entries(section?.table ?? {});
  const settable = names.filter(([, d]) => !d.handed).map(([name]) => orderKey(name));
  const both = settable.find((name) => children.has(name));
  if (both) throw new Error(`${under(path, both)} is a section and a value`);
  return {
    path,
    section,
    settable,
    handed: names.filter(([, d]) => d.handed).map(([name]) => orderKey(name)),
    open: section?.open ?? false,
    branches: [...children].map((name) => branchAt(under(path, name), sections)),
  };
}

/**
 * A file's tree: the top level with its table, and an article's or the shop's sections in their order.
 * Throws when a name is both a section and a value: a fault of the article, found by its test.
 */
export function branchesOf(
  top: DimensionTable,
  file: { readonly sections: readonly FileSection[] } | undefined,
): Branch {
  const own: Section = { path: "", label: "", title: "", table: top };
  return branchAt("", [own, ...(file?.sections ?? [])]);
}
