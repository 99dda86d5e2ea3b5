import { printing } from "../device/settings.ts";
import { engine } from "../engine/client.ts";
import { order } from "../state.ts";
import { Gallery } from "./Gallery.tsx";
import { usePictures } from "./usePictures.ts";

/** The sheets as they will print. */
export function OnPaper() {
  const how = printing.value;
  const pictures = usePictures(order.value, JSON.stringify(how), ({ text, file }) =>
    engine.sheets(text, file, how),
  ).value;
  const count = pictures.list.length;
  return (
    <Gallery
      pictures={pictures}
      said={`${count} ${count === 1 ? "sheet" : "sheets"}`}
      wait="Laying the sheets …"
      kind="sheets"
    />
  );
}
