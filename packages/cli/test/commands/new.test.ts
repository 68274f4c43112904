import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { readKnifeFile, readShopFile } from "../../src/file/index.js";
import { answer, flat } from "../support/answer.js";
import { DEMO_KNIFE } from "../support/demo.js";
import { fakeIo } from "../support/fake-io.js";

describe("new without a terminal", () => {
  it("writes a usual knife, says where, and what next", async () => {
    const { code, out, err, io } = await answer(["new"], { stdin: "" });
    expect(code).toBe(EXIT.done);
    expect(out).toBe("drop-point.knife.yaml\n");
    expect(err).toContain("scantling check drop-point.knife.yaml");
    expect(flat(err)).toContain("No shop file is near yet: scantling new shop.yaml begins one.");
    const beside = await answer(["new", "b"], { files: { "shop.yaml": "units: mm\n" } });
    expect(beside.err).not.toContain("No shop file");
    const { order, units, spec } = readKnifeFile(io.disk.text("/shop/drop-point.knife.yaml"), "a");
    expect([order.code, order.title, units]).toEqual(["DROP-POINT", "Drop-point hunter", "mm"]);
    expect(spec.blade.outline).toMatchObject({ family: "drop-point", edgeLength: 100 });
  });

  it("takes a family, units, a tang, and code and title from the file's name", async () => {
    const words = ["new", "river-hunter", "--family", "Clip-Point", "--units", "in", "--tang", "hidden"];
    const { code, io } = await answer(words);
    expect(code).toBe(EXIT.done);
    const { order, units, spec } = readKnifeFile(io.disk.text("/shop/river-hunter.knife.yaml"), "a");
    expect([order.code, order.title, units]).toEqual(["RIVER-HUNTER", "River hunter", "in"]);
    // 9 in, within the usual 180 to 280 mm of a bowie.
    expect(spec.blade.outline).toMatchObject({ family: "clip-point", edgeLength: 228.6 });
    expect(spec.tang.form).toBe("hidden");
    expect(spec.handle?.block?.section).toBe("oval");
  });

  it("writes where a path from the root says, whatever the current folder is", async () => {
    const { code, out, io } = await answer(["new", "/shop/a/k.knife.yaml", "--family", "petty"]);
    expect([code, out]).toEqual([EXIT.done, "a/k.knife.yaml\n"]);
    expect(io.disk.text("/shop/a/k.knife.yaml")).toContain("petty");
    expect([...io.disk.files.keys()]).not.toContain("/shop/shop/a/k.knife.yaml");
    const elsewhere = await answer(["new", "/home/k.knife.yaml", "--family", "petty"]);
    expect(elsewhere.io.disk.text("/home/k.knife.yaml")).toContain("petty");
    const twice = await answer(["new", "/home/k.knife.yaml", "--out", "b"]);
    expect([twice.code, twice.written]).toEqual([EXIT.usage, []]);
    expect(flat(twice.err)).toContain("--out changes nothing: /home/k.knife.yaml says where the file goes");
  });

  it("finds the shop that the new file will find: beside it or above it", async () => {
    const files = { "mk/shop.yaml": "units: in\n" };
    const beside = await answer(["new", "mk/x.knife.yaml"], { files });
    expect(beside.err).not.toContain("No shop file");
    expect(readKnifeFile(beside.io.disk.text("/shop/mk/x.knife.yaml"), "a").units).toBe("in");
    const under = await answer(["new", "x.knife.yaml", "--out", "mk/orders"], { files });
    expect(under.err).not.toContain("No shop file");
    // That of a folder beside it is not the knife's.
    const other = await answer(["new", "x.knife.yaml"], { files });
    expect(other.err).toContain("No shop file");
  });

  it("has code and title as they are given, whatever they hold", async () => {
    const odd = "No. 7: \"O'Hara's\" # 1";
    const { io } = await answer(["new", "a", "--code", "yes", "--title", odd]);
    const { order } = readKnifeFile(io.disk.text("/shop/a.knife.yaml"), "a");
    expect([order.code, order.title]).toEqual(["yes", odd]);
  });

  it("prints the file for -, and one document with --json", async () => {
    const printed = await answer(["new", "-", "--family", "petty"]);
    expect(printed.written).toEqual([]);
    expect(readKnifeFile(printed.out, "a").order.title).toBe("Petty");
    const { out, written } = await answer(["new", "p", "--family", "petty", "--json"]);
    expect(written).toEqual(["/shop/p.knife.yaml"]);
    expect(JSON.parse(out)).toMatchObject({
      schema: "scantling/new/1",
      kind: "knife",
      file: "p.knife.yaml",
      family: "petty",
    });
    const nowhere = await answer(["new", "-", "--family", "petty", "--json"]);
    expect(JSON.parse(nowhere.out)).toMatchObject({ file: null, content: printed.out });
  });

  it("takes units and steel from the shop, the first steel that a density is known of", async () => {
    const shop =
      "units: in\nrack:\n  - { size: 1/4 x 1, steel: Q-17 }\n  - { size: 1/4 x 2, steel: 80CrV2 }\n";
    const { io } = await answer(["new", "a"], { files: { "shop.yaml": shop } });
    const { units, spec } = readKnifeFile(io.disk.text("/shop/a.knife.yaml"), "a");
    expect([units, spec.steel.name]).toEqual(["in", "80CrV2"]);
  });

  it("does without a shop file that is broken, and says so; one that is named has to be sound", async () => {
    const files = { "shop.yaml": "unitz: mm\n" };
    const found = await answer(["new", "a"], { files });
    expect(found.code).toBe(EXIT.done);
    expect(found.err).toContain("shop.yaml has errors and is not used here");
    const named = await answer(["new", "a", "--shop", "shop.yaml"], { files });
    expect(named.code).toBe(EXIT.file);
    expect(named.written).toEqual([]);
  });
});

