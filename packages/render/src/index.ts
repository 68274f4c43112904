export * from "./calibration.js";
export * from "./check-layout.js";
export * from "./clean-text.js";
export * from "./drawing.js";
export * from "./pattern-model.js";
export * from "./role.js";
export * from "./sheets/pattern-sheet.js";
export * from "./svg/to-svg.js";
export { textBox, textWidth } from "./text-metrics.js";
