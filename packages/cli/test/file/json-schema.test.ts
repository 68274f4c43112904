import { describe, expect, it } from "vitest";
import { knifeJsonSchema, recordJsonSchema, schemaText, shopJsonSchema } from "../../src/file/json-schema.js";
import { groupsOf, keysAt } from "../../src/file/known-keys.js";
import { projectFile } from "./files.js";

describe("the published schemas", () => {
  it.each(["knife", "shop", "record"] as const)(
    "schemas/%s.schema.json is what the declaration gives",
    (kind) => {
      // After a change to the declaration: npm run build, then node scripts/write-schemas.mjs
      expect(projectFile(`schemas/${kind}.schema.json`)).toBe(schemaText(kind));
    },
  );

  it("are draft 7, refuse unknown keys and name what is required", () => {
    expect(knifeJsonSchema()).toMatchObject({
      $schema: "http://json-schema.org/draft-07/schema#",
      type: "object",
      additionalProperties: false,
      required: ["scantling", "units", "steel", "blade", "tang"],
    });
    expect(shopJsonSchema()).not.toHaveProperty("required");
    expect(recordJsonSchema()).toMatchObject({
      additionalProperties: false,
      required: ["scantling", "units", "knife"],
    });
  });

  it("say of every value what it means", () => {
    for (const schema of [knifeJsonSchema(), shopJsonSchema(), recordJsonSchema()]) {
      for (const key of keysAt(schema, [])) {
        const node = JSON.stringify(schema.properties?.[key]);
        expect(node, key).toContain('"description"');
      }
    }
  });
});

describe("the keys that the schema knows", () => {
  const schema = knifeJsonSchema();

  it("are found by path, through lists and alternatives", () => {
    expect(keysAt(schema, ["blade", "bevel", "left"])).toEqual(["form", "height", "crown", "wheelRadius"]);
    expect(keysAt(schema, ["blade", "thickness", 3])).toEqual(["at", "is"]);
    expect(keysAt(schema, ["blade", "outline"])).toContain("runs");
    expect(keysAt(schema, ["blade", "outline"])).toContain("family");
    expect(keysAt(schema, ["nowhere", "at", "all"])).toEqual([]);
  });

  it("are found by name", () => {
    expect(groupsOf(schema, "edgeThickness")).toEqual(["blade.bevel"]);
    expect(groupsOf(schema, "units")).toEqual([""]);
    expect(groupsOf(schema, "nothing")).toEqual([]);
  });
});
