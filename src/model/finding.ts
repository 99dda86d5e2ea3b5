import type { Point } from "../geometry/path.ts";

/** error: the templates must not be cut; caution: look before cutting; note: good to know. */
export type Severity = "error" | "caution" | "note";

/** A change to the order that removes a finding: the dimension's path and its new value as text. */
export type SuggestedChange = { readonly dimension: string; readonly value: string };

/** What a check found. `value` and `limit` are printed as they stand, in words with units. */
export type Finding = {
  /** The rule's name, e.g. "holes-to-edge". */
  readonly rule: string;
  readonly severity: Severity;
  /** The piece's id, or "" for the whole article. */
  readonly piece: string;
  /** Where on the piece, in words, e.g. "hole near.3". */
  readonly place: string;
  /** Where to look on the flat piece. */
  readonly at?: Point;
  readonly message: string;
  readonly value?: string;
  readonly limit?: string;
  readonly mend: string;
  readonly change?: SuggestedChange;
};

/** A place in the order's text, counted from 1. */
export type TextPlace = { readonly line: number; readonly column: number };

/** A fault in the order's text: words, types, ranges, keys. Nothing is made from a faulty order. */
export type Fault = {
  /** A stable name of the kind of fault, e.g. "unknown-key". */
  readonly code: string;
  /** The value's path in the order, e.g. "measures.over-poll"; "" for the whole file. */
  readonly key: string;
  readonly place?: TextPlace;
  /** What was found, with the value. */
  readonly problem: string;
  /** What is allowed, where there is a range or a list. */
  readonly allowed?: string;
  readonly mend: string;
};
