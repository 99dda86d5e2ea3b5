import { describe, expect, test } from "vitest";
import { derivationOf } from "../../src/model/derivation.ts";
import { greatest, leaf, minus, named, over, type Quantity, sum, times } from "../../src/model/quantity.ts";
import { given } from "../support/quantities.ts";
import { faultsOfHistory, namedInputs } from "../support/sensitivity.ts";

describe("a derivation", () => {
  const bar = given("bar", 4);
  const clamp = leaf("clamp", 12, "length", { kind: "default", source: "common practice, no source" });
  const half = named("half bar", over(bar, 2), { source: "geometry" });
  const result = named("reach", sum(half, clamp, half), { kind: "length" });
  const d = derivationOf("cheek", result);

  test("has what was given first, then the steps in the order they are worked, the result last", () => {
    expect(d.steps.map((s) => s.name)).toEqual(["bar", "clamp", "half bar", "reach"]);
    expect(d).toMatchObject({ piece: "cheek", result: "reach", value: 16 });
    expect(d.steps.at(-1)!.value).toBe(d.value);
  });

  test("tells each value once", () => {
    expect(d.steps.filter((s) => s.name === "half bar")).toHaveLength(1);
  });

  test("says where values come from, and a formula's source", () => {
    expect(d.steps[0]!.origin).toEqual({ kind: "given", where: "test" });
    expect(d.steps[1]!.origin).toEqual({ kind: "default", source: "common practice, no source" });
    expect(d.steps[2]!.source).toBe("geometry");
    expect("source" in d.steps[3]!).toBe(false);
    expect("origin" in d.steps[3]!).toBe(false);
  });

  test("carries the expression, with the values that stand in it", () => {
    expect(d.steps[3]!.parts).toEqual([
      { name: "half bar", value: 2, kind: "length" },
      " + ",
      { name: "clamp", value: 12, kind: "length" },
      " + ",
      { name: "half bar", value: 2, kind: "length" },
    ]);
    expect(d.steps[3]!.inputs).toEqual(["half bar", "clamp"]);
  });

  test("explains what stands beside a greatest, though it didn't decide", () => {
    const slack = named("slack", minus(clamp, bar));
    const most = derivationOf("", named("most", greatest(clamp, slack)));
    expect(most.steps.map((s) => s.name)).toEqual(["clamp", "bar", "slack", "most"]);
    expect(most.steps.at(-1)!.inputs).toEqual(["clamp"]);
  });
});

describe("the test's own question: does a history tell the truth?", () => {
  type Numbers = Readonly<Record<string, number>>;
  const values = { x: 3, y: 5 };
  const two = (v: Numbers) => [given("x", v.x!), given("y", v.y!)] as const;

  test("a true one has no fault", () => {
    const work = (v: Numbers) => named("s", sum(times(2, two(v)[0]), two(v)[1]));
    expect(faultsOfHistory(work, values)).toEqual([]);
    expect([...namedInputs(work(values))].sort()).toEqual(["x", "y"]);
  });

  test("one that hides a value is caught", () => {
    const work = (v: Numbers): Quantity => ({ ...named("s", times(2, two(v)[0])), value: 2 * v.x! + v.y! });
    expect(faultsOfHistory(work, values)).toEqual(["changes with y, but doesn't name it"]);
  });

  test("one that names too much is caught", () => {
    const work = (v: Numbers): Quantity => {
      const [x, y] = two(v);
      return { ...named("s", times(2, x)), inputs: [x, y] };
    };
    expect(faultsOfHistory(work, values)).toEqual([
      "names y, but doesn't change with it",
      "s names y, which its text lacks",
    ]);
  });

  test("one that names what lost a greatest is caught", () => {
    const work = (v: Numbers): Quantity => {
      const both = two(v);
      return { ...named("s", greatest(...both)), inputs: both };
    };
    expect(faultsOfHistory(work, values)).toEqual(["s names x, but doesn't change with it"]);
  });

  test("one that leaves out what won it is caught", () => {
    const work = (v: Numbers): Quantity => ({ ...named("s", greatest(...two(v))), inputs: [] });
    expect(faultsOfHistory(work, values)).toEqual([
      "changes with y, but doesn't name it",
      "s changes with y, but doesn't name it",
    ]);
  });

  test("one that names what nobody gave is caught", () => {
    const work = (v: Numbers) => named("s", sum(two(v)[0], given("z", 1)));
    expect(faultsOfHistory(work, { x: 3 })).toEqual(["names z, which nobody gave"]);
  });
});
