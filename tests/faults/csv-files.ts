// CSV files of every kind: made by chance in many shapes and encodings, then damaged or not, and imported into any sheet.

import { ENCODINGS, type Encoding, type ReadingChoices } from '../../engine/index.ts';
import { formatTools } from '../../ui/format-tools.ts';
import { type Random, randomFrom, seedOfRun } from '../differential/random.ts';
import { open } from '../formats/small-farm.ts';
import { damagedBytes, HOSTILE_NAMES } from './damage.ts';
import { importFault } from './table-imports.ts';
import { Tally, type Trial } from './trial.ts';

const HEADERS: Readonly<Record<string, readonly string[]>> = {
  farm: ['Season', 'Bed width (in)', 'Bed width (cm)', 'First day', 'Nursery (degF)', 'Nursery'],
  beds: [
    'Bed',
    'bed',
    'Length',
    'Length (ft)',
    'LENGTH (m)',
    'Width (in)',
    'Area (ft2)',
    'Cover',
    'Share planted (%)',
    'Made',
    'Watered',
    'Beside',
    'Remark',
  ],
  sales: ['Bed', 'Income', 'Income (USD)', 'Income ($)', 'Weight (lb)'],
  income: ['Bed', 'Total', 'Hoped for (USD)', 'Share (%)'],
  days: ['Day', 'Rain (in)', 'Rain (mm)', 'date', 'tmin', 'PRCP'],
};
const FIELDS: readonly string[] = [
  '',
  ' ',
  'North 1',
  'north 2',
  'South 9',
  '12',
  '-3',
  '1.5',
  '1,5',
  '1.234',
  '1.234,56',
  '1e308',
  '1e999',
  '50 ft',
  '12 m',
  '85%',
  '85',
  '0.85',
  '2027-04-01',
  '2027-04-02',
  '4/1/2027',
  '1.4.2027',
  '30 Feb',
  'yes',
  'no',
  'TRUE',
  '1',
  'straw',
  'leaves',
  'nothing of the kind',
  '=1+1',
  "'=1+1",
  '@SUM(A1)',
  '+12',
  '-x',
  '"',
  '""',
  'a "b" c',
  'two\nlines',
  'tab\there',
  '£5',
  '$5.00',
  '€ 5',
  'Grün',
  '日本',
  '😀',
  '\u00a0',
  '\u202e',
  '#N/A',
  'x'.repeat(40_000),
];

interface Made {
  readonly sheet: string;
  readonly bytes: Uint8Array;
  readonly reading: ReadingChoices;
}

function quoted(field: string, delimiter: string, random: Random): string {
  const must = [delimiter, '"', '\n', '\r'].some((sign) => field.includes(sign));
  const careless = random.chance(0.02);
  return (must && !careless) || random.chance(0.05) ? `"${field.replaceAll('"', '""')}"` : field;
}

function encoded(text: string, encoding: Encoding, marked: boolean): Uint8Array {
  const whole = marked ? `\uFEFF${text}` : text;
  if (encoding === 'utf-16le') return Buffer.from(whole, 'utf16le');
  if (encoding === 'utf-16be') return Buffer.from(whole, 'utf16le').swap16();
  return Buffer.from(encoding === 'utf-8' ? whole : text, encoding === 'utf-8' ? 'utf8' : 'latin1');
}

function someFile(random: Random): Made {
  const sheet = random.pick(Object.keys(HEADERS));
  const known = HEADERS[sheet] ?? [];
  const odd = (): string => random.pick(random.chance(0.3) ? HOSTILE_NAMES : FIELDS);
  const header = known.filter(() => random.chance(0.6)).map((name) => (random.chance(0.03) ? odd() : name));
  if (random.chance(0.7) && known[0] !== undefined && !header.includes(known[0])) header.unshift(known[0]);
  const delimiter = random.pick([',', ',', ';', '\t']);
  const records = Array.from({ length: random.whole(0, 12) }, () =>
    Array.from({ length: header.length + (random.chance(0.03) ? random.whole(-2, 3) : 0) }, () => random.pick(FIELDS)),
  );
  const end = random.pick(['\n', '\r\n', '\r']);
  const lines = [header, ...records].map((fields) =>
    fields.map((field) => quoted(field, delimiter, random)).join(delimiter),
  );
  const above = random.chance(0.1) ? random.pick([`sep=${delimiter}${end}`, `My farm${end}${end}`]) : '';
  const encoding = random.pick([...ENCODINGS, 'utf-8', 'utf-8'] as const);
  const bytes = encoded(above + lines.join(end) + (random.chance(0.8) ? end : ''), encoding, random.chance(0.5));
  const reading: ReadingChoices = {
    ...(random.chance(0.1) ? { encoding: random.pick(ENCODINGS) } : {}),
    ...(random.chance(0.1) ? { delimiter: random.pick([',', ';', '\t'] as const) } : {}),
  };
  return { sheet, bytes: random.chance(0.3) ? damagedBytes(bytes, random) : bytes, reading };
}

export const csvFiles: Trial = {
  name: 'csv',
  about: 'CSV files imported',
  full: 20_000,
  run: async (count, tell) => {
    const tally = new Tally(tell);
    const seed = seedOfRun();
    for (let i = 0; i < count; i++) {
      const random = randomFrom(seed + i);
      const { sheet, bytes, reading } = someFile(random);
      const choices = {
        goodOnes: random.chance(0.7),
        ...(random.chance(0.3) ? { decimal: random.pick(['point', 'comma'] as const) } : {}),
      };
      await tally.try(`CSV ${seed + i} into ${sheet}`, () =>
        importFault(open(), { sheet, bytes, tools: formatTools, reading, choices }),
      );
    }
    return tally.outcome();
  },
};
