import { order } from "./state.ts";

/** Shown instead of the page when it fails by a fault of ours: nothing that was typed is lost. */
export function Broken({ fault }: { readonly fault: unknown }) {
  const open = order.value;
  return (
    <main class="broken">
      <h1>The page has failed</h1>
      <p>
        This is a fault of ours. Copy the order below into a file, then load the page again; files made from
        it by the command line are the same.
      </p>
      {open ? (
        <label>
          The order, {open.file}
          <textarea readOnly rows={24} value={open.text} />
        </label>
      ) : null}
      <p>
        <button type="button" onClick={() => location.reload()}>
          Load the page again
        </button>
      </p>
      <pre>{fault instanceof Error ? fault.message : String(fault)}</pre>
    </main>
  );
}
