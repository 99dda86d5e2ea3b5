import { useId } from "preact/hooks";
import { showWay } from "../actions.ts";
import { WAYS, way } from "../state.ts";

/** The ways to look at the leather. */
export function Ways() {
  const name = useId();
  return (
    <fieldset class="ways">
      <legend>Ways to look at it</legend>
      {WAYS.map((one) => (
        <label key={one}>
          <input type="radio" name={name} checked={way.value === one} onChange={() => showWay(one)} />
          {one}
        </label>
      ))}
    </fieldset>
  );
}
