import { say } from "../actions.ts";
import { setShopFile, shopFile } from "../device/settings.ts";
import { lineOf } from "../device/textLines.ts";
import { chooseFiles } from "./chooseFiles.ts";

type Props = { readonly take: (files: readonly File[]) => Promise<void> };

/** The file with the workshop's rates, kept on this device. */
export function YourShop({ take }: Props) {
  const now = shopFile.value;
  const name = now ? lineOf(now.text, "shop") : "";
  return (
    <section aria-labelledby="your-shop">
      <h2 id="your-shop">Your shop file</h2>
      {now ? (
        <p>
          <strong>{name === "" ? now.file : name}</strong>
          {name === "" ? "" : `, ${now.file}`}{" "}
          <button type="button" onClick={() => void takeAway(now.file)}>
            Take away {now.file}
          </button>
        </p>
      ) : (
        <p>None is kept here. Without one nothing is priced; templates need none.</p>
      )}
      <p>
        <label for="shop-file">{now ? "Another shop file (.yaml)" : "Shop file (.yaml)"}</label>
      </p>
      <input
        id="shop-file"
        type="file"
        accept=".yaml,.yml"
        aria-describedby="shop-how"
        onChange={(e) => void take(chooseFiles(e.currentTarget))}
      />
      <p class="start-quiet" id="shop-how">
        It is kept on this device. Orders opened from now on that name a shop file are priced by it.
      </p>
    </section>
  );
}

async function takeAway(file: string): Promise<void> {
  const done = await setShopFile(undefined);
  say(done.ok ? `${file} is taken away from this device.` : done.message);
}
