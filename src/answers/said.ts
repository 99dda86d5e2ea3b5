import type { Fault } from "../model/finding.ts";
import { sayFault } from "../order/say.ts";

/** What was asked for, or why it can't be had, in words. */
export type Said<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly message: string };

export const said = <T>(value: T): Said<T> => ({ ok: true, value });
export const refused = (message: string): { readonly ok: false; readonly message: string } => ({
  ok: false,
  message,
});

/** The first thing that is wrong with an order, which keeps it from being made. */
export const notMade = (
  faults: readonly Fault[],
  file: string,
): { readonly ok: false; readonly message: string } =>
  refused(faults[0] ? sayFault(faults[0], file) : "The order can't be made.");
