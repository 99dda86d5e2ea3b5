import { view } from "../state.ts";
import { toMm, toPx } from "./eye.ts";
import { eyeNow, frame, shelves, shown, turned } from "./look.ts";
import type { Point } from "./shapes.ts";
import { type Tick, ticksOf } from "./ticks.ts";
import { onBench } from "./touch.ts";

/** How wide a ruler is, CSS px. */
const WIDE = 26;

/** Zero is at the left edge and at the foot of the leather itself, not of what is written round it. */
function zero(): Point {
  const corners = shelves.value.cells.flatMap((cell): readonly Point[] => {
    const box = shown.value.find(({ id }) => id === cell.id)?.box ?? cell.box;
    const side = turned.value ? box.maxX : box.minX;
    return [onBench(cell, turned.value, [side, box.minY])];
  });
  if (corners.length === 0) return [0, 0];
  return [Math.min(...corners.map(([x]) => x)), Math.min(...corners.map(([, y]) => y))];
}

function Along({ ticks }: { readonly ticks: readonly (Tick & { readonly px: number })[] }) {
  return (
    <svg class="ruler ruler-top" aria-hidden="true" focusable="false">
      {ticks.map(({ at, px, tall, figure }) => (
        <g key={at} transform={`translate(${px} 0)`}>
          <path d={`M0 ${WIDE}V${WIDE * (1 - tall / 2)}`} />
          {figure === undefined ? null : <text y={WIDE / 2 - 1}>{figure}</text>}
        </g>
      ))}
    </svg>
  );
}

function Up({ ticks }: { readonly ticks: readonly (Tick & { readonly px: number })[] }) {
  return (
    <svg class="ruler ruler-side" aria-hidden="true" focusable="false">
      {ticks.map(({ at, px, tall, figure }) => (
        <g key={at} transform={`translate(0 ${px})`}>
          <path d={`M${WIDE} 0H${WIDE * (1 - tall / 2)}`} />
          {figure === undefined ? null : (
            <text transform={`translate(${WIDE / 2 - 1} 0) rotate(-90)`}>{figure}</text>
          )}
        </g>
      ))}
    </svg>
  );
}

/** Rulers in the order's units along the upper and the left edge. */
export function Rulers() {
  const [eye, size, units] = [eyeNow.value, frame.value, view.value?.units ?? "mm"];
  if (size.width === 0) return null;
  const [left, foot] = zero();
  const [x0, y1] = toMm(eye, size, [0, 0]);
  const [x1, y0] = toMm(eye, size, [size.width, size.height]);
  const along = ticksOf(x0 - left, x1 - left, eye.scale, units);
  const up = ticksOf(y0 - foot, y1 - foot, eye.scale, units);
  return (
    <>
      <Along ticks={along.map((t) => ({ ...t, px: toPx(eye, size, [t.at + left, 0])[0] }))} />
      <Up ticks={up.map((t) => ({ ...t, px: toPx(eye, size, [0, t.at + foot])[1] }))} />
      <span class="ruler-unit" aria-hidden="true">
        {units}
      </span>
    </>
  );
}
