import { readFileSync } from 'node:fs';
import Ajv2020 from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demoFarm } from '../../demo/farm.ts';
import { readWorkbookFile, writeWorkbookFile } from '../../engine/index.ts';
import { seasonTemplate } from '../../sheets-templates/index.ts';
import type { WorkbookDeclaration } from '../book.ts';
import { open, SMALL_FARM } from './small-farm.ts';

const schema: unknown = JSON.parse(
  readFileSync(new URL('../../engine/formats/workbook.schema.json', import.meta.url), 'utf8'),
);
const meets = new Ajv2020({ allowUnionTypes: true }).compile(schema as object);

const WORKBOOKS: readonly (readonly [string, WorkbookDeclaration])[] = [
  ['a small farm', SMALL_FARM],
  ['the season template', seasonTemplate({ season: 2027, today: 20_800 })],
  ['the demo farm', demoFarm],
];

const TEXT = writeWorkbookFile(SMALL_FARM);

function why(text: string): string {
  const read = readWorkbookFile(text);
  return read.ok ? 'it reads' : read.why;
}

describe('writing and reading', () => {
  test.each(WORKBOOKS)('%s comes back to the same bytes', (_, declaration) => {
    const text = writeWorkbookFile(declaration);
    const read = readWorkbookFile(text);
    if (!read.ok) throw new Error(read.why);
    expect(writeWorkbookFile(read.declaration)).toBe(text);
  });

  test.each(WORKBOOKS)('%s opened and declared again gives the same bytes', (_, declaration) => {
    const text = writeWorkbookFile(open(declaration).declaration());
    const read = readWorkbookFile(text);
    if (!read.ok) throw new Error(read.why);
    expect(writeWorkbookFile(open(read.declaration).declaration())).toBe(text);
  });

  test.each(WORKBOOKS)('%s meets the published schema', (_, declaration) => {
    meets(JSON.parse(writeWorkbookFile(open(declaration).declaration())));
    expect(meets.errors ?? []).toEqual([]);
  });

  test('the order in which fields and cells were given does not matter', () => {
    const { rows, sheets, ...rest } = SMALL_FARM;
    const turned = Object.fromEntries(
      Object.entries(rows)
        .reverse()
        .map(([name, list]) => [name, list.map(backwards)]),
    );
    expect(writeWorkbookFile({ rows: turned, sheets, ...rest })).toBe(TEXT);
  });

  test('a byte order mark in front is no fault', () => {
    expect(readWorkbookFile(`\uFEFF${TEXT}`).ok).toBe(true);
  });

  test('a cell typed in another unit keeps it, one in its own is a number', () => {
    const saved = open()
      .declaration()
      .rows.Beds?.map((row) => row.Length);
    expect(saved).toEqual([50, '12 m']);
  });
});

test('an own column is still its owner’s when the file is opened again', () => {
  const workbook = open();
  workbook.edit([{ edit: 'formula', table: 'Beds', column: 'Edge', formula: '[Length] + [Width]' }], '');
  const again = open(workbook.declaration());
  expect(again.cell('Beds', 0, 'Edge').text).toBe('52.5');
  again.edit([{ edit: 'formula', table: 'Beds', column: 'Edge', formula: '[Bed] & "!"' }], '');
  const third = open(again.declaration());
  expect(third.cell('Beds', 0, 'Edge').text).toBe('North 1!');
  expect(third.edit([{ edit: 'remove column', table: 'Beds', column: 'Edge' }], '').refused).toBe(false);
  expect(third.file()).toBe(writeWorkbookFile(open().declaration()));
});

function backwards<T>(row: Readonly<Record<string, T>>): Readonly<Record<string, T>> {
  return Object.fromEntries(Object.entries(row).reverse());
}

