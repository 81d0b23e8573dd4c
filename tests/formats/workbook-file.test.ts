import { readFileSync } from 'node:fs';
import Ajv2020 from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { demoFarm } from '../../demo/farm.ts';
import {
  type Content,
  civilDayOfIso,
  type DocumentData,
  readWorkbookFile,
  type TemplateShelf,
  workbookFileSchema,
  writeWorkbookFile,
} from '../../engine/index.ts';
import { SEASON, seasonStart } from '../../sheets-templates/season.ts';
import { type Book, type Edit, openedFrom, started, templateOf } from '../book.ts';
import { open, SMALL_FARM } from './small-farm.ts';

const schema: unknown = JSON.parse(
  readFileSync(new URL('../../engine/formats/workbook.schema.json', import.meta.url), 'utf8'),
);
const meets = new Ajv2020({
  allowUnionTypes: true,
  strictTuples: false,
  formats: { date: (day: string) => civilDayOfIso(day) !== undefined },
}).compile(schema as object);

const SMALL = templateOf(SMALL_FARM);
const TEMPLATES: TemplateShelf = {
  today: (name) => [SMALL, SEASON].find((one) => one.name === name),
  earlier: () => undefined,
};

function season(start: Parameters<typeof started>[1]): Book {
  const book = started(SEASON, start);
  if (!book.ok) throw new Error(book.problems.join('\n'));
  return book.workbook;
}

/** The small farm with a change of every kind that a file can hold. */
function changedFarm(): Book {
  const book = open();
  const edits: readonly Edit[] = [
    { edit: 'formula', table: 'Beds', column: 'Edge', formula: '[Length] + [Width]' },
    { edit: 'formula', table: 'Beds', column: 'Area', formula: '[Length] * [Width] / 2' },
    { edit: 'add column', table: 'Sales', column: 'Weighed', type: { type: 'number', unit: { us: 'lb', si: 'kg' } } },
    { edit: 'cell', table: 'Beds', row: 0, column: 'Area', entry: '99' },
    { edit: 'cell', table: 'Days', row: 1, column: 'Rain', entry: '0.4 in' },
    { edit: 'insert row', table: 'Sales', entries: { Bed: 'North 2', Weighed: '3 lb 2 oz' } },
    { edit: 'remove row', table: 'Sales', row: 0 },
  ];
  for (const edit of edits) {
    const done = book.edit([edit]);
    if (done.refused) throw new Error(done.why);
  }
  return book;
}

const WORKBOOKS: readonly (readonly [string, () => Book])[] = [
  ['a small farm', open],
  ['a small farm with changes of every kind', changedFarm],
  ['the empty season', () => season(seasonStart({ season: 2027, today: 20_800 }))],
  ['the demo farm', () => season(demoFarm)],
];

const TEXT = open().file();

function read(text: string): DocumentData {
  const answer = readWorkbookFile(text, TEMPLATES);
  if (!answer.ok) throw new Error(answer.why);
  expect(answer.notes).toEqual([]);
  return answer.data;
}

function why(text: string): string {
  const answer = readWorkbookFile(text, TEMPLATES);
  return answer.ok ? 'it reads' : answer.why;
}

test('the published schema is the one that the reader is made of', () => {
  expect(schema).toEqual(workbookFileSchema());
});

describe('writing and reading', () => {
  test.each(WORKBOOKS)('%s comes back to the same bytes', (_, book) => {
    const text = book().file();
    expect(writeWorkbookFile(read(text))).toBe(text);
  });

  test.each(WORKBOOKS)('%s opened and written again gives the same bytes', (_, book) => {
    const before = book();
    expect(before.reopened().file()).toBe(before.file());
  });

  test.each(WORKBOOKS)('%s meets the published schema', (_, book) => {
    meets(JSON.parse(book().file()));
    expect(meets.errors ?? []).toEqual([]);
  });

  test('the order in which rows’ cells and own changes were given does not matter', () => {
    const data = changedFarm().data();
    const turned: DocumentData = {
      ...data,
      own: backwards(data.own),
      rows: backwards(
        Object.fromEntries(
          Object.entries(data.rows).map(([sheet, rows]) => [
            sheet,
            rows.map((row) => ({ ...row, cells: backwards(row.cells) })),
          ]),
        ),
      ),
    };
    const again = (of: DocumentData): string => openedFrom(of, SMALL).file();
    expect(again(turned)).toBe(again(data));
  });

  test('a byte order mark in front is no fault', () => {
    expect(readWorkbookFile(`\uFEFF${TEXT}`, TEMPLATES).ok).toBe(true);
  });

  test('every cell says its unit itself', () => {
    const contents = (column: string): readonly (Content | undefined)[] =>
      open()
        .data()
        .rows.beds?.map(({ cells }) => cells[column]) ?? [];
    expect(contents('length')).toEqual([
      { number: 50, unit: 'ft', follows: true },
      { number: 12, unit: 'm' },
    ]);
  });
});

