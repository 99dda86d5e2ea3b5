import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { directOnly, stepOrder } from "../../src/bench/stepOrder.ts";
import { WORK_KINDS, type WorkKind } from "../../src/model/work.ts";
import { dependOrder } from "../../src/trade/dependOrder.ts";

type Step = {
  readonly id: string;
  readonly does: WorkKind;
  readonly says: string;
  readonly after: readonly string[];
  readonly rightBefore?: string;
};
const step = (id: string, does: WorkKind = "mark", ...after: readonly string[]): Step => ({
  id,
  does,
  says: `do ${id}`,
  after,
});
const ids = (steps: readonly Step[]): readonly string[] => steps.map((s) => s.id);
const sorted = (steps: readonly Step[]): readonly string[] => ids(stepOrder(steps).steps);

/** Steps of which each may wait for those of a lower number: never a circle; given in any order. */
const noCircle = fc
  .array(fc.record({ kind: fc.nat(), after: fc.array(fc.nat(), { maxLength: 4 }), key: fc.nat() }), {
    maxLength: 25,
  })
  .map((list) =>
    list
      .map(({ kind, after, key }, i) => ({
        key,
        step: step(
          `s${i}`,
          WORK_KINDS[kind % WORK_KINDS.length]!,
          ...(i === 0 ? [] : after.map((n) => `s${n % i}`)),
        ),
      }))
      .sort((a, b) => a.key - b.key)
      .map((s) => s.step),
  );

/** WORK's, but skiving is done before edges and holes. */
const KINDS = [
  ...["setUp", "cutStrap", "cutByDie", "cutByKnife", "mark", "case", "tool", "skive", "edge", "groove"],
  ...[
    "punchHole",
    "punchSlot",
    "prick",
    "dye",
    "fold",
    "fix",
    "glue",
    "stitch",
    "turn",
    "trim",
    "finish",
    "check",
  ],
];

describe("a topological order", () => {
  test("by definition: the same steps, and every one after all that it waits for", () => {
    fc.assert(
      fc.property(noCircle, (steps) => {
        const { steps: order, findings } = stepOrder(steps);
        expect(findings).toEqual([]);
        expect([...ids(order)].sort()).toEqual([...ids(steps)].sort());
        const at = new Map(ids(order).map((id, i) => [id, i]));
        for (const s of order) for (const id of s.after) expect(at.get(id)!).toBeLessThan(at.get(s.id)!);
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  test("by preference: each is the first in the preferred order, then as given, of those that could be done", () => {
    fc.assert(
      fc.property(noCircle, (steps) => {
        expect([...KINDS].sort()).toEqual([...WORK_KINDS].sort());
        let left = [...steps];
        for (const id of sorted(steps)) {
          const ready = left.filter((s) => !s.after.some((a) => left.some((o) => o.id === a)));
          const kind = Math.min(...ready.map((s) => KINDS.indexOf(s.does)));
          expect(ready.find((s) => KINDS.indexOf(s.does) === kind)!.id).toBe(id);
          left = left.filter((s) => s.id !== id);
        }
      }),
      { seed: 6, numRuns: 200 },
    );
  });

  test("direct: a step that is waited for by way of another isn't named; nothing else is lost", () => {
    const reach = (steps: readonly Step[]): ReadonlyMap<string, ReadonlySet<string>> => {
      const all = new Map<string, Set<string>>();
      for (const s of steps) all.set(s.id, new Set(s.after.flatMap((id) => [id, ...(all.get(id) ?? [])])));
      return all;
    };
    fc.assert(
      fc.property(noCircle, (given) => {
        const { steps } = stepOrder(given);
        const direct = directOnly(steps);
        expect(reach(direct)).toEqual(reach(steps));
        for (const s of direct)
          for (const id of s.after)
            expect(s.after.some((other) => other !== id && reach(direct).get(other)!.has(id))).toBe(false);
      }),
      { seed: 7, numRuns: 100 },
    );
    expect(directOnly([step("a"), step("b", "mark", "a"), step("c", "mark", "a", "b")])[2]!.after).toEqual([
      "b",
    ]);
  });

  test("what waits for nothing keeps WORK's order, and of one kind the given", () => {
    expect(
      sorted([step("a", "stitch"), step("b", "cutStrap"), step("c", "stitch"), step("d", "mark")]),
    ).toEqual(["b", "d", "a", "c"]);
  });

  test("what is done right before another stands next to it, whatever it prefers", () => {
    const damp = { ...step("damp", "case", "a"), rightBefore: "fold" };
    const steps = [
      damp,
      step("a", "mark"),
      step("b", "cutStrap"),
      step("fold", "fold", "a", "damp"),
      step("c", "tool"),
    ];
    expect(sorted(steps)).toEqual(["b", "a", "c", "damp", "fold"]);
    expect(sorted([{ ...damp, rightBefore: "nothing" }, step("a", "mark"), step("c", "tool")])).toEqual([
      "a",
      "damp",
      "c",
    ]);
  });

  test("a step that names itself, or none that is there, isn't kept waiting", () => {
    expect(sorted([step("a", "mark", "a"), step("b", "mark", "nowhere")])).toEqual(["a", "b"]);
  });
});

describe("a circle", () => {
  const circle = [
    step("x", "fold", "z"),
    step("y", "mark", "x"),
    step("z", "stitch", "y"),
    step("later", "check", "z"),
    step("free", "check"),
  ];
  test("is one error that names its steps and no others; every step is still there", () => {
    const { steps, findings } = stepOrder(circle);
    expect(ids(steps)).toEqual(["free", "x", "y", "z", "later"]);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ rule: "work-order", severity: "error", value: "3 steps" });
    expect(findings[0]!.message).toContain('"do x"; "do y"; "do z"');
    expect(findings[0]!.message).not.toContain("later");
  });

  test("dependOrder leaves it, and what waits for it", () => {
    const { done, left } = dependOrder(circle, (a, b) => b.after.includes(a.id));
    expect([ids(done), ids(left)]).toEqual([["free"], ["x", "y", "z", "later"]]);
  });
});
