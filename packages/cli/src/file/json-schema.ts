import { z } from "zod";
import { knifeSchema } from "./knife-schema.js";
import { recordSchema } from "./record-schema.js";
import { remember } from "./remember.js";
import { shopSchema } from "./shop-schema.js";

/** The parts of a JSON Schema that our declarations give rise to. */
export interface JsonSchema {
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly items?: JsonSchema | readonly JsonSchema[];
  readonly anyOf?: readonly JsonSchema[];
  readonly [keyword: string]: unknown;
}

/** Kinds of file, each with the declaration that its schema comes from. */
const DECLARED = { knife: knifeSchema, shop: shopSchema, record: recordSchema } as const;

/** Names of the published schemas. */
export type SchemaKind = keyof typeof DECLARED;

const schemaOf = remember((kind: SchemaKind) => toJsonSchema(DECLARED[kind]("mm")));

/** JSON Schema, draft 7, of what one may write in a knife file. */
export const knifeJsonSchema = (): JsonSchema => schemaOf("knife");

/** JSON Schema, draft 7, of what one may write in a shop file. */
export const shopJsonSchema = (): JsonSchema => schemaOf("shop");

/** JSON Schema, draft 7, of what one may write in a record file. */
export const recordJsonSchema = (): JsonSchema => schemaOf("record");

function toJsonSchema(schema: z.ZodType): JsonSchema {
  return z.toJSONSchema(schema, { target: "draft-7", io: "input" }) as JsonSchema;
}

/** The text of `schemas/knife.schema.json`, `schemas/shop.schema.json` or `schemas/record.schema.json`. */
export function schemaText(kind: SchemaKind): string {
  return `${JSON.stringify(schemaOf(kind), null, 2)}\n`;
}
