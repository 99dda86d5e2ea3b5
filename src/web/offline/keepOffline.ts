import { notice } from "../state.ts";

/** Has the browser keep the page's files. Without it the page works as well, with a network. */
export async function keepOffline(): Promise<void> {
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) return;
  try {
    await navigator.serviceWorker.register("./sw.js", { updateViaCache: "none" });
  } catch {
    notice.value = "This browser does not keep the page for use without a network; all else works.";
  }
}
