import { readFileSync } from "node:fs";
import { join } from "node:path";
import { svgPathProperties } from "svg-path-properties";
import { beforeAll, describe, expect, test } from "vitest";
import { pathLength } from "../../src/geometry/index.ts";
import { makeJob } from "../../src/job.ts";
import { JUNIPER, newFolder, whittaw } from "../support/whittaw.ts";

const juniper = readFileSync(JUNIPER, "utf8");

/** The plotter's file of the demo order's cheek, made with these options. */
function plotted(...options: readonly string[]): string {
  const folder = newFolder();
  expect(whittaw(folder, "die", JUNIPER, "cheek", ...options).status).toBe(0);
  const file = join(folder, "out", "juniper-headstall", "die", "plotter-cheek-left-and-right-A.svg");
  return readFileSync(file, "utf8");
}

describe("the plotter's SVG", () => {
  const layersOf = (svg: string): readonly (readonly [name: string, content: string])[] =>
    [...svg.matchAll(/<g id="([^"]+)"[^>]*>([\s\S]*?)<\/g>/g)].map((m) => [m[1]!, m[2]!] as const);
  let inside = "";
  let outside = "";
  beforeAll(() => {
    inside = plotted();
    outside = plotted("--no-inside-first");
  });

  test("one layer an operation; inside before outside, or the other way when asked", () => {
    const before = ["words", "check-square", "flesh-skive"];
    const done = ["marks", "stitch-holes", "holes", "slots", "outline"];
    const names = [...before, ...done];
    expect(layersOf(inside).map(([name]) => name)).toEqual(names);
    expect(layersOf(outside).map(([name]) => name)).toEqual([...before, ...[...done].reverse()]);
    const colours = [...inside.matchAll(/<g [^>]*(?:stroke|fill)="(#[0-9a-f]{6})"/g)].map((m) => m[1]);
    expect(new Set(colours).size).toBe(names.length);
  });

  test("text stands in its own layer alone; all else is hairlines without fill", () => {
    for (const [name, content] of layersOf(inside)) {
      if (name === "words") expect(content).not.toContain("<path");
      else expect(content).not.toContain("<text");
    }
    const widths = [...inside.matchAll(/stroke-width="([^"]+)"/g)].map((m) => Number(m[1]));
    expect(widths.length).toBe(7);
    for (const width of widths) expect(width).toBeLessThanOrEqual(0.03);
    expect(inside).not.toContain("stroke-dasharray");
  });

  test("true size in mm: the outline as long as the piece's, round holes and slots all there", () => {
    const result = makeJob(juniper, "juniper.yaml");
    if (!result.made) throw new Error("the demo order has faults");
    const cheek = result.job.made.pieces.find(({ id }) => id === "cheek")!;
    const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox/.exec(inside)!;
    expect(inside).toContain(`viewBox="0 0 ${width} ${height}"`);
    const paths = new Map(
      layersOf(inside).map(([name, content]) => [
        name,
        [...content.matchAll(/ d="([^"]+)"/g)].map((m) => m[1]!),
      ]),
    );
    expect(paths.get("outline")).toHaveLength(1);
    const long = new svgPathProperties(paths.get("outline")![0]!).getTotalLength();
    expect(Math.abs(long - pathLength(cheek.outline))).toBeLessThan(0.05);
    expect(paths.get("holes")).toHaveLength(cheek.holes.filter(({ kind }) => kind === "round").length);
    expect(paths.get("slots")).toHaveLength(cheek.cutouts.length);
    expect(paths.get("stitch-holes")).toHaveLength(cheek.holes.filter(({ kind }) => kind === "awl").length);
  });
});
