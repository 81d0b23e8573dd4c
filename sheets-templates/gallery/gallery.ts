// Small sheets that come with Dibble, to be brought into a workbook by whoever wants them: each such as anyone could have made and
// saved as a file. Formulas by ids, so that they hold wherever they are brought in.

import type { ColumnDeclaration, SheetDeclaration, SheetsFile, TypeDeclaration } from '../../engine/index.ts';

const TEXT: TypeDeclaration = { type: 'text' };
const DATE: TypeDeclaration = { type: 'date' };
const PLAIN: TypeDeclaration = { type: 'number', unit: { us: '', si: '' } };
const MASS: TypeDeclaration = { type: 'number', unit: { us: 'lb', si: 'kg' } };
const HEAT: TypeDeclaration = { type: 'temperature' };
const SHARE: TypeDeclaration = { type: 'number', unit: { us: '%', si: '%' } };

function typed(id: string, name: string, type: TypeDeclaration, note = ''): ColumnDeclaration {
  return { id, name, type, group: '', note, role: 'entered', formula: '' };
}

function reckoned(id: string, name: string, type: TypeDeclaration, formula: string): ColumnDeclaration {
  return { id, name, type, group: '', note: '', role: 'computed', formula };
}

function sheet(id: string, name: string, about: string, columns: readonly ColumnDeclaration[]): SheetDeclaration {
  const [key, ...rest] = columns;
  if (key === undefined) throw new Error(`${name} has no columns.`);
  return {
    id,
    name,
    question: 'Own sheets',
    about,
    rows: { from: 'entry' },
    key: key.id,
    columns: [{ ...key, required: true }, ...rest],
    checks: [],
    cautions: [],
  };
}

function file(title: string, about: string, sheets: readonly SheetDeclaration[]): SheetsFile {
  return { format: 'dibble-sheets', version: '1', title, about, sheets };
}

export const GALLERY: readonly SheetsFile[] = [
  file('Strip trials', 'Two treatments side by side in strips, and what one gave over the other.', [
    sheet('own-strip-trials', 'Strip trials', 'A pair of strips a row: what each gave, and the difference.', [
      typed('strips', 'Strips', TEXT),
      typed('bed', 'Bed', { type: 'link', sheet: 'beds' }),
      typed('tried', 'What was tried', TEXT),
      typed('with', 'With it', MASS),
      typed('without', 'Without it', MASS),
      reckoned('gain', 'Gain', MASS, '[#own-strip-trials/with] - [#own-strip-trials/without]'),
      reckoned('gain-share', 'Gain share', SHARE, '[#own-strip-trials/gain] / [#own-strip-trials/without]'),
    ]),
  ]),
  file('Compost', 'Piles with what went in, how hot they were and when they were turned.', [
    sheet('own-compost', 'Compost piles', 'A pile a row.', [
      typed('pile', 'Pile', TEXT),
      typed('begun', 'Begun', DATE),
      typed('filled-with', 'Filled with', TEXT),
    ]),
    {
      ...sheet(
        'own-compost-heat',
        'Compost heat',
        'A reading a row: the heat of a pile on a day, and whether it was turned.',
        [
          typed('reading', 'Reading', TEXT),
          typed('pile', 'Pile', { type: 'link', sheet: 'own-compost' }),
          typed('on', 'On', DATE),
          typed('heat', 'Heat', HEAT, 'In the middle of the pile.'),
          typed('turned', 'Turned', { type: 'yesno' }),
          reckoned(
            'age',
            'Age',
            { type: 'number', unit: { us: 'day', si: 'day' } },
            '[#own-compost-heat/on] - [#own-compost-heat/pile].[#own-compost/begun]',
          ),
        ],
      ),
      checks: [
        {
          id: 'before-it-was-begun',
          name: 'Before it was begun',
          level: 'warning',
          column: 'on',
          says: 'IF([#own-compost-heat/age] < 0 days; "This was read before the pile was begun.")',
        },
      ],
    },
  ]),
  file('Egg count', 'Eggs by day from a small flock, and how many a hen lays.', [
    sheet('own-eggs', 'Egg count', 'A day a row.', [
      typed('day', 'Day', TEXT),
      typed('on', 'On', DATE),
      typed('hens', 'Hens', PLAIN),
      typed('eggs', 'Eggs', PLAIN),
      typed('broken', 'Broken', PLAIN),
      reckoned('whole', 'Whole', PLAIN, '[#own-eggs/eggs] - IF(ISBLANK([#own-eggs/broken]); 0; [#own-eggs/broken])'),
      reckoned('a-hen', 'Eggs a hen', PLAIN, '[#own-eggs/eggs] / [#own-eggs/hens]'),
    ]),
  ]),
  file('Harvest lots', 'What left the field under which lot name, so that a box can be traced to its bed.', [
    sheet('own-harvest-lots', 'Harvest lots', 'A lot a row.', [
      typed('lot', 'Lot name', TEXT),
      typed('planting', 'Planting', { type: 'link', sheet: 'plantings' }),
      typed('picked', 'Picked', DATE),
      typed('weight', 'Weight', MASS),
      typed('went-to', 'Went to', TEXT),
      reckoned('bed', 'Bed', { type: 'link', sheet: 'beds' }, '[#own-harvest-lots/planting].[#plantings/bed]'),
    ]),
  ]),
  file('Seed saving', 'Plants kept for seed: how many, how far from others, what they gave.', [
    sheet('own-seed-saving', 'Seed saving', 'A stand of seed plants a row.', [
      typed('stand', 'Stand', TEXT),
      typed('variety', 'Variety', { type: 'link', sheet: 'varieties' }),
      typed('plants', 'Plants kept', PLAIN),
      typed('apart', 'Distance to the next of its kind', { type: 'number', unit: { us: 'ft', si: 'm' } }),
      typed('seed', 'Clean seed', { type: 'number', unit: { us: 'oz', si: 'g' } }),
      reckoned(
        'a-plant',
        'Seed a plant',
        { type: 'number', unit: { us: 'oz', si: 'g' } },
        '[#own-seed-saving/seed] / [#own-seed-saving/plants]',
      ),
    ]),
  ]),
];
