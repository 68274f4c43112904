import { readRecordFile } from "../../src/file/index.js";
import { answer } from "./answer.js";
import { DEMO_FILES } from "./demo.js";
import { type FakeIo, fakeIo } from "./fake-io.js";

export const KNIFE = "harvest.knife.yaml";
/** The demo's record in a fake world. */
export const RECORD = "/shop/harvest.record.yaml";

/** The demo's shop, or one with other files. */
export const shopWorld = (files: Readonly<Record<string, string>> = DEMO_FILES): FakeIo => fakeIo({ files });

/** Enters something into the demo's record. */
export const record = (io: FakeIo, ...argv: readonly string[]) => answer(["record", KNIFE, ...argv], io);

/** What the demo's record holds. */
export const entriesIn = (io: FakeIo) => readRecordFile(io.disk.text(RECORD), "").entries;
