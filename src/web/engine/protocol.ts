import type { Engine } from "./engine.ts";

// What goes between the page and the worker.

export type Call = keyof Engine;
export type Asked = { readonly id: number; readonly call: Call; readonly args: readonly unknown[] };
export type Answered =
  | { readonly id: number; readonly ok: true; readonly value: unknown }
  | { readonly id: number; readonly ok: false; readonly message: string };

/** As much of a Worker as is needed, so that tests can do without one. */
export type Port = Pick<Worker, "postMessage" | "terminate" | "onmessage" | "onmessageerror" | "onerror">;
