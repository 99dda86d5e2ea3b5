import { useEffect } from "preact/hooks";
import { say } from "../actions.ts";
import { readSettings } from "../device/settings.ts";
import { Begin } from "./Begin.tsx";
import { Demos } from "./Demos.tsx";
import { useDropped } from "./dropped.ts";
import { takeIn } from "./intake.ts";
import { KeptOrders } from "./KeptOrders.tsx";
import { refresh } from "./kept.ts";
import { OpenFiles } from "./OpenFiles.tsx";
import { YourShop } from "./YourShop.tsx";

/** The first page: begin an order, open one, or go on with one. */
export function StartPage() {
  useEffect(() => void readSettings(), []);
  const over = useDropped(takeFiles);
  return (
    <div class={over.value ? "start-page start-over" : "start-page"}>
      <header>
        <h1>Whittaw</h1>
        <p class="start-what">
          Write down an order with its measures, look at the leather, and print templates at true scale to cut
          by.
        </p>
        <p class="start-quiet">Everything stays on this device: nothing is sent anywhere.</p>
      </header>
      <div>
        <OpenFiles take={takeFiles} />
        <KeptOrders />
        <YourShop take={takeFiles} />
      </div>
      <div>
        <Begin />
        <Demos />
      </div>
    </div>
  );
}

async function takeFiles(files: readonly File[]): Promise<void> {
  if (files.length === 0) return;
  // The shop file that is kept must be known before an order is opened by it.
  await readSettings();
  const said = await takeIn(files);
  if (said !== "") say(said);
  await refresh();
}
