// Which letters the bytes of a text file stand for: told by a mark at its start or by the bytes themselves, and changeable by
// the person, since old files don't say. Pure: bytes in, text out.

export const ENCODINGS = ['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'] as const;

export type Encoding = (typeof ENCODINGS)[number];

/** As a person reads them in a list. */
export const ENCODING_NAMES: Readonly<Record<Encoding, string>> = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16',
  'utf-16be': 'UTF-16, big end first',
  'windows-1252': 'Windows-1252 (western Europe, older programs)',
};

export type Decoded =
  | {
      readonly ok: true;
      readonly text: string;
      readonly encoding: Encoding;
      /** The bytes left no doubt: they are marked, or they are good UTF-8. */
      readonly sure: boolean;
    }
  | { readonly ok: false; readonly why: string };

/** So much is looked at to tell UTF-16 without a mark. */
const LOOKED_AT = 4096;

/** The text of a file, without its mark; in the encoding asked for, else in the one that the bytes tell. */
export function decodeText(bytes: Uint8Array, asked?: Encoding): Decoded {
  const marked = markOf(bytes);
  const known = asked ?? marked ?? utf16Of(bytes);
  if (known === undefined && bytes.includes(0))
    return { ok: false, why: 'This isn’t a text file: choose another file.' };
  if (known === undefined || known === 'utf-8') {
    const text = utf8TextOf(bytes);
    if (text !== undefined) return { ok: true, text, encoding: 'utf-8', sure: true };
    if (known === 'utf-8') {
      const line = lineAt(bytes, firstBadUtf8(bytes));
      return { ok: false, why: `Line ${line} isn’t UTF-8: choose the encoding that the file was saved in.` };
    }
  }
  const encoding = known ?? 'windows-1252';
  return { ok: true, text: new TextDecoder(encoding).decode(bytes), encoding, sure: marked === encoding };
}

function markOf(bytes: Uint8Array): Encoding | undefined {
  const [first, second, third] = bytes;
  if (first === 0xef && second === 0xbb && third === 0xbf) return 'utf-8';
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  return first === 0xfe && second === 0xff ? 'utf-16be' : undefined;
}

/** Every other byte of western text in UTF-16 is zero. */
function utf16Of(bytes: Uint8Array): Encoding | undefined {
  const start = bytes.subarray(0, LOOKED_AT);
  let even = 0;
  let odd = 0;
  start.forEach((byte, i) => {
    if (byte !== 0) return;
    if (i % 2 === 0) even += 1;
    else odd += 1;
  });
  const half = start.length / 2;
  if (odd > half * 0.4 && even < half * 0.1) return 'utf-16le';
  return even > half * 0.4 && odd < half * 0.1 ? 'utf-16be' : undefined;
}

/** The text of good UTF-8; undefined where it is none. */
function utf8TextOf(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** The place of the first byte that no UTF-8 text has there (RFC 3629, section 4). */
function firstBadUtf8(bytes: Uint8Array): number {
  for (let at = 0; at < bytes.length; ) {
    const byte = bytes[at] ?? 0;
    const length = byte < 0x80 ? 1 : byte < 0xc2 ? 0 : byte < 0xe0 ? 2 : byte < 0xf0 ? 3 : byte < 0xf5 ? 4 : 0;
    if (length === 0) return at;
    for (let i = 1; i < length; i++) {
      const next = bytes[at + i] ?? 0;
      const least = i > 1 ? 0x80 : byte === 0xe0 ? 0xa0 : byte === 0xf0 ? 0x90 : 0x80;
      const most = i > 1 ? 0xbf : byte === 0xed ? 0x9f : byte === 0xf4 ? 0x8f : 0xbf;
      if (next < least || next > most) return at;
    }
    at += length;
  }
  return bytes.length;
}

function lineAt(bytes: Uint8Array, at: number): number {
  let line = 1;
  for (let i = 0; i < at; i++) if (bytes[i] === 0x0a) line += 1;
  return line;
}

/** UTF-8 read as Windows-1252 and saved again, by the pairs that it turns common letters into; undefined where there are none. */
export function garbledIn(text: string): string | undefined {
  return /Ã[\u0080-\u00bf©¨¶¼¤Ÿ]|â€[™œ“”]|Â[°²½]/.exec(text)?.[0];
}
