// Unpacks an XLSX file, which is a zip of XML parts, within a budget: what a part unpacks to is counted while it is unpacked,
// whatever the file claims, and a file that grows past the budget is refused before it fills the memory. Terminal and page call
// it before any library sees the file.

import { Inflate } from 'fflate';

/** Bytes that all parts wanted may unpack to together. */
export const BUDGET = 50_000_000;
/** A spreadsheet has a part a sheet and a dozen more. */
const MOST_PARTS = 5_000;
/** Cells that a sheet may span: one written far out makes readers fill all that lies between. */
const MOST_CELLS = 20_000_000;
const STEP = 65_536;

/** The parts of a file by their names. */
export type Parts = Readonly<Record<string, Uint8Array>>;

export type Unpacked = { readonly ok: true; readonly parts: Parts } | { readonly ok: false; readonly why: string };

class Refused extends Error {}

const DAMAGED = 'The file is damaged or was cut short: take a whole copy of it.';

/**
 * The XML parts of the file by their names, those alone that are `wanted`; pictures and the like are left out. What isn't wanted
 * is neither unpacked nor counted.
 */
export function unpack(bytes: Uint8Array, wanted: (name: string) => boolean = () => true): Unpacked {
  try {
    const parts: Record<string, Uint8Array> = {};
    let left = BUDGET;
    for (const entry of directory(bytes)) {
      if (!/\.(?:xml|rels)$/i.test(entry.name) || Object.hasOwn(parts, entry.name) || !wanted(entry.name)) continue;
      const part = inflated(bytes, entry, left);
      left -= part.length;
      if (/^xl\/worksheets\/[^/]*\.xml$/i.test(entry.name)) refuseSprawl(part);
      parts[entry.name] = part;
    }
    return { ok: true, parts };
  } catch (thrown) {
    if (thrown instanceof Refused) return { ok: false, why: thrown.message };
    return { ok: false, why: DAMAGED };
  }
}

interface Entry {
  readonly name: string;
  readonly method: number;
  readonly from: number;
  readonly length: number;
}

/** The list at a zip's end (PKWARE APPNOTE 6.3.10, sections 4.3.12 and 4.3.16). */
function directory(bytes: Uint8Array): readonly Entry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let end = bytes.length - 22;
  while (end >= 0 && view.getUint32(end, true) !== 0x06054b50) end -= 1;
  if (end < 0) throw new Refused(DAMAGED);
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  if (count > MOST_PARTS || at === 0xffff_ffff)
    throw new Refused('This is larger than a spreadsheet taken here may be: save the sheet as CSV.');
  const entries: Entry[] = [];
  for (let i = 0; i < count; i++) {
    if (view.getUint32(at, true) !== 0x02014b50) throw new Refused(DAMAGED);
    const flags = view.getUint16(at + 8, true);
    if ((flags & 1) === 1) throw new Refused('The spreadsheet is locked by a password: save it without one.');
    const nameLength = view.getUint16(at + 28, true);
    const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength));
    const local = view.getUint32(at + 42, true);
    if (view.getUint32(local, true) !== 0x04034b50) throw new Refused(DAMAGED);
    const from = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
    entries.push({ name, method: view.getUint16(at + 10, true), from, length: view.getUint32(at + 20, true) });
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return entries;
}

function inflated(bytes: Uint8Array, { method, from, length }: Entry, left: number): Uint8Array {
  if (from + length > bytes.length) throw new Refused(DAMAGED);
  const packed = bytes.subarray(from, from + length);
  if (method === 0) {
    if (packed.length > left) throw tooLarge();
    return packed;
  }
  if (method !== 8) throw new Refused('The spreadsheet is packed in a way that can’t be read: save it again as XLSX.');
  const chunks: Uint8Array[] = [];
  let size = 0;
  const inflate = new Inflate((chunk) => {
    size += chunk.length;
    if (size > left) throw tooLarge();
    chunks.push(chunk);
  });
  for (let at = 0; at < packed.length; at += STEP) {
    inflate.push(packed.subarray(at, at + STEP), at + STEP >= packed.length);
  }
  const whole = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    whole.set(chunk, at);
    at += chunk.length;
  }
  return whole;
}

function tooLarge(): Refused {
  return new Refused(
    `The spreadsheet unpacks to more than ${BUDGET / 1_000_000} MB, which is more than is taken here: save the sheet as CSV.`,
  );
}

/** Refuses a sheet whose cells lie so far apart that what lies between would fill the memory. */
function refuseSprawl(part: Uint8Array): void {
  const text = new TextDecoder().decode(part);
  let [right, down] = [1, 1];
  for (const [, letters = '', digits = ''] of text.matchAll(/\br="([A-Z]{1,4})(\d{1,8})"/g)) {
    let column = 0;
    for (const letter of letters) column = column * 26 + letter.charCodeAt(0) - 64;
    right = Math.max(right, column);
    down = Math.max(down, Number(digits));
  }
  for (const [, digits = ''] of text.matchAll(/<row\b[^>]*\br="(\d{1,10})"/g)) down = Math.max(down, Number(digits));
  if (right * down > MOST_CELLS) {
    throw new Refused(
      `A sheet of the file reaches to column ${right} and row ${down}, far past its rows: take out what stands there, or save it as CSV.`,
    );
  }
}
