import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { AssemblyStep } from "../../src/model/article.ts";
import { inOrder } from "../../src/trade/assembly.ts";
import { found, verdict } from "../support/found.ts";
import { soundSeams, soundSteps, step } from "../support/soundSeams.ts";

const judged = (assembly: readonly AssemblyStep[]): readonly string[] =>
  found(soundSeams({ assembly }), "assembly-order").map((f) => f.message);
const [rivet, stitch] = soundSteps as readonly [AssemblyStep, AssemblyStep];

describe("assembly-order", () => {
  test("a sound order has nothing to find", () => expect(judged(soundSteps)).toEqual([]));

  test("a step that waits for a later one", () => {
    const [message, ...more] = judged([{ ...stitch, shuts: [] }, rivet]);
    expect(message).toContain('"front to gusset" must come after "tab to front"');
    expect(more).toEqual([]);
  });

  test("a step that waits for none", () =>
    expect(judged([rivet, { ...stitch, after: ["nowhere"] }])).toEqual([
      '"front to gusset" comes after "nowhere", which is no step.',
    ]));

  test("a circle", () =>
    expect(judged([{ ...rivet, after: ["front to gusset"] }, stitch]).join(" ")).toContain(
      '"tab to front" must come after "front to gusset"',
    ));

  test("a step inside what is shut already", () => {
    const [message] = judged([{ ...stitch, after: [] }, rivet]);
    expect(message).toBe(
      '"tab to front" needs the inside of the front, which "front to gusset" has shut before.',
    );
  });

  test("a step may shut the place it works in", () =>
    expect(judged([rivet, { ...stitch, reaches: ["inside of the front"] }])).toEqual([]));

  test("a seam and a riveted place that no step makes", () => {
    expect(judged([step("something else")])).toHaveLength(2);
    expect(verdict({ ...soundSeams(), assembly: [] }, "assembly-order")).toBe("error");
  });

  test("a step twice", () => expect(judged([...soundSteps, step("front to gusset")])[0]).toContain("twice"));

  test("nothing to join needs no steps", () => {
    const { assembly: _, ...rest } = soundSeams({ joins: [] });
    expect(verdict(rest, "assembly-order")).toBe("none");
  });
});

describe("inOrder", () => {
  const names = (steps: readonly AssemblyStep[]): string => steps.map((s) => s.name).join(" ");

  test("keeps the given order where it may", () => {
    expect(names(inOrder([step("a"), step("b"), step("c")]))).toBe("a b c");
    expect(names(inOrder([step("a", { after: ["c"] }), step("b"), step("c")]))).toBe("b c a");
  });

  test("does what needs a place before what shuts it", () =>
    expect(names(inOrder([step("close", { shuts: ["bag"] }), step("lock", { reaches: ["bag"] })]))).toBe(
      "lock close",
    ));

  test("a circle comes last, and nothing is lost", () =>
    expect(names(inOrder([step("a", { after: ["b"] }), step("b", { after: ["a"] }), step("c")]))).toBe(
      "c a b",
    ));

  test("steps that can be done come out in an order that can, however they are shuffled", () => {
    // A way that can be done is made first: waits and places are drawn along it.
    const way = fc
      .array(fc.tuple(fc.nat(), fc.nat(), fc.nat(3)), { minLength: 2, maxLength: 9 })
      .map((rows) =>
        rows.map(([before, place, kind], i): AssemblyStep => {
          const after = i > 0 && kind > 0 ? [`s${before % i}`] : [];
          // A place is shut by the step of its number, so only steps up to that one may reach it.
          return step(`s${i}`, { after, reaches: [`p${i + (place % (rows.length - i))}`], shuts: [`p${i}`] });
        }),
      );
    const seeds = fc.array(fc.nat(), { minLength: 9, maxLength: 9 });
    fc.assert(
      fc.property(way, seeds, (steps, keys) => {
        const shuffled = steps.map((s, i) => [keys[i]!, s] as const).sort((a, b) => a[0] - b[0]);
        const assembly = inOrder(shuffled.map(([, s]) => s));
        expect(assembly).toHaveLength(steps.length);
        expect(verdict(soundSeams({ joins: [], assembly }), "assembly-order")).toBe("none");
      }),
      { seed: 7, numRuns: 60 },
    );
  });
});
