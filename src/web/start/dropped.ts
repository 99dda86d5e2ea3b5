import { type Signal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";

const hasFiles = (e: DragEvent): boolean => e.dataTransfer?.types.includes("Files") ?? false;

/** Takes files dropped anywhere on the page; true while some are held over it. */
export function useDropped(take: (files: readonly File[]) => Promise<void>): Signal<boolean> {
  const over = useSignal(false);
  useEffect(() => {
    const held = (e: DragEvent): void => {
      if (!hasFiles(e)) return;
      // Without this the browser would leave the page to show the file.
      e.preventDefault();
      over.value = true;
    };
    const left = (e: DragEvent): void => {
      if (e.relatedTarget === null) over.value = false;
    };
    const dropped = (e: DragEvent): void => {
      if (!hasFiles(e)) return;
      e.preventDefault();
      over.value = false;
      void take([...(e.dataTransfer?.files ?? [])]);
    };
    const heard = { dragover: held, dragleave: left, drop: dropped } as const;
    const names = Object.keys(heard) as (keyof typeof heard)[];
    for (const name of names) document.addEventListener(name, heard[name]);
    return () => {
      for (const name of names) document.removeEventListener(name, heard[name]);
    };
  }, []);
  return over;
}
