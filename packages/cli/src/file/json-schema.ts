import { z } from "zod";
import { knifeSchema } from "./knife-schema.js";
import { shopSchema } from "./shop-schema.js";

/** The parts of a JSON Schema that our declarations give rise to. */
export interface JsonSchema {
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly items?: JsonSchema | readonly JsonSchema[];
  readonly anyOf?: readonly JsonSchema[];
  readonly [keyword: string]: unknown;
}

/** JSON Schema, draft 7, of what one may write in a knife file. */
export function knifeJsonSchema(): JsonSchema {
  return toJsonSchema(knifeSchema("mm"));
}

/** JSON Schema, draft 7, of what one may write in a shop file. */
export function shopJsonSchema(): JsonSchema {
  return toJsonSchema(shopSchema("mm"));
}

function toJsonSchema(schema: z.ZodType): JsonSchema {
  return z.toJSONSchema(schema, { target: "draft-7", io: "input" }) as JsonSchema;
}

/** The text of `schemas/knife.schema.json` or `schemas/shop.schema.json`. */
export function schemaText(kind: "knife" | "shop"): string {
  return `${JSON.stringify(kind === "knife" ? knifeJsonSchema() : shopJsonSchema(), null, 2)}\n`;
}
