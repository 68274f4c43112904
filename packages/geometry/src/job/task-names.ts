/**
 * The tasks between an order and a parcel, in the order in which they are done, with the words that reports use. The hours
 * of the shop file, of quotes and of records go by these names.
 */
export const TASK_WORDS = {
  design: "drawing and letters",
  stack: "sawing, cleaning and stacking bars",
  weld: "welding the stack",
  forge: "forging",
  anneal: "annealing",
  profile: "grinding the outline",
  drill: "drilling",
  rough: "rough grinding",
  harden: "hardening",
  temper: "tempering",
  finish: "grinding after hardening, and surface finish",
  etch: "etching",
  fit: "fitting guard and handle",
  glue: "gluing up",
  shape: "shaping the handle",
  oil: "oiling the handle",
  sharpen: "sharpening",
  sheath: "sheath",
  pack: "final check, packing and posting",
} as const;

/** One of {@link TASK_WORDS}. */
export type TaskName = keyof typeof TASK_WORDS;
