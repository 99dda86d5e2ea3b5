import { chooseFiles } from "./chooseFiles.ts";

type Props = { readonly take: (files: readonly File[]) => Promise<void> };

/** Files from this device: orders, a shop file, or a .zip that this page once gave out. */
export function OpenFiles({ take }: Props) {
  return (
    <section aria-labelledby="open-file">
      <h2 id="open-file">Open an order file</h2>
      <p>
        <label for="order-files">Order files (.yaml), or a .zip of orders saved from this page</label>
      </p>
      <input
        id="order-files"
        type="file"
        multiple
        accept=".yaml,.yml,.zip"
        aria-describedby="open-how"
        onChange={(e) => void take(chooseFiles(e.currentTarget))}
      />
      <p class="start-quiet" id="open-how">
        Or drop files anywhere on this page. One order is opened at once; several are kept in the list below.
      </p>
    </section>
  );
}
