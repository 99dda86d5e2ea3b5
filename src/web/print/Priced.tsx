import { setShop, setValue } from "../actions.ts";
import { shopFile } from "../device/settings.ts";
import { lineOf } from "../device/textLines.ts";
import { order } from "../state.ts";

/** What the quote is reckoned by. */
export function Priced() {
  const now = order.value;
  if (!now) return null;
  const named = lineOf(now.text, "shop");
  const yours = shopFile.value;
  return (
    <div class="print-quiet">
      <p>{sayPriced(named, now.shop)}</p>
      {yours && (named === "" || now.shop !== yours.text) ? (
        <p>
          <button type="button" onClick={() => void priceBy(yours.file, yours.text, named)}>
            Price this order by your shop file, {yours.file}
          </button>
        </p>
      ) : null}
      {yours ? null : <p>To price by your own rates, open your shop file on the first page.</p>}
    </div>
  );
}

function sayPriced(named: string, shop: string | undefined): string {
  if (named === "") return "There is no quote: the order names no shop file.";
  if (shop === undefined) return `There is no quote: the order names ${named}, which was not opened.`;
  const name = lineOf(shop, "shop");
  return `Priced by ${name === "" ? named : `${name} (${named})`}.`;
}

async function priceBy(file: string, text: string, named: string): Promise<void> {
  await setShop(text);
  if (named === "") await setValue("shop", file);
}
