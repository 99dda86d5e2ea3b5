// Lengths, thicknesses and angles as people write them, read and printed. The only place where a
// unit is converted: everywhere else lengths are millimetres and angles radians.
export { readAngle, readCount, readPlainNumber, readRatio } from "./count.ts";
export { readHands } from "./hands.ts";
export { readLength } from "./length.ts";
export { readStitchPitch } from "./pitch.ts";
export {
  printAngle,
  printHoleInches,
  printLength,
  printLengthShort,
  printNumber,
  printThickness,
} from "./print.ts";
export type { Fault, Reading } from "./reading.ts";
export { roundMm, roundTo } from "./round.ts";
export { readThickness, type Thickness } from "./thickness.ts";
export { type LengthUnit, MM_PER_INCH, MM_PER_IRON, MM_PER_OUNCE, type ThicknessUnit } from "./unit.ts";
