import type { Engine } from "./engine.ts";
import type { Answered, Asked, Call, Port } from "./protocol.ts";

type Waiting = { readonly resolve: (value: never) => void; readonly reject: (e: Error) => void };

export type Caller = <K extends Call>(call: K, ...args: Parameters<Engine[K]>) => ReturnType<Engine[K]>;

const stopped = (why: string): Error =>
  new Error(
    `The engine stopped${why === "" ? "" : ` (${why})`} and starts anew. Your order is as you left it: try again.`,
  );

/**
 * Asks a worker and gives each answer to whoever asked. The worker is started by the first call; one that
 * breaks down fails the calls that wait for it, and the next call starts another.
 */
export function caller(start: () => Port): Caller {
  let port: Port | undefined;
  let last = 0;
  const waiting = new Map<number, Waiting>();

  const breakDown = (why: string): void => {
    port?.terminate();
    port = undefined;
    const failed = [...waiting.values()];
    waiting.clear();
    for (const { reject } of failed) reject(stopped(why));
  };

  const take = (answered: Answered): void => {
    const asker = waiting.get(answered.id);
    waiting.delete(answered.id);
    if (answered.ok) asker?.resolve(answered.value as never);
    else asker?.reject(new Error(answered.message));
  };

  const started = (): Port => {
    const fresh = start();
    fresh.onmessage = ({ data }: MessageEvent<Answered>) => take(data);
    fresh.onmessageerror = () => breakDown("its answer could not be read");
    fresh.onerror = (event) => {
      event.preventDefault();
      breakDown(event.message ?? "");
    };
    return fresh;
  };

  return ((call: Call, ...args: readonly unknown[]) =>
    new Promise<never>((resolve, reject) => {
      port ??= started();
      const id = ++last;
      waiting.set(id, { resolve, reject });
      const asked: Asked = { id, call, args };
      port.postMessage(asked);
    })) as Caller;
}
