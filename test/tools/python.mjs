// The Python that has ezdxf: a reader of DXF files that is not ours. Debian's packages are seen by Debian's
// own Python alone, whatever else is called python3.
import { spawnSync } from "node:child_process";

const TRIED = ["/usr/bin/python3", "python3", "python"];

/** The command, or undefined when none of them has it. */
export const pythonWithEzdxf = () =>
  TRIED.find((python) => spawnSync(python, ["-c", "import ezdxf"], { stdio: "ignore" }).status === 0);
