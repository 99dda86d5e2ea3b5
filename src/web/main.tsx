import { render } from "preact";
import { App } from "./App.tsx";
import { keepOffline } from "./offline/keepOffline.ts";

// Every part of the page has one file there; colours and spaces are in tokens.css.
import.meta.glob("./css/*.css", { eager: true });

render(<App />, document.getElementById("page")!);
void keepOffline();
