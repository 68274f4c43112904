import type { Tone } from "./drawing.js";

/** How light each tone is, 0 black to 255 white. Printed with black ink only, each can be told from its neighbours. */
export const LIGHTNESS: Readonly<Record<Tone, number>> = {
  black: 0,
  dark: 77,
  middle: 148,
  light: 212,
  white: 255,
};
