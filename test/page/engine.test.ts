import { expect, test } from "vitest";
import { caller } from "../../src/web/engine/caller.ts";
import { latest } from "../../src/web/engine/latest.ts";
import type { Answered, Asked, Port } from "../../src/web/engine/protocol.ts";

/** A worker by hand: what it was asked, and how it answers. */
function byHand() {
  const asked: Asked[] = [];
  const ports: { readonly port: Port; ended: boolean }[] = [];
  const start = (): Port => {
    const one = { ended: false } as { port: Port; ended: boolean };
    one.port = {
      postMessage: (a: Asked) => asked.push(a),
      terminate: () => {
        one.ended = true;
      },
      onmessage: null,
      onmessageerror: null,
      onerror: null,
    } as Port;
    ports.push(one);
    return one.port;
  };
  const answer = (data: Answered): void => {
    (ports.at(-1)!.port.onmessage as (event: { readonly data: Answered }) => void)({ data });
  };
  const breakDown = (message: string): void => {
    (ports.at(-1)!.port.onerror as (event: unknown) => void)({ message, preventDefault: () => undefined });
  };
  return { start, asked, ports, answer, breakDown };
}

test("each answer goes to whoever asked, in whatever order they come; a worker is started by the first call", async () => {
  const { start, asked, ports, answer } = byHand();
  const call = caller(start);
  expect(ports).toHaveLength(0);
  const first = call("begin", "hat");
  const second = call("begin", "belt");
  answer({ id: asked[1]!.id, ok: true, value: "a belt" });
  answer({ id: asked[0]!.id, ok: false, message: "no hats" });
  await expect(second).resolves.toBe("a belt");
  await expect(first).rejects.toThrow("no hats");
  expect(ports).toHaveLength(1);
});

test("a worker that breaks down fails what waits for it, in words, and the next call has another", async () => {
  const { start, asked, ports, answer, breakDown } = byHand();
  const call = caller(start);
  const lost = call("begin", "hat");
  breakDown("out of memory");
  await expect(lost).rejects.toThrow(/engine stopped \(out of memory\).*try again/);
  expect(ports[0]!.ended).toBe(true);
  const next = call("begin", "belt");
  expect(ports).toHaveLength(2);
  answer({ id: asked[1]!.id, ok: true, value: "a belt" });
  await expect(next).resolves.toBe("a belt");
});

test("of calls that overtake each other one runs, the newest follows, and the others are told so", async () => {
  const begun: string[] = [];
  const finish: (() => void)[] = [];
  const look = latest((text: string) => {
    begun.push(text);
    return new Promise<string>((resolve) => finish.push(() => resolve(`seen ${text}`)));
  });
  const calls = [look("a")];
  await Promise.resolve();
  await new Promise((resolve) => setTimeout(resolve));
  calls.push(look("b"), look("c"), look("d"));
  finish[0]!();
  await new Promise((resolve) => setTimeout(resolve));
  expect(begun).toEqual(["a", "d"]);
  finish[1]!();
  expect(await Promise.all(calls)).toEqual([undefined, undefined, undefined, "seen d"]);
});

test("a call that fails stands in nobody's way", async () => {
  const look = latest(async (text: string) => {
    if (text === "bad") throw new Error("bad");
    return text;
  });
  await expect(look("bad")).rejects.toThrow("bad");
  await expect(look("good")).resolves.toBe("good");
});
