import { useSignal } from "@preact/signals";
import { SVG, type Svg } from "@svgdotjs/svg.js";
import { useEffect, useRef } from "preact/hooks";
import type { PagePiece } from "../../job.ts";
import { picked, view } from "../state.ts";
import { Calibrate } from "./Calibrate.tsx";
import { type Screen, scaleOn, screenNow } from "./calibration.ts";
import { draw } from "./draw.ts";
import { keepCalibration, kept, readKept } from "./keptCalibration.ts";
import { alone, trouble, turned } from "./look.ts";
import { type Mark, pointedAt } from "./marks.ts";
import { sceneSpecs } from "./scene.ts";
import { ChoosePiece, TurnOver } from "./Tools.tsx";

/** Free edge round the piece, mm: its lines' own widths. */
const EDGE_MM = 2;

/** The screen as it is, also after a zoom or on another screen. */
function useScreen(): Screen {
  const now = useSignal(screenNow(window));
  useEffect(() => {
    const look = (): void => {
      now.value = screenNow(window);
    };
    addEventListener("resize", look);
    return () => removeEventListener("resize", look);
  }, []);
  return now.value;
}

function drawAlone(svg: Svg, piece: PagePiece, marks: readonly Mark[], pxPerMm: number): void {
  const flesh = turned.value;
  const { box } = piece;
  const [width, height] = [box.maxX - box.minX + 2 * EDGE_MM, box.maxY - box.minY + 2 * EDGE_MM];
  svg.attr({
    viewBox: `${box.minX - EDGE_MM} ${-box.maxY - EDGE_MM} ${width} ${height}`,
    width: `${width * pxPerMm}`,
    height: `${height * pxPerMm}`,
    role: "img",
    class: "picture",
  });
  svg.node.style.setProperty("--px", `${1 / pxPerMm}px`);
  svg.node.setAttribute(
    "aria-label",
    `${piece.name} at life size, ${flesh ? "flesh side, mirrored" : "grain side"}`,
  );
  draw(
    svg,
    sceneSpecs({
      pieces: [piece],
      shelves: { cells: [{ id: piece.id, box, move: [0, 0] }], bounds: box },
      turned: flesh,
      labelsOf: () => undefined,
      marks,
      ends: [],
      distance: "",
      ghosts: new Map(),
      moved: [],
      names: false,
    }),
  );
}

function TrueSize({ piece, pxPerMm }: { readonly piece: PagePiece; readonly pxPerMm: number }) {
  const host = useRef<HTMLDivElement>(null);
  const flesh = turned.value;
  const marks = pointedAt(view.value, picked.value).marks;
  useEffect(() => {
    const box = host.current;
    if (!box) return;
    const svg = SVG().addTo(box);
    try {
      drawAlone(svg, piece, marks, pxPerMm);
    } catch (fault) {
      trouble.value = fault;
    }
    return () => {
      svg.remove();
    };
  }, [piece, flesh, pxPerMm, picked.value]);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a piece longer than the screen is scrolled, by keys too
    <section class="life-size" tabIndex={0} aria-label={`${piece.name} at life size`} ref={host} />
  );
}

/** One piece at its true size on this screen, after a bank card has been held against it. */
export function LifeSize() {
  const screen = useScreen();
  useEffect(() => {
    void readKept();
  }, []);
  const piece = alone.value ?? view.value?.pieces[0];
  const pxPerMm = scaleOn(kept.value, screen);
  return (
    <>
      <fieldset class="leather-tools" aria-label="Life size">
        <ChoosePiece />
        <TurnOver />
      </fieldset>
      <Calibrate screen={screen} pxPerMm={pxPerMm} matched={keepCalibration} />
      {piece ? <TrueSize piece={piece} pxPerMm={pxPerMm} /> : <p>No pieces yet.</p>}
    </>
  );
}
