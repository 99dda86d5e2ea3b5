import { beforeEach, describe, expect, test, vi } from "vitest";
import type { Engine } from "../../src/web/engine/engine.ts";
import { engineWith } from "../../src/web/engine/engineWith.ts";
import type { History } from "../../src/web/history.ts";
import {
  answer,
  canRedo,
  canUndo,
  moved,
  notice,
  type OpenOrder,
  order,
  picked,
  view,
} from "../../src/web/state.ts";
import { orderText } from "./orders.ts";

// What a person can do to an order, with the engine itself and a store that remembers what it was given.

const saved: { order: OpenOrder; history: History }[] = [];
let storeSays: { ok: true; value: undefined } | { ok: false; message: string } = {
  ok: true,
  value: undefined,
};
vi.mock("../../src/web/device/store.ts", () => ({
  saveOrder: async (order: OpenOrder, history: History) => {
    saved.push({ order, history });
    return storeSays;
  },
}));

/** How long an edit takes, in turns of the event loop: what is typed meanwhile waits. */
let slowness = 0;
/** The checks take long; only one test is about what they find. */
let checksLook = false;
const noFonts = (): never => {
  throw new Error("no file is made here");
};
const real = engineWith(noFonts);
const engine: Engine = {
  ...real,
  findings: (...args) =>
    checksLook ? real.findings(...args) : Promise.resolve({ ok: false, message: "overtaken" }),
  edit: async (...args) => {
    for (let k = 0; k < slowness; k++) await new Promise((go) => setTimeout(go));
    return real.edit(...args);
  },
};
vi.mock("../../src/web/engine/client.ts", () => ({
  engine: new Proxy({}, { get: (_, key) => engine[key as keyof Engine] }),
}));

const act = await import("../../src/web/actions.ts");

const JUNIPER = orderText("juniper-headstall");
const POLL = "measures.over-poll";

beforeEach(async () => {
  storeSays = { ok: true, value: undefined };
  slowness = 0;
  checksLook = false;
  await act.openOrder("juniper.yaml", JUNIPER);
  saved.length = 0;
});

/** All that was asked for is done. */
async function settled(): Promise<void> {
  await act.looked();
  await new Promise((go) => setTimeout(go));
  await act.looked();
}

const lineOf = (key: string): string =>
  (order.value?.text ?? "").split("\n").find((l) => l.trimStart().startsWith(`${key}:`)) ?? "";