describe('a file that is not as it should be', () => {
  test.each([
    ['', 'The file is empty: take another copy of it.'],
    ['Bed,Length\n', 'This is not a Dibble workbook: a workbook file begins with {. Choose another file.'],
    [
      '[1, 2]',
      'This is not a Dibble workbook: a workbook file says "format": "dibble-workbook" at its start. Choose another file.',
    ],
    [
      '{"format": "other"}',
      'This is not a Dibble workbook: a workbook file says "format": "dibble-workbook" at its start. Choose another file.',
    ],
    [
      TEXT.replace('"version": 1', '"version": 2'),
      'It was saved by a newer Dibble (file version 2, and this one reads version 1): update Dibble, then open it.',
    ],
    [
      TEXT.replace('"version": 1', '"version": "1"'),
      'Its “version” should be 1: mend it, or take a whole copy of the file.',
    ],
    [TEXT.replace('  "units": "us",\n', ''), '“units” is missing: add it, or take a whole copy of the file.'],
    [
      TEXT.replace('"units": "us"', '"units": "imperial"'),
      '“units”: one of “us”, “si” should stand here, and “imperial” does.',
    ],
    [
      TEXT.replace('"role": "computed"', '"rule": "computed"'),
      'Sheet “Beds”, column “Area”: “rule” is not a field known here; did you mean “role”?',
    ],
    [
      TEXT.replace('"us": "ft", "si": "m"', '"us": "ft"'),
      'Sheet “Beds”, column “Length”, “type”, “unit”: “si” is missing: add it, or take a whole copy of the file.',
    ],
    [
      TEXT.replace('"Length": "12 m"', '"Length": null'),
      'Rows of sheet “Beds”, row 2, “Length”: a text, a number, or true or false should stand here, and nothing does.',
    ],
    [
      TEXT.replace('{ "from": "single" }', '{ "from": "nowhere" }'),
      'Sheet “Farm”, “rows”, “from”: one of “entry”, “single”, “each”, “span”, “pairs”, “events” should stand here, and “nowhere” does.',
    ],
  ])('%#', (text, sentence) => {
    expect(why(text)).toBe(sentence);
  });

  test('cut short anywhere, it says so and at which line', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: TEXT.trimEnd().length - 1 }), (length) => {
        const cut = TEXT.slice(0, length);
        const line = cut.trimEnd().split('\n').length;
        expect(why(cut)).toMatch(
          /^The file ends in the middle, at line \d+: it was cut short\. Take a whole copy of it\.$/,
        );
        const named = Number(/line (\d+)/.exec(why(cut))?.[1]);
        expect(Math.abs(named - line)).toBeLessThanOrEqual(1);
      }),
    );
  });

  test('damaged in the middle, the line is named', () => {
    const lines = TEXT.split('\n');
    lines[5] = '  "today": 20834;';
    expect(why(lines.join('\n'))).toBe(
      'The file is damaged at line 6, where “;” stands: mend that line, or take a whole copy of the file.',
    );
  });
});

/** Every place in a document, as the way to it. */
function waysIn(value: unknown, way: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== 'object' || value === null) return [way];
  return [
    way,
    ...Object.entries(value).flatMap(([key, one]) => waysIn(one, [...way, Array.isArray(value) ? Number(key) : key])),
  ];
}

type Change =
  | { readonly what: 'replace'; readonly by: unknown }
  | { readonly what: 'remove' }
  | { readonly what: 'add' };

function changed(value: unknown, way: readonly (string | number)[], change: Change): unknown {
  const [step, ...rest] = way;
  if (step === undefined) {
    if (change.what === 'replace') return change.by;
    if (change.what === 'add' && typeof value === 'object' && value !== null && !Array.isArray(value))
      return { ...value, extra: { deep: 1 } };
    return undefined;
  }
  if (Array.isArray(value)) {
    return value.flatMap((one: unknown, at) => {
      if (at !== step) return [one];
      const next = changed(one, rest, change);
      return next === undefined ? [] : [next];
    });
  }
  return Object.fromEntries(
    Object.entries(Object(value)).flatMap(([key, one]) => {
      const next = key === step ? changed(one, rest, change) : one;
      return next === undefined ? [] : [[key, next]];
    }),
  );
}

test('the published schema and the reader agree on every document', () => {
  const document: unknown = JSON.parse(TEXT);
  const ways = waysIn(document);
  const change: fc.Arbitrary<Change> = fc.oneof(
    fc.record({
      what: fc.constant('replace' as const),
      by: fc.constantFrom<unknown>(
        null,
        '',
        'x',
        0,
        1.5,
        -3,
        true,
        [],
        {},
        ['a', 'b'],
        { us: 'ft', si: 'm' },
        1e9,
        'entry',
        { type: 'date' },
      ),
    }),
    fc.constant({ what: 'remove' as const }),
    fc.constant({ what: 'add' as const }),
  );
  let refused = 0;
  fc.assert(
    fc.property(fc.constantFrom(...ways), change, (way, one) => {
      const text = JSON.stringify(changed(document, way, one) ?? null);
      const reads = readWorkbookFile(text).ok;
      if (!reads) refused++;
      expect([text, reads]).toEqual([text, meets(JSON.parse(text))]);
    }),
    { numRuns: 2000 },
  );
  expect(refused).toBeGreaterThan(500);
});
