// Every knife whose steel the general modellers weigh.
import { referenceKnives } from "./blades.js";
import { formKnives } from "./form-blades.js";
import type { ReferenceKnife } from "./outlines.js";

export const steelKnives = (): readonly ReferenceKnife[] => [...referenceKnives(), ...formKnives()];