describe("setting a value", () => {
  test("changes its own place in the text and nothing else", async () => {
    await act.setValue(POLL, "42 1/4");
    const [before, after] = [JUNIPER.split("\n"), (order.value?.text ?? "").split("\n")];
    const changed = after.filter((line, k) => line !== before[k]);
    expect(after).toHaveLength(before.length);
    expect(changed).toEqual([expect.stringMatching(/over-poll: 42 1\/4 +# bit ring to bit ring/)]);
  });

  test("moves the sizes that follow from it, and says from what to what", async () => {
    await act.setValue(POLL, "42 1/2");
    await settled();
    const whole = moved.value.find((m) => m.piece === "" && m.name.includes("over poll"));
    expect(whole?.before).toMatch(/^41 1\/2 in/);
    expect(whole?.after).toMatch(/^42 1\/2 in/);
    expect(moved.value.every((m) => m.before !== m.after)).toBe(true);
  });

  test("a wrong value stands in the text, has its fault, and the last good view stays", async () => {
    const good = view.value;
    await act.setValue(POLL, "long");
    await settled();
    expect(lineOf("over-poll")).toContain("over-poll: long");
    expect(answer.value).toMatchObject({ ok: false, texts: { [POLL]: "long" } });
    expect(answer.value?.ok === false && answer.value.faults.map((f) => f.key)).toEqual([POLL]);
    expect(view.value).toBe(good);
  });

  test("what can't be written at all is said, and the order stays", async () => {
    const said = await act.setValue(POLL, "41\u0000");
    expect(said).toMatchObject({ ok: false });
    expect(order.value?.text).toBe(JUNIPER);
    expect(canUndo.value).toBe(false);
  });

  test("typing faster than it can be written loses nothing of the end", async () => {
    slowness = 5;
    const typed = ["4", "42", "42 ", "42 1", "42 1/", "42 1/2"].map((t) => act.setValue(POLL, t.trim()));
    const other = act.setValue("measures.ear-base", "8 1/2");
    await Promise.all([...typed, other]);
    expect(lineOf("over-poll")).toContain("over-poll: 42 1/2");
    expect(lineOf("ear-base")).toContain("ear-base: 8 1/2");
  });

  test("the text may change while a value is written: both changes stand", async () => {
    slowness = 5;
    const set = act.setValue(POLL, "43");
    await new Promise((go) => setTimeout(go));
    act.setText(`${order.value?.text ?? ""}# checked by hand\n`);
    await set;
    expect(lineOf("over-poll")).toContain("over-poll: 43");
    expect(order.value?.text).toMatch(/# checked by hand\n$/);
  });
});

describe("undo and redo", () => {
  test("one field's typing is one step; after leaving it another begins", async () => {
    for (const text of ["4", "42", "42 1/2"]) await act.setValue(POLL, text);
    await act.endStep();
    const once = order.value?.text;
    for (const text of ["4", "43"]) await act.setValue(POLL, text);
    await act.undo();
    expect(order.value?.text).toBe(once);
    await act.undo();
    expect(order.value?.text).toBe(JUNIPER);
    expect([canUndo.value, canRedo.value]).toEqual([false, true]);
    await act.redo();
    await act.redo();
    expect(lineOf("over-poll")).toContain("over-poll: 43");
    expect(canRedo.value).toBe(false);
  });

  test("a new change forgets what could be redone", async () => {
    await act.setValue(POLL, "42");
    await act.undo();
    await act.setValue("measures.ear-base", "8");
    expect(canRedo.value).toBe(false);
    await act.undo();
    expect(order.value?.text).toBe(JUNIPER);
  });

  test("Escape takes back the field's own typing only", async () => {
    await act.setValue("measures.ear-base", "8");
    const before = order.value?.text;
    for (const text of ["4", "4x"]) await act.setValue(POLL, text);
    await act.dropStep(POLL);
    expect(order.value?.text).toBe(before);
    await act.dropStep(POLL);
    expect(order.value?.text).toBe(before);
    expect(canRedo.value).toBe(false);
  });

  test("undo mends a wrong value", async () => {
    await act.setValue(POLL, "long");
    await act.undo();
    await settled();
    expect(answer.value?.ok).toBe(true);
  });
});

test("other units change no size of any piece, and come back in one step", async () => {
  const sizes = () => view.value?.pieces.flatMap((p) => p.sizes.map((s) => s.value)) ?? [];
  const before = sizes();
  await act.setUnits("mm");
  await settled();
  expect(view.value?.units).toBe("mm");
  expect(before.length).toBeGreaterThan(10);
  sizes().forEach((value, k) => {
    expect(value).toBeCloseTo(before[k] ?? Number.NaN, 9);
  });
  expect(moved.value).toEqual([]);
  await act.undo();
  expect(order.value?.text).toBe(JUNIPER);
});

describe("keeping", () => {
  test("every change is saved, the newest last, with its history", async () => {
    await act.setValue(POLL, "42");
    await act.setValue(POLL, "43");
    await settled();
    expect(saved.at(-1)?.order.text).toBe(order.value?.text);
    expect(saved.at(-1)?.history).toEqual({ past: [JUNIPER], future: [] });
    expect(notice.value).toBe("Saved on this device.");
  });

  test("a store that fails is told of, and the order stays as it is", async () => {
    storeSays = { ok: false, message: "The device is full." };
    await act.setValue(POLL, "42");
    await settled();
    expect(notice.value).toBe("The device is full.");
    expect(lineOf("over-poll")).toContain("42");
  });

  test("a kept order comes back with its place and its history", async () => {
    await act.openOrder("juniper.yaml", JUNIPER, undefined, {
      id: "kept",
      history: { past: ["units: in\n"], future: [] },
    });
    expect(order.value?.id).toBe("kept");
    await act.undo();
    expect(order.value?.text).toBe("units: in\n");
  });

  test("what was changed last is saved though the order is closed at once", async () => {
    await act.setValue(POLL, "42");
    const text = order.value?.text;
    act.closeOrder();
    await settled();
    expect(saved.at(-1)?.order.text).toBe(text);
    expect([order.value, view.value, answer.value, picked.value]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });
});

test("what the checks find comes after the view, and stays in sight while they look again", async () => {
  checksLook = true;
  await act.openOrder("juniper.yaml", JUNIPER);
  await settled();
  const findings = await real.findings(JUNIPER, "juniper.yaml", undefined);
  expect(view.value?.findings).toEqual(findings.ok && findings.value);
  const before = view.value?.findings.length ?? 0;
  await act.setValue(POLL, "42");
  await act.looked();
  expect(before).toBeGreaterThan(0);
  expect(view.value?.findings.length).toBeGreaterThan(0);
});
