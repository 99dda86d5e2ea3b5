import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { say } from "../actions.ts";
import { type ListedOrder, onChangedElsewhere, ownChanges } from "../device/store.ts";
import { lineOf } from "../device/textLines.ts";
import { list, refresh, remove, saveAll, saveOne } from "./kept.ts";
import { openKept } from "./opening.ts";
import { sayWhen } from "./sayWhen.ts";

/** The orders that this device keeps, the last changed first. */
export function KeptOrders() {
  const changes = ownChanges.value;
  useEffect(() => void refresh(), [changes]);
  useEffect(() => onChangedElsewhere(() => void refresh()), []);
  const now = list.value;
  return (
    <section aria-labelledby="kept">
      <h2 id="kept" tabIndex={-1}>
        Orders on this device
      </h2>
      {now && now.message !== "" ? (
        <p class="start-fault" role="alert">
          {now.message}
        </p>
      ) : null}
      {now === undefined ? <p>Looking …</p> : null}
      {now?.orders.length === 0 && now.message === "" ? (
        <p>None yet. Each order that you open is kept here as you change it.</p>
      ) : null}
      <ul class="kept-orders">
        {now?.orders.map((o) => (
          <Kept key={o.id} order={o} />
        ))}
      </ul>
      {now && now.orders.length > 0 ? (
        <p>
          <button type="button" onClick={() => void saveAll()}>
            Save all as a .zip
          </button>
        </p>
      ) : null}
    </section>
  );
}

function Kept({ order }: { readonly order: ListedOrder }) {
  const { file, text, changed } = order;
  const whom = lineOf(text, "for");
  const article = lineOf(text, "article");
  return (
    <li>
      <p>
        <strong>{whom === "" ? file : whom}</strong>
        <span class="start-quiet">
          {article === "" ? "" : `${article}, `}
          {whom === "" ? "" : `${file}, `}
          changed <time dateTime={new Date(changed).toISOString()}>{sayWhen(changed)}</time>
        </span>
      </p>
      <Acts order={order} />
    </li>
  );
}

function Acts({ order }: { readonly order: ListedOrder }) {
  const asking = useSignal(false);
  const keep = useRef<HTMLButtonElement>(null);
  const ask = useRef<HTMLButtonElement>(null);
  const { id, file } = order;
  const turn = (to: boolean): void => {
    asking.value = to;
    // Focus goes where the question or its answer is.
    requestAnimationFrame(() => (to ? keep : ask).current?.focus());
  };
  if (asking.value)
    return (
      <fieldset class="kept-acts">
        <legend>Delete {file} from this device for good?</legend>
        <button type="button" class="start-delete" onClick={() => void removed(order)}>
          Yes, delete it
        </button>
        <button type="button" ref={keep} onClick={() => turn(false)}>
          No, keep it
        </button>
      </fieldset>
    );
  return (
    <p class="kept-acts">
      <button type="button" class="start-first" onClick={() => void open(id)}>
        Open<span class="only-heard"> {file}</span>
      </button>
      <button type="button" onClick={() => void saveOne(id)}>
        Save as a .zip<span class="only-heard"> {file}</span>
      </button>
      <button type="button" ref={ask} onClick={() => turn(true)}>
        Delete …<span class="only-heard"> {file}</span>
      </button>
    </p>
  );
}

async function removed(order: ListedOrder): Promise<void> {
  await remove(order);
  document.getElementById("kept")?.focus();
}

async function open(id: string): Promise<void> {
  const said = await openKept(id);
  if (said === "") return;
  say(said);
  await refresh();
}
