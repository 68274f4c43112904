// Sizes in bytes. Source: W3C, WOFF File Format 1.0, sections 3 and 5, and the OpenType table directory (from memory).
const WOFF_HEADER = 44;
const WOFF_ENTRY = 20;
const SFNT_HEADER = 12;
const SFNT_ENTRY = 16;

interface Table {
  readonly tag: number;
  readonly checksum: number;
  readonly packed: Uint8Array;
  readonly length: number;
}

/**
 * A WOFF file as the plain font that is packed in it. Readers of WOFF unpack a table anew for each glyph, which for a
 * font of 57,000 glyphs takes seconds.
 *
 * @param inflate - undoes zlib's packing.
 * @throws RangeError when the file is cut short; whatever `inflate` throws.
 */
export function sfntFromWoff(woff: Uint8Array, inflate: (packed: Uint8Array) => Uint8Array): Uint8Array {
  const from = new DataView(woff.buffer, woff.byteOffset, woff.byteLength);
  const tables = Array.from({ length: from.getUint16(12) }, (_, index): Table => {
    const entry = WOFF_HEADER + index * WOFF_ENTRY;
    const start = from.getUint32(entry + 4);
    return {
      tag: from.getUint32(entry),
      packed: woff.subarray(start, start + from.getUint32(entry + 8)),
      length: from.getUint32(entry + 12),
      checksum: from.getUint32(entry + 16),
    };
  });
  const directory = SFNT_HEADER + tables.length * SFNT_ENTRY;
  const sfnt = new Uint8Array(tables.reduce((sum, { length }) => sum + padded(length), directory));
  const to = new DataView(sfnt.buffer);
  to.setUint32(0, from.getUint32(4));
  to.setUint16(4, tables.length);
  const steps = Math.floor(Math.log2(tables.length));
  to.setUint16(6, SFNT_ENTRY * 2 ** steps);
  to.setUint16(8, steps);
  to.setUint16(10, SFNT_ENTRY * (tables.length - 2 ** steps));
  let at = directory;
  for (const [index, { tag, checksum, packed, length }] of tables.entries()) {
    const entry = SFNT_HEADER + index * SFNT_ENTRY;
    to.setUint32(entry, tag);
    to.setUint32(entry + 4, checksum);
    to.setUint32(entry + 8, at);
    to.setUint32(entry + 12, length);
    // A table that packing would not make smaller is stored as it is.
    sfnt.set(packed.length < length ? inflate(packed) : packed, at);
    at += padded(length);
  }
  return sfnt;
}

const padded = (length: number): number => Math.ceil(length / 4) * 4;
