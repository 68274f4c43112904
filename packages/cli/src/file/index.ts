export { ASK_KINDS, type Ask, type AskName, type AskTest } from "./ask-fields.js";
export { decodeFile, MAX_FILE_BYTES } from "./decode.js";
export { knifeJsonSchema, shopJsonSchema } from "./json-schema.js";
export { type KnifeFile, type Order, readKnifeFile, withDrawing } from "./knife-file.js";
export type { SpecTolerance } from "./lift.js";
export { type PlacedFile, placeIssues } from "./place-issues.js";
export { FileError, formatProblems, type Position, type Problem, showText } from "./problem.js";
export { type DefaultTolerances, type GivenShop, readShopFile, type ShopFile } from "./shop-file.js";
