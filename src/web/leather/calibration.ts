// How many CSS pixels a true millimetre of this screen takes.

/**
 * A bank card, mm: ISO/IEC 7810 ID-1, 85.60 × 53.98 mm; corners of radius 3.18 mm. From memory; the card
 * itself is what the maker holds against the screen.
 */
export const CARD = { long: 85.6, short: 53.98, corner: 3.18 } as const;

/** CSS takes 96 px for an inch, whatever the screen: where the slider starts. */
export const CSS_PX_PER_MM = 96 / 25.4;
/** From a wall screen to a phone's finest, CSS px to the millimetre. */
export const LEAST_PX_PER_MM = 1.5;
export const MOST_PX_PER_MM = 12;
/** One step of the slider: a tenth of a millimetre on the card's long side at the usual scale. */
export const STEP_PX_PER_MM = 0.005;

/** What a screen shows its pixels by. */
export type Screen = { readonly ratio: number; readonly width: number; readonly height: number };
/** A card was matched on that screen, at that zoom. */
export type Calibration = { readonly pxPerMm: number; readonly screen: Screen };

/** The page's zoom and the system's are in the ratio, and a screen's size in CSS px changes with the system's. */
export function screenNow({ devicePixelRatio, screen }: Pick<Window, "devicePixelRatio" | "screen">): Screen {
  return { ratio: devicePixelRatio, width: screen.width, height: screen.height };
}

/** Ratios that differ by less are one zoom: browsers report it with rounding. */
const SAME_RATIO = 0.001;

/** Whether a card was matched on this very screen at this zoom. */
export const holdsOn = (calibration: Calibration | undefined, now: Screen): boolean =>
  calibration !== undefined &&
  Math.abs(calibration.screen.ratio - now.ratio) <= SAME_RATIO &&
  calibration.screen.width === now.width &&
  calibration.screen.height === now.height;

/**
 * The scale to draw at now, CSS px to the millimetre. At another zoom of one screen, a millimetre takes as
 * many of the screen's own pixels as before; whether it is the same screen nobody can know, so it must be
 * matched again to hold.
 */
export function scaleOn(calibration: Calibration | undefined, now: Screen): number {
  if (!calibration) return CSS_PX_PER_MM;
  const scale = (calibration.pxPerMm * calibration.screen.ratio) / now.ratio;
  return Math.min(MOST_PX_PER_MM, Math.max(LEAST_PX_PER_MM, scale));
}

/** A card that is wider than the room it has is drawn standing. */
export const cardStands = (pxPerMm: number, room: number): boolean => CARD.long * pxPerMm > room;

const isSize = (n: unknown): n is number => typeof n === "number" && Number.isFinite(n) && n > 0;

/** Reads what was kept; undefined when it is not a calibration. */
export function readCalibration(found: unknown): Calibration | undefined {
  if (typeof found !== "object" || found === null) return undefined;
  const { pxPerMm, screen } = found as Partial<Calibration>;
  if (typeof screen !== "object" || screen === null || !isSize(pxPerMm)) return undefined;
  const { ratio, width, height } = screen;
  if (!isSize(ratio) || !isSize(width) || !isSize(height)) return undefined;
  return { pxPerMm, screen: { ratio, width, height } };
}
