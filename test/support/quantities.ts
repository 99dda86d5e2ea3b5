import { leaf, type Quantity, type QuantityKind } from "../../src/model/quantity.ts";

/** A value as an order gives it. */
export const given = (name: string, value: number, kind: QuantityKind = "length"): Quantity =>
  leaf(name, value, kind, { kind: "given", where: "test" });

export const degrees = (rad: number): number => (rad * 180) / Math.PI;
export const radians = (deg: number): number => (deg * Math.PI) / 180;
