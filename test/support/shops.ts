import { FITTING_KINDS, type FittingKind } from "../../src/model/fitting.ts";
import type { HardwareRate, Shop } from "../../src/model/shop.ts";

const NOTHING: HardwareRate = { bySize: [], lengths: [], lengthsFrom: "invented for a test", spares: 0 };

/** A shop without prices, whose hardware is as given and otherwise unknown. */
export const shopWith = (
  hardware: Partial<Record<FittingKind, Partial<HardwareRate>>>,
  over: Partial<Shop> = {},
): Shop => ({
  file: "",
  name: "Fernhollow Saddlery",
  address: "",
  overhead: 0,
  overheadOf: "labour",
  margin: 0,
  marginOf: "price",
  tax: 0,
  taxName: "tax",
  deposit: 0,
  validDays: 30,
  leathers: {},
  hardware: Object.fromEntries(FITTING_KINDS.map((k) => [k, { ...NOTHING, ...hardware[k] }])) as Readonly<
    Record<FittingKind, HardwareRate>
  >,
  thread: { name: "", needleful: 1500, tail: 150 },
  minutes: {},
  punches: [],
  sizes: [],
  stripAllowance: 0,
  ...over,
});
