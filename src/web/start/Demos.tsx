import { say } from "../actions.ts";
import { type Demo, demoShop, demos } from "./demos.ts";
import { openNew } from "./opening.ts";

/** Orders of an invented workshop, to look around in. */
export function Demos() {
  return (
    <section aria-labelledby="demos">
      <h2 id="demos">Look at a demo order</h2>
      <p class="start-quiet">From an invented workshop. A copy is opened: change what you like.</p>
      <ul class="choices">
        {demos.map((demo) => (
          <li key={demo.file}>
            <button type="button" onClick={() => void show(demo)} aria-describedby={`demo-${demo.file}`}>
              {demo.title === "" ? demo.file : demo.title}
            </button>
            <p id={`demo-${demo.file}`}>{demo.says}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}

async function show({ file, text }: Demo): Promise<void> {
  const said = await openNew(file, text, demoShop);
  if (said !== "") say(said);
}
