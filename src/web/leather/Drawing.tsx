import { useEffect, useId, useRef } from "preact/hooks";
import { mount } from "./mount.ts";
import { Rulers } from "./Rulers.tsx";

/** The pieces, with a ruler along two edges. */
export function Drawing() {
  const host = useRef<HTMLDivElement>(null);
  const help = useId();
  useEffect(() => {
    if (host.current) return mount(host.current, help);
  }, [help]);
  return (
    <div class="drawing-frame">
      <Rulers />
      <div class="drawing-host" ref={host} />
      <p class="drawing-help" id={help}>
        Touch a hole, fold or line to pick it. Drag to move; wheel, pinch, + and − for larger and smaller;
        arrow keys move, 0 shows all.
      </p>
    </div>
  );
}
