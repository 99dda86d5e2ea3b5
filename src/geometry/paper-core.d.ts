// The headless build of paper carries no types of its own; they are those of the whole library.
declare module "paper/dist/paper-core.js" {
  import paper from "paper";
  export default paper;
}
