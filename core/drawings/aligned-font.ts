/**
 * A TrueType font with every glyph starting on a multiple of four bytes; everything else as it was.
 *
 * The subsets that pdf-lib embeds store where their glyphs begin as half offsets and lose a bit wherever a
 * glyph has an odd length, as those of Fira Sans have: every glyph after it prints as nothing. In a font
 * aligned like this all lengths are even.
 *
 * @returns the same bytes if the font has no `glyf` table
 * @throws RangeError if the bytes are cut off
 * Source: OpenType specification, tables `head`, `loca`, `glyf` and the font directory.
 */
export function alignGlyphs(font: Uint8Array): Uint8Array {
  const tables = readDirectory(font);
  const glyf = tables.find(({ tag }) => tag === 'glyf');
  const loca = tables.find(({ tag }) => tag === 'loca');
  const head = tables.find(({ tag }) => tag === 'head');
  if (!glyf || !loca || !head) return font;
  const offsets = readOffsets(loca.bytes, view(head.bytes).getInt16(indexToLocFormat) === 1);
  const starts = [0];
  for (let i = 0; i + 1 < offsets.length; i++) {
    starts.push(starts[i]! + alignedLength(offsets[i + 1]! - offsets[i]!));
  }
  const glyphs = new Uint8Array(starts.at(-1)!);
  for (let i = 0; i + 1 < offsets.length; i++) {
    glyphs.set(glyf.bytes.subarray(offsets[i], offsets[i + 1]), starts[i]);
  }
  const longHead = head.bytes.slice();
  view(longHead).setInt16(indexToLocFormat, 1);
  const replaced: Record<string, Uint8Array> = { glyf: glyphs, loca: writeOffsets(starts), head: longHead };
  return writeFont(
    font,
    tables.map(({ tag, bytes }) => ({ tag, bytes: replaced[tag] ?? bytes })),
  );
}

interface Table {
  readonly tag: string;
  readonly bytes: Uint8Array;
}

/** Where `head` says whether `loca` holds whole or half offsets. */
const indexToLocFormat = 50;
const directoryStart = 12;
const directoryEntry = 16;

function readDirectory(font: Uint8Array): Table[] {
  const data = view(font);
  return Array.from({ length: data.getUint16(4) }, (_, i) => {
    const entry = directoryStart + i * directoryEntry;
    const tag = String.fromCharCode(...font.subarray(entry, entry + 4));
    const offset = data.getUint32(entry + 8);
    return { tag, bytes: font.subarray(offset, offset + data.getUint32(entry + 12)) };
  });
}

function readOffsets(loca: Uint8Array, long: boolean): number[] {
  const data = view(loca);
  return Array.from({ length: loca.length / (long ? 4 : 2) }, (_, i) =>
    long ? data.getUint32(i * 4) : data.getUint16(i * 2) * 2,
  );
}

function writeOffsets(starts: readonly number[]): Uint8Array {
  const bytes = new Uint8Array(starts.length * 4);
  const data = view(bytes);
  starts.forEach((start, i) => data.setUint32(i * 4, start));
  return bytes;
}

/** Version, counts and tags stay; checksums are those of the new tables. */
function writeFont(original: Uint8Array, tables: readonly Table[]): Uint8Array {
  const directoryEnd = directoryStart + tables.length * directoryEntry;
  const length = tables.reduce((sum, { bytes }) => sum + alignedLength(bytes.length), directoryEnd);
  const font = new Uint8Array(length);
  font.set(original.subarray(0, directoryEnd));
  const data = view(font);
  let offset = directoryEnd;
  tables.forEach(({ bytes }, i) => {
    const entry = directoryStart + i * directoryEntry;
    font.set(bytes, offset);
    data.setUint32(entry + 4, checksum(font.subarray(offset, offset + alignedLength(bytes.length))));
    data.setUint32(entry + 8, offset);
    data.setUint32(entry + 12, bytes.length);
    offset += alignedLength(bytes.length);
  });
  return font;
}

function checksum(aligned: Uint8Array): number {
  const data = view(aligned);
  let sum = 0;
  for (let i = 0; i < aligned.length; i += 4) sum = (sum + data.getUint32(i)) >>> 0;
  return sum;
}

function alignedLength(length: number): number {
  return Math.ceil(length / 4) * 4;
}

function view(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}