describe("a shop file", () => {
  it.each([["shop.yaml"], ["--shop-file"]])("new %s", async (word) => {
    const { code, out, err, io } = await answer(["new", word, "--units", "in"]);
    expect(code).toBe(EXIT.done);
    expect(out).toBe("shop.yaml\n");
    expect(err).toContain("bars as examples");
    expect(readShopFile(io.disk.text("/shop/shop.yaml"), "a").units).toBe("in");
  });

  it("may have another name, which --shop then takes", async () => {
    const { out } = await answer(["new", "cold-shop", "--shop-file"]);
    expect(out).toBe("cold-shop.yaml\n");
  });
});

describe("what cannot be, with what to do", () => {
  const files = { "a.knife.yaml": "taken", "orders/b.knife.yaml": DEMO_KNIFE };
  it.each<[string, string[], number, RegExp[]]>([
    [
      "a name that would not be found",
      ["a.yaml"],
      EXIT.usage,
      [/ends in \.knife\.yaml/, /Name it a\.knife\.yaml/],
    ],
    ["JSON", ["a.knife.json"], EXIT.usage, [/JSON has no comments/, /Name it a\.knife\.yaml/]],
    ["a folder with a slash", ["orders/"], EXIT.usage, [/"orders\/" is no file name/, /hunter\.knife\.yaml/]],
    [
      "a name that is taken",
      ["a"],
      EXIT.write,
      [/a\.knife\.yaml exists; nothing was written/, /another name, or add --force/],
    ],
    [
      "a family that is none",
      ["b", "--family", "drop-pont"],
      EXIT.usage,
      [/Did you mean drop-point\?/, /tanto, seax/],
    ],
    ["a tang that is none", ["b", "--tang", "ful"], EXIT.usage, [/The tangs are: full, hidden, through/]],
    [
      "two beginnings",
      ["b", "--from", "a.knife.yaml", "--family", "seax"],
      EXIT.usage,
      [/--from and --family do not go together/, /Leave one of them out/],
    ],
    [
      "a family of a shop",
      ["--shop-file", "--family", "seax"],
      EXIT.usage,
      [/--family is for knife files, and this is a shop file/, /Leave it out/],
    ],
    [
      "a title of a shop by its name",
      ["shop.yaml", "--title", "Mine"],
      EXIT.usage,
      [/--title is for knife files/],
    ],
    [
      "other units of a copy",
      ["b", "--from", "orders/b.knife.yaml", "--units", "in"],
      EXIT.usage,
      [/--from and --units do not go together/],
    ],
    [
      "a copy without a name",
      ["--from", "orders/b.knife.yaml"],
      EXIT.usage,
      [/needs the name/, /scantling new NAME\.knife\.yaml --from orders\/b\.knife\.yaml/],
    ],
    [
      "a copy of nothing",
      ["b", "--from", "orders/c.knife.yaml"],
      EXIT.file,
      [/no such file/, /orders\/b\.knife\.yaml/],
    ],
    [
      "a copy of a broken file",
      ["b", "--from", "a.knife.yaml"],
      EXIT.file,
      [/a\.knife\.yaml has an error/, /Mend it/],
    ],
  ])("%s", async (_, words, exit, says) => {
    const { code, out, err, written } = await answer(["new", ...words], { files });
    expect(code).toBe(exit);
    expect(out).toBe("");
    expect(written).toEqual([]);
    for (const pattern of says) expect(flat(err)).toMatch(pattern);
  });

  it("a folder of that name", async () => {
    const { code, err } = await answer(["new", "orders.knife.yaml"], {
      files: { "orders.knife.yaml/x": "" },
    });
    expect(code).toBe(EXIT.write);
    expect(flat(err)).toContain("is a folder Give a file name, such as orders.knife.yaml/hunter.knife.yaml.");
  });

  it.each<[string, string, string]>([
    ["--code", "", "--code needs a name"],
    ["--title", "", "--title needs a name"],
    ["--title", "x".repeat(400), "--title is too long; 200 characters are the most"],
    ["--title", "two\nlines", "--title has a character in it that cannot be printed"],
  ])("what the file could not be read with: %s", async (option, value, says) => {
    for (const more of [[], ["--from", "a.knife.yaml"]]) {
      const { code, err, written } = await answer(["new", "b", option, value, ...more], {
        files: { "a.knife.yaml": DEMO_KNIFE },
      });
      expect([code, written]).toEqual([EXIT.usage, []]);
      expect(flat(err)).toContain(says);
      expect(err).not.toContain("Written");
    }
  });

  it("a name that is too long is told so, not that the folder could not be written to", async () => {
    const io = fakeIo({});
    io.disk.faults.push({ step: "createFile", code: "ENAMETOOLONG" });
    const { code, err } = await answer(["new", "a"], io);
    expect(code).toBe(EXIT.write);
    expect(flat(err)).toContain("the name is too long (ENAMETOOLONG) Give it a shorter name.");
  });

  it("writes over a file with --force only", async () => {
    const { code, io } = await answer(["new", "a", "--force"], { files });
    expect(code).toBe(EXIT.done);
    expect(io.disk.text("/shop/a.knife.yaml")).toContain("scantling: 1");
  });
});
