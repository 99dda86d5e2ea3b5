import type { Finding } from "../model/finding.ts";
import type { Order } from "../order/order.ts";

const SEVERITIES = ["error", "caution", "note"];

/** Errors, then cautions, then notes; each in the order they came. */
export const gravestFirst = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort((a, b) => SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity));

/** What the reader understood that is worth telling. */
export const remarksOf = (order: Order): readonly Finding[] =>
  order.remarks.map((r) => ({
    rule: "reading",
    severity: "note",
    piece: "",
    place: r.key,
    message: r.text,
    mend: "nothing to do if that is what you meant",
  }));
