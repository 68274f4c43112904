import { invariant } from "../errors/errors.js";
import { hasGlobal } from "./host-global.js";

// The library comes after: it reads `global` while it loads.

import convert from "convert-units";

invariant(hasGlobal, "the unit library finds the global object");

/** convert-units, for the names of units and the sizes of metric ones; see the exact constants for the others. */
export const unitLibrary = convert;
