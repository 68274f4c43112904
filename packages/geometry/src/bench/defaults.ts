import { type DefaultNumber, PRACTICE } from "../limits/limit.js";

/** What set-ups at the bench reckon with where nothing else is known; one table. Lengths mm, angles rad, volumes mm³. */
export const BENCH_DEFAULTS = {
  /** A handle's hole over its pin; a pin is never pressed in. */
  handleHoleOver: {
    quantity: "length",
    value: 0.05,
    basis: `${PRACTICE}: a couple of thousandths of an inch, never a press fit`,
  },
  /** Less than this is a press fit. */
  leastClearance: { quantity: "length", value: 0.02, basis: PRACTICE },
  /** A tang's hole over its pin where it is drilled before the handle: 3/16 in pin, 1/4 in drill. */
  tangHoleLeast: {
    quantity: "share",
    value: 1.25,
    basis: `${PRACTICE}: 25 to 50 % larger than the pin when drilled before the handle`,
  },
  tangHoleMost: {
    quantity: "share",
    value: 1.5,
    basis: `${PRACTICE}: 25 to 50 % larger than the pin when drilled before the handle`,
  },
  /** What a flush pin stands out on each side until it is ground down, glued in. */
  flushPin: { quantity: "length", value: 2, basis: PRACTICE },
  /** What a pin stands out on each side to be peened, in radii of the pin. */
  peenLeast: { quantity: "share", value: 1, basis: `${PRACTICE}: 1 to 1.5 of the pin's radius` },
  peenMost: { quantity: "share", value: 1.5, basis: `${PRACTICE}: 1 to 1.5 of the pin's radius` },
  /** Sanded off a slab's outer face. */
  slabSanding: { quantity: "length", value: 1, basis: PRACTICE },
  /** A slab's blank over its outline, both ends or both sides together: about 1/8 in all round. */
  blankOver: { quantity: "length", value: 6, basis: `${PRACTICE}: about 3 mm (1/8 in) all round` },
  glueLine: { quantity: "length", value: 0.15, basis: `${PRACTICE}: 0.1 to 0.2 mm between roughened faces` },
  /** How much is mixed for what the joint takes. */
  glueWaste: { quantity: "share", value: 2, basis: `${PRACTICE}: twice what the joint takes` },
  glueLeast: {
    quantity: "volume",
    value: 4000,
    basis: `${PRACTICE}: 4 ml is the least that a syringe measures to 5 %`,
  },
  /** A mortise over the tang inside it, across. */
  mortiseOver: { quantity: "length", value: 0.5, basis: PRACTICE },
  guardSlotOver: {
    quantity: "length",
    value: 0.05,
    basis: `${PRACTICE}: as the tang, 0.05 mm more at the most`,
  },
  /** Steel left between neighbouring holes of a guard's slot: a drill runs off into a hole that its own cuts into. */
  slotHolesApart: { quantity: "length", value: 0.5, basis: PRACTICE },
  wedgeTolerance: { quantity: "angle", value: (0.1 * Math.PI) / 180, basis: PRACTICE },
  /** Mean heat of steel between hardening heat and the oil, J/(g K). */
  steelHeat: { quantity: "count", value: 0.65, basis: "from memory, unconfirmed" },
  /** Density of quench oil, kg/l, and its heat, J/(g K). */
  oilDensity: { quantity: "count", value: 0.87, basis: "from memory, unconfirmed; see the oil's data sheet" },
  oilHeat: { quantity: "count", value: 2, basis: "from memory, unconfirmed; see the oil's data sheet" },
  oilTemperature: {
    quantity: "temperature",
    value: 60,
    basis: `${PRACTICE}; the oil's data sheet says what it wants`,
  },
} as const satisfies Readonly<Record<string, DefaultNumber>>;
