import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { say } from "../actions.ts";
import { shopFile } from "../device/settings.ts";
import { engine } from "../engine/client.ts";
import type { ArticleName } from "../engine/engine.ts";
import { openNew } from "./opening.ts";

const reasonOf = (e: unknown): string => (e instanceof Error ? e.message : String(e));

/** One button for each article that can be ordered. */
export function Begin() {
  const list = useSignal<readonly ArticleName[] | undefined>(undefined);
  const fault = useSignal("");
  const ask = (): void => {
    fault.value = "";
    engine.articles().then(
      (articles) => {
        list.value = articles;
      },
      (e: unknown) => {
        fault.value = reasonOf(e);
      },
    );
  };
  useEffect(ask, []);
  return (
    <section aria-labelledby="begin">
      <h2 id="begin">Begin a new order</h2>
      {fault.value === "" ? null : (
        <p role="alert">
          {fault.value}{" "}
          <button type="button" onClick={ask}>
            Try again
          </button>
        </p>
      )}
      {list.value === undefined && fault.value === "" ? <p>Getting the articles …</p> : null}
      <ul class="choices">
        {list.value?.map(({ slug, name, means }) => (
          <li key={slug}>
            <button type="button" onClick={() => void begin(slug)} aria-describedby={`means-${slug}`}>
              {capital(name)}
            </button>
            <p id={`means-${slug}`}>{means}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

async function begin(slug: string): Promise<void> {
  try {
    const text = await engine.begin(slug);
    const said = await openNew(`new-${slug}.yaml`, text, shopFile.value?.text);
    if (said !== "") say(said);
  } catch (e) {
    say(reasonOf(e));
  }
}