test('an own column is still its owner’s when the file is opened again', () => {
  const workbook = open();
  workbook.edit([{ edit: 'formula', table: 'Beds', column: 'Edge', formula: '[Length] + [Width]' }], '');
  const again = workbook.reopened();
  expect(again.cell('Beds', 0, 'Edge').text).toBe('52.5');
  again.edit([{ edit: 'formula', table: 'Beds', column: 'Edge', formula: '[Bed] & "!"' }], '');
  const third = again.reopened();
  expect(third.cell('Beds', 0, 'Edge').text).toBe('North 1!');
  expect(third.edit([{ edit: 'remove column', table: 'Beds', column: 'Edge' }], '').refused).toBe(false);
  expect(third.column('Beds', 'Edge')).toBe(undefined);
});

function backwards<T>(row: Readonly<Record<string, T>>): Readonly<Record<string, T>> {
  return Object.fromEntries(Object.entries(row).reverse());
}

describe('a file that is not as it should be', () => {
  const FARM = changedFarm();
  const CHANGED = FARM.file();
  const EDGE = FARM.column('Beds', 'Edge')?.id;
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
      TEXT.replace('"version": 2', '"version": 3'),
      'It was saved by a newer Dibble (file version 3, and this one reads version 2): update Dibble, then open it.',
    ],
    [
      TEXT.replace('"version": 2', '"version": "2"'),
      'Its “version” should be 2: mend it, or take a whole copy of the file.',
    ],
    [
      TEXT.replace('"name": "test"', '"name": "tset"'),
      "It is made from a template called “tset”, which this Dibble doesn't know: update Dibble, then open it.",
    ],
    [TEXT.replace('  "units": "us",\n', ''), 'Line 1: “units” is missing: add it, or take a whole copy of the file.'],
    [
      TEXT.replace('"units": "us"', '"units": "imperial"'),
      'Line 5: “units”: one of “us”, “si” should stand here, and “imperial” does.',
    ],
    [
      TEXT.replace('"rows": {', '"today": "2027-01-02",\n  "rows": {'),
      'Line 10: “today” stands here a second time, and only one can hold: take one of the two out.',
    ],
    [
      TEXT.replace('"aside": {}', `"aside": ${'{"a":'.repeat(100_000)}1${'}'.repeat(100_000)}`),
      `Line ${TEXT.split('\n').findIndex((line) => line.includes('"aside"')) + 1}: more groups stand inside one another than a workbook has: take a whole copy of the file.`,
    ],
  ])('%#', (text, sentence) => {
    expect(why(text)).toBe(sentence);
  });

  test('an own column that can’t be understood is left out with its line; the rest opens', () => {
    const text = CHANGED.replace('"role": "computed"', '"rule": "computed"');
    const lineOf = (words: string): number => text.split('\n').findIndex((one) => one.includes(words)) + 1;
    const answer = readWorkbookFile(text, TEMPLATES);
    if (!answer.ok) throw new Error(answer.why);
    const place = `Sheet “beds”, column “${EDGE}”, “declaration”`;
    expect(answer.notes).toEqual([
      `Line ${lineOf('"rule"')}: ${place}: “rule” is not a field known here; did you mean “role”? It was left out.`,
      `Line ${lineOf('"declaration"')}: ${place}: “role” is missing: add it, or take a whole copy of the file. It was left out.`,
    ]);
    expect(answer.leftOut).toBe(true);
    const book = openedFrom(answer.data, SMALL);
    expect(book.column('Beds', 'Edge')).toBe(undefined);
    expect(book.rows('Beds').length).toBe(FARM.rows('Beds').length);
  });

  test('cells under a column whose id is damaged are kept aside, and the others are where they were', () => {
    const file = JSON.parse(TEXT) as { rows: { beds: { columns: unknown[] } } };
    const at = file.rows.beds.columns.indexOf('length');
    file.rows.beds.columns[at] = 'len gth';
    const answer = readWorkbookFile(JSON.stringify(file), TEMPLATES);
    if (!answer.ok) throw new Error(answer.why);
    expect(answer.notes).toEqual([
      `Column ${at + 1} of the rows of “beds” has no id that can be used; what stands in it is kept aside.`,
    ]);
    expect(answer.leftOut).toBe(false);
    const book = openedFrom(answer.data, SMALL);
    expect(book.value('Beds', 1, 'Length')).toBe(null);
    const rows = answer.data.rows.beds?.map(({ id }) => book.data().aside.beds?.[id]?.[`unnamed-${at + 1}`]);
    expect(rows).toEqual([
      { number: 50, unit: 'ft', follows: true },
      { number: 12, unit: 'm' },
    ]);
  });

  test('a figure that is said to be shown in a unit of another kind keeps its own', () => {
    const answer = readWorkbookFile(TEXT.replace('[12, "m"]', '[12, "m", "%"]'), TEMPLATES);
    if (!answer.ok) throw new Error(answer.why);
    const book = openedFrom(answer.data, SMALL);
    expect(book.cell('Beds', 1, 'Length').text).toBe('12 m');
    expect(book.file()).toContain('[12, "m"]');
  });

  test('rows of a sheet of one row under another id are kept aside', () => {
    const file = JSON.parse(TEXT) as { rows: { farm: { rows: unknown[][] } } };
    const [only] = file.rows.farm.rows;
    file.rows.farm.rows = [['other', ...(only?.slice(1) ?? [])]];
    const answer = readWorkbookFile(JSON.stringify(file), TEMPLATES);
    if (!answer.ok) throw new Error(answer.why);
    const book = openedFrom(answer.data, SMALL);
    expect(book.value('Farm', 0, 'Season')).toBe(null);
    expect(book.data().aside.farm?.other).toEqual(answer.data.rows.farm?.[0]?.cells);
  });

  test.each(['', '[Figure] > 1'])(
    'a sheet whose rows are made of themselves has none, with the condition “%s” too',
    (where) => {
      const column = {
        id: 'figure',
        name: 'Figure',
        type: { type: 'number', unit: { us: '', si: '' } },
        group: '',
        note: '',
        role: 'computed',
        formula: '1',
      };
      const rows = { from: 'each', sheet: 'mine', as: { id: 'of', name: 'Of' }, where };
      const declaration = {
        id: 'mine',
        name: 'Mine',
        question: '',
        about: '',
        rows,
        columns: [column],
        checks: [],
        cautions: [],
      };
      const file = JSON.parse(TEXT) as { own: object };
      const answer = readWorkbookFile(
        JSON.stringify({ ...file, own: { ...file.own, mine: { declaration } } }),
        TEMPLATES,
      );
      if (!answer.ok) throw new Error(answer.why);
      expect(openedFrom(answer.data, SMALL).rows('Mine').length).toBe(0);
    },
  );

  test('a cell that is no entry is kept aside, and so is what its column can’t hold', () => {
    const answer = readWorkbookFile(TEXT.replace('[12, "m"]', '{ "number": 12 }'), TEMPLATES);
    if (!answer.ok) throw new Error(answer.why);
    expect(answer.notes).toEqual([
      'Row 2 of “beds” holds “{"number":12}” under “length”, which is no entry; it is kept aside.',
    ]);
    const book = openedFrom(answer.data, SMALL);
    expect(book.value('Beds', 1, 'Length')).toBe(null);
    expect(book.data().aside.beds?.[answer.data.rows.beds?.[1]?.id ?? '']).toEqual({ length: '{"number":12}' });
  });

  test('what stands in a row and is kept aside of it too is told: the row’s stays', () => {
    const row = String((JSON.parse(TEXT) as { rows: { beds: { rows: unknown[][] } } }).rows.beds.rows[1]?.[0]);
    const twice = `"aside": { "beds": { "${row}": { "length": "another" } } }`;
    const answer = readWorkbookFile(
      TEXT.replace('"aside": {}', () => twice),
      TEMPLATES,
    );
    if (!answer.ok) throw new Error(answer.why);
    expect(answer.notes).toEqual([
      '“beds” has an entry under “length” twice, in the row and aside: the row’s stays, aside was “"another"”.',
    ]);
    expect(openedFrom(answer.data, SMALL).cell('Beds', 1, 'Length').number).toBeGreaterThan(0);
  });

  test('rows without an id, or with one that stands above, are left out, and each is told', () => {
    const file = JSON.parse(TEXT) as { rows: { beds: { rows: unknown[][] } } };
    const [first, second] = file.rows.beds.rows;
    file.rows.beds.rows = [first ?? [], [first?.[0], '', 1], [7, ''], second ?? []];
    const answer = readWorkbookFile(JSON.stringify(file), TEMPLATES);
    if (!answer.ok) throw new Error(answer.why);
    expect(answer.notes).toEqual([
      `Row 2 of “beds” has the id “${String(first?.[0])}” of a row above it; it was left out.`,
      'Row 3 of “beds” has no id that can be used; it was left out.',
    ]);
    expect(openedFrom(answer.data, SMALL).rows('Beds').length).toBe(2);
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
    lines[5] = '  "today": "2027-01-01";';
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

const ANY_TEMPLATE: TemplateShelf = { today: () => SMALL, earlier: () => undefined };

test('the published schema and the reader agree on every document', () => {
  const document: unknown = JSON.parse(changedFarm().file());
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
  let faulty = 0;
  fc.assert(
    fc.property(fc.constantFrom(...ways), change, (way, one) => {
      const text = JSON.stringify(changed(document, way, one) ?? null);
      const answer = readWorkbookFile(text, ANY_TEMPLATE);
      const whole = answer.ok && answer.notes.length === 0;
      const good = meets(JSON.parse(text));
      if (!whole) faulty++;
      // What meets the schema is read; what is read without a word meets it. Which rows' ids are used twice no schema says.
      expect([text, answer.ok || !good]).toEqual([text, true]);
      expect([text, good || !whole]).toEqual([text, true]);
    }),
    { numRuns: 2000 },
  );
  expect(faulty).toBeGreaterThan(500);
});

test('the demo farm’s file is no larger than 100 kB', () => {
  expect(new TextEncoder().encode(writeWorkbookFile(season(demoFarm).workbook.data())).length).toBeLessThanOrEqual(
    100_000,
  );
});
