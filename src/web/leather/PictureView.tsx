import { SVG } from "@svgdotjs/svg.js";
import { useEffect, useId, useRef } from "preact/hooks";
import type { PagePicture } from "../../job.ts";
import { draw } from "./draw.ts";
import { trouble } from "./look.ts";
import { group, itemSpecs } from "./specs.ts";

/** A picture is drawn when it comes this near to what is seen. */
const NEAR = "400px";

/** Runs `work` when `host` comes near what is seen; a fault goes to the pane's own boundary. */
function whenNear(host: Element, work: () => void): () => void {
  const watcher = new IntersectionObserver(
    (entries) => {
      if (!entries.some((e) => e.isIntersecting)) return;
      watcher.disconnect();
      try {
        work();
      } catch (fault) {
        trouble.value = fault;
      }
    },
    { rootMargin: NEAR },
  );
  watcher.observe(host);
  return () => watcher.disconnect();
}

/** A picture of the engine, drawn as its files have it; `ids` keeps the names of its clips apart from others'. */
export function PictureView({ picture }: { readonly picture: PagePicture }) {
  const host = useRef<HTMLDivElement>(null);
  const id = useId();
  useEffect(() => {
    const box = host.current;
    if (!box) return;
    const svg = SVG().addTo(box);
    const { width, height, items, says, title } = picture;
    svg.attr({ viewBox: `0 0 ${width} ${height}`, role: "img", class: "picture" });
    svg.node.setAttribute("aria-label", says === "" ? title : says);
    const stop = whenNear(box, () =>
      draw(svg, [group({ transform: `translate(0 ${height}) scale(1 -1)` }, itemSpecs(items, id))]),
    );
    return () => {
      stop();
      svg.remove();
    };
  }, [picture, id]);
  return <div class="picture-host" ref={host} />;
}
