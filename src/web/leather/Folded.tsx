import { engine } from "../engine/client.ts";
import { order } from "../state.ts";
import { Gallery } from "./Gallery.tsx";
import { usePictures } from "./usePictures.ts";

/** Turn-backs seen from the side; a bag's seams laid end to end. */
export function Folded() {
  const pictures = usePictures(order.value, "", ({ text, file }) => engine.folded(text, file)).value;
  const said = pictures.list.length === 0 ? "Nothing of this order is folded or sewn." : "";
  return <Gallery pictures={pictures} said={said} wait="Folding …" kind="folded" />;
}
