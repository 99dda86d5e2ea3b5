import { Drawing } from "./Drawing.tsx";
import { DrawingSaid, Tools } from "./Tools.tsx";

/** The pieces as they lie on the bench. */
export function Flat() {
  return (
    <>
      <Tools />
      <Drawing />
      <DrawingSaid />
    </>
  );
}
