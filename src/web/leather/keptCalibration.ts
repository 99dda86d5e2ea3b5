import { signal } from "@preact/signals";
import { getSetting, setSetting } from "../device/settings.ts";
import { type Calibration, readCalibration } from "./calibration.ts";

const SETTING = "life size";

/** The card as it was last matched on this device; while the page is open where a device keeps nothing. */
export const kept = signal<Calibration | undefined>(undefined);

/** Reads what the device has kept, unless a card was matched meanwhile. */
export async function readKept(): Promise<void> {
  const found = readCalibration(await getSetting(SETTING));
  kept.value ??= found;
}

export function keepCalibration(calibration: Calibration): void {
  kept.value = calibration;
  // Where it can't be kept, the warning comes again next time.
  void setSetting(SETTING, calibration);
}
