import { type Caller, caller } from "./caller.ts";
import type { Engine, Said } from "./engine.ts";
import { latest } from "./latest.ts";
import type { Port } from "./protocol.ts";

const start = (): Port => new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });

/** A call that fails says so in its answer. */
async function said<T>(call: Promise<Said<T>>): Promise<Said<T>> {
  try {
    return await call;
  } catch (e) {
    return { ok: false, message: e instanceof Error ? e.message : String(e) };
  }
}

/** Of calls that overtake each other only the last is worked on: the others are told so. */
const OVERTAKEN = { ok: false, message: "The order has changed since." } as const;

/** The engine as the page calls it: one worker answers each keystroke, another does what takes longer. */
export function engineOf(quick: Caller, slow: Caller): Engine {
  const findings = latest((...args: Parameters<Engine["findings"]>) => said(slow("findings", ...args)));
  return {
    articles: () => quick("articles"),
    begin: (slug) => quick("begin", slug),
    look: latest((text, file, shop) => quick("look", text, file, shop)),
    findings: async (...args) => (await findings(...args)) ?? OVERTAKEN,
    edit: (...args) => said(quick("edit", ...args)),
    units: (...args) => said(quick("units", ...args)),
    piece: (...args) => said(slow("piece", ...args)),
    sheets: (...args) => said(slow("sheets", ...args)),
    folded: (...args) => said(slow("folded", ...args)),
    files: (...args) => said(slow("files", ...args)),
  };
}

export const engine: Engine = engineOf(caller(start), caller(start));
