import { z } from "zod";
import { knifeSchema } from "./knife-schema.js";
import { remember } from "./remember.js";
import { shopSchema } from "./shop-schema.js";

/** The parts of a JSON Schema that our declarations give rise to. */
export interface JsonSchema {
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly items?: JsonSchema | readonly JsonSchema[];
  readonly anyOf?: readonly JsonSchema[];
  readonly [keyword: string]: unknown;
}

const schemaOf = remember((kind: "knife" | "shop") =>
  toJsonSchema(kind === "knife" ? knifeSchema("mm") : shopSchema("mm")),
);

/** JSON Schema, draft 7, of what one may write in a knife file. */
export const knifeJsonSchema = (): JsonSchema => schemaOf("knife");

/** JSON Schema, draft 7, of what one may write in a shop file. */
export const shopJsonSchema = (): JsonSchema => schemaOf("shop");

function toJsonSchema(schema: z.ZodType): JsonSchema {
  return z.toJSONSchema(schema, { target: "draft-7", io: "input" }) as JsonSchema;
}

/** The text of `schemas/knife.schema.json` or `schemas/shop.schema.json`. */
export function schemaText(kind: "knife" | "shop"): string {
  return `${JSON.stringify(schemaOf(kind), null, 2)}\n`;
}
