import { engineWith } from "./engineWith.ts";
import { fonts } from "./fonts.ts";
import type { Answered, Asked } from "./protocol.ts";

// The worker: the engine, called by messages. It is the only file of the page that holds the engine.

const engine = engineWith(fonts);

async function answer({ id, call, args }: Asked): Promise<Answered> {
  try {
    const work = engine[call] as (...args: readonly unknown[]) => Promise<unknown>;
    return { id, ok: true, value: await work(...args) };
  } catch (e) {
    return { id, ok: false, message: e instanceof Error ? e.message : String(e) };
  }
}

self.onmessage = async ({ data }: MessageEvent<Asked>) => {
  self.postMessage(await answer(data));
};
