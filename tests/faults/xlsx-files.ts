// XLSX files: those that Dibble writes, damaged in their bytes, in their parts and in their list of parts; bombs that unpack to
// gigabytes, sheets that claim cells far out, parts that lie about their size. Imported into the sheet that they came from.

import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate';
import { FORMATS, type Format, sheetViews } from '../../engine/index.ts';
import { formatTools } from '../../ui/format-tools.ts';
import type { Book } from '../book.ts';
import { type Random, randomFrom, seedOfRun } from '../differential/random.ts';
import { open } from '../formats/small-farm.ts';
import { damagedBytes, HOSTILE_NAMES, HOSTILE_NUMBERS } from './damage.ts';
import { importFault } from './table-imports.ts';
import { Tally, type Trial } from './trial.ts';

type Damage = (file: Uint8Array, random: Random) => readonly [how: string, bytes: Uint8Array];

const SHEET = /^xl\/worksheets\/.*\.xml$/;

function withParts(file: Uint8Array, change: (name: string, text: string) => string): Zippable {
  const parts = Object.entries(unzipSync(file));
  return Object.fromEntries(parts.map(([name, part]) => [name, strToU8(change(name, strFromU8(part)))]));
}

const asItIs: Damage = (file) => ['as it is', file];

const bytes: Damage = (file, random) => ['bytes', damagedBytes(file, random)];

const cutShort: Damage = (file, random) => ['cut short', file.subarray(0, random.whole(0, file.length - 1))];

/** Bytes of one part changed within a zip that is whole. */
const onePart: Damage = (file, random) => {
  const parts = unzipSync(file);
  const name = random.pick(Object.keys(parts));
  const damaged = damagedBytes(parts[name] ?? new Uint8Array(), random);
  return [`bytes of ${name}`, zipSync({ ...parts, [name]: damaged })];
};

const partGone: Damage = (file, random) => {
  const parts = unzipSync(file);
  const name = random.pick(Object.keys(parts));
  return [`without ${name}`, zipSync(Object.fromEntries(Object.entries(parts).filter(([one]) => one !== name)))];
};

/** Figures and texts of cells replaced by odd ones. */
const cells: Damage = (file, random) => {
  const escaped = (text: string): string => text.replace(/[<&]/g, ' ');
  const parts = withParts(file, (name, text) => {
    if (!SHEET.test(name) && !name.endsWith('sharedStrings.xml')) return text;
    return text
      .replace(/<v>[^<]*<\/v>/g, (old) =>
        random.chance(0.2) ? `<v>${random.pick([...HOSTILE_NUMBERS, 'x', '', '1e999'])}</v>` : old,
      )
      .replace(/<t(?: [^>]*)?>[^<]*<\/t>/g, (old) =>
        random.chance(0.1) ? `<t>${escaped(random.pick(HOSTILE_NAMES))}</t>` : old,
      )
      .replace(/ t="\w+"/g, (old) =>
        random.chance(0.05) ? ` t="${random.pick(['s', 'n', 'b', 'e', 'str', 'd', 'q'])}"` : old,
      )
      .replace(/ s="\d+"/g, (old) => (random.chance(0.05) ? ` s="${random.pick([0, 1, 2, 99, -1])}"` : old));
  });
  return ['cells', zipSync(parts)];
};

/** A cell or a row said to stand far out. */
const sprawl: Damage = (file, random) => {
  const far = random.pick(['XFD1048576', 'A1048576', 'XFD1', 'ZZZZ99999999', 'A0', 'A-1', '1A', 'a1']);
  const parts = withParts(file, (name, text) => {
    if (!SHEET.test(name)) return text;
    return random.chance(0.5)
      ? text.replace(/ r="[A-Z]+\d+"/, ` r="${far}"`)
      : text.replace(/<dimension [^>]*>/, '').replace('<sheetData', `<dimension ref="A1:${far}"/><sheetData`);
  });
  return [`a cell at ${far}`, zipSync(parts)];
};

/** A part that unpacks to hundreds of megabytes. */
const bomb: Damage = (file, random) => {
  const parts = unzipSync(file);
  const name = random.pick(['xl/worksheets/sheet1.xml', 'xl/sharedStrings.xml', 'xl/styles.xml', 'xl/extra.xml']);
  const size = random.pick([60_000_000, 200_000_000]);
  return [`${name} of ${size} bytes`, zipSync({ ...parts, [name]: new Uint8Array(size) }, { level: 1 })];
};

/** Entities that grow, and those that ask for a file. */
const entities: Damage = (file) => {
  const grown = Array.from({ length: 12 }, (_, i) => `<!ENTITY e${i + 1} "${`&e${i};`.repeat(10)}">`).join('');
  const head = `<!DOCTYPE x [<!ENTITY e0 "boom"><!ENTITY f SYSTEM "file:///etc/passwd">${grown}]>`;
  const parts = withParts(file, (name, text) =>
    SHEET.test(name) || name.endsWith('sharedStrings.xml')
      ? text.replace(/\?>/, `?>${head}`).replace(/<t(?: [^>]*)?>[^<]*<\/t>/, '<t>&e12;&f;</t>')
      : text,
  );
  return ['entities', zipSync(parts)];
};

/** The zip's own list changed: names, sizes, offsets, counts. */
const listOfParts: Damage = (file, random) => {
  const damaged = file.slice();
  const from = damaged.findLastIndex((byte, i) => byte === 0x50 && damaged[i + 1] === 0x4b && damaged[i + 2] === 0x05);
  const start = new DataView(damaged.buffer, damaged.byteOffset).getUint32(from + 16, true);
  for (let turn = random.whole(1, 6); turn > 0; turn--) {
    damaged[random.whole(start, damaged.length - 1)] = random.pick([0, 1, 0xff, 0x7f, random.whole(0, 255)]);
  }
  return ['its list of parts', damaged];
};

const DAMAGES: readonly Damage[] = [
  asItIs,
  bytes,
  bytes,
  cutShort,
  onePart,
  onePart,
  partGone,
  cells,
  cells,
  cells,
  sprawl,
  entities,
  listOfParts,
  listOfParts,
];

/** Reading bombs inflates up to the budget of 50 MB before it stops. */
const LONGEST = 3000;

function xlsx(): Format {
  const format = FORMATS.find(({ id }) => id === 'xlsx');
  if (format === undefined) throw new Error('There is no XLSX.');
  return format;
}

async function fileOf(book: Book, sheets: readonly string[]): Promise<Uint8Array> {
  const { content } = await xlsx().write(book.workbook, sheets, formatTools);
  if (typeof content === 'string') throw new Error('XLSX is bytes.');
  return content;
}

export const xlsxFiles: Trial = {
  name: 'xlsx',
  about: 'XLSX files imported',
  full: 500,
  run: async (count, tell) => {
    const tally = new Tally(tell);
    const seed = seedOfRun();
    const sheets = sheetViews(open().workbook).map(({ id }) => id);
    for (let i = 0; i < count; i++) {
      const random = randomFrom(seed + i);
      const book = open();
      const sheet = random.pick(sheets);
      const file = await fileOf(book, random.chance(0.5) ? sheets : [sheet]);
      const damage = i % 50 === 25 ? bomb : random.pick(DAMAGES);
      const [how, damaged] = damage(file, random);
      const choices = { goodOnes: random.chance(0.7) };
      await tally.try(
        `XLSX ${seed + i} into ${sheet}, ${how}`,
        () => importFault(book, { sheet, bytes: damaged, tools: formatTools, reading: {}, choices }),
        LONGEST,
      );
    }
    return tally.outcome();
  },
};
