export { ASK_KINDS, type Ask, type AskName, type AskTest } from "./ask-fields.js";
export { decodeFile, MAX_FILE_BYTES, markOf } from "./decode.js";
export { KnifeText, type NewPart, type NewSize, newSizes } from "./edit-values.js";
export { knifeJsonSchema, shopJsonSchema } from "./json-schema.js";
export { type GivenQuote, type KnifeFile, type Order, readKnifeFile, withDrawing } from "./knife-file.js";
export { buildKnife } from "./knife-issues.js";
export { BUILT_CHECKS, SHAPE_CHECKS } from "./later-checks.js";
export type { SpecTolerance } from "./lift.js";
export { type PaperGiven, readPaper } from "./paper-words.js";
export { formatPath, ordinal, parsePath, pathWords, withPathWords } from "./path.js";
export { nearestPosition, type PlacedFile, placeIssues } from "./place-issues.js";
export { PRINTER_FACTOR, type PrinterEntry } from "./printer-fields.js";
export { FileError, formatProblems, type Position, type Problem, showText } from "./problem.js";
export { type Planned, type RecordEntry, type RecordFile, readRecordFile } from "./record-file.js";
export {
  type DefaultTolerances,
  type GivenShop,
  type GivenWork,
  readShopFile,
  type ShopFile,
} from "./shop-file.js";
export { stepsOf } from "./written-size.js";
