import type { Box, Point } from "./shapes.ts";

// Where one looks: a scale and the point in the middle of the frame. Millimetres, y up; a frame's pixels
// run down from its upper left corner.

/** `scale` is CSS pixels to the millimetre; `middle` is what lies in the middle of the frame. */
export type Eye = { readonly scale: number; readonly middle: Point };
export type Frame = { readonly width: number; readonly height: number };

/** Free edge round what is fitted, CSS px. */
const MARGIN_PX = 16;
/** Out to half the fitted size; in until a millimetre is as wide as a finger. */
const LEAST_OF_FIT = 0.5;
const MOST = 40;

/** The whole box in the frame. */
export function fitTo(bounds: Box, frame: Frame): Eye {
  const room = (px: number): number => Math.max(1, px - 2 * MARGIN_PX);
  const [width, height] = [Math.max(1, bounds.maxX - bounds.minX), Math.max(1, bounds.maxY - bounds.minY)];
  return {
    scale: Math.min(room(frame.width) / width, room(frame.height) / height, MOST),
    middle: [(bounds.minX + bounds.maxX) / 2, (bounds.minY + bounds.maxY) / 2],
  };
}

/** A pixel of the frame as a point on the leather. */
export const toMm = ({ scale, middle }: Eye, frame: Frame, [x, y]: Point): Point => [
  middle[0] + (x - frame.width / 2) / scale,
  middle[1] - (y - frame.height / 2) / scale,
];

/** A point on the leather as a pixel of the frame. */
export const toPx = ({ scale, middle }: Eye, frame: Frame, [x, y]: Point): Point => [
  frame.width / 2 + (x - middle[0]) * scale,
  frame.height / 2 - (y - middle[1]) * scale,
];

/** Larger (above 1) or smaller; what lies under the pixel stays there. */
export function zoom(eye: Eye, frame: Frame, factor: number, px: Point, fitted: number): Eye {
  const scale = Math.min(Math.max(MOST, fitted), Math.max(fitted * LEAST_OF_FIT, eye.scale * factor));
  const held = toMm(eye, frame, px);
  const share = eye.scale / scale;
  return {
    scale,
    middle: [held[0] + (eye.middle[0] - held[0]) * share, held[1] + (eye.middle[1] - held[1]) * share],
  };
}

/** The leather pulled by so many pixels; its middle never leaves what is shown. */
export function pan({ scale, middle }: Eye, [dx, dy]: Point, bounds: Box): Eye {
  const held = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));
  return {
    scale,
    middle: [
      held(middle[0] - dx / scale, bounds.minX, bounds.maxX),
      held(middle[1] + dy / scale, bounds.minY, bounds.maxY),
    ],
  };
}

/** A point that is out of sight, or at the very edge, is brought to the middle. */
export function seeing(eye: Eye, frame: Frame, point: Point): Eye {
  const [x, y] = toPx(eye, frame, point);
  const inside =
    x >= MARGIN_PX && y >= MARGIN_PX && x <= frame.width - MARGIN_PX && y <= frame.height - MARGIN_PX;
  return inside ? eye : { scale: eye.scale, middle: point };
}

/** The svg's viewBox: millimetres, y down as SVG has it. */
export function viewBox({ scale, middle }: Eye, frame: Frame): string {
  const [width, height] = [frame.width / scale, frame.height / scale];
  return `${middle[0] - width / 2} ${-middle[1] - height / 2} ${width} ${height}`;
}
