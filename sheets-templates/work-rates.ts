// The Work rates sheet: how much one person does in an hour, a row a task, low, likely and high. Crops links to the rows a
// crop is picked, packed, weeded and staked by; a grower writes own times over them. Filled from library/work-rates.ts.

import type { SheetDeclaration } from '../engine/index.ts';
import { choice, entered, group, quantity, TEXT } from './authoring.ts';
import { WORK_RATES, WORK_TASKS, type WorkRate } from './library/work-rates.ts';

/** Harvests picked, washed, cleaned. */
export const MASS_AN_HOUR = quantity('lb/h', 'kg/h');
/** Work by the area of bed, paths left out. */
export const TIME_BY_AREA = quantity('min/ft2', 'min/m2');
const PIECES_AN_HOUR = quantity('1/h');
const ROW_AN_HOUR = quantity('ft/h', 'm/h');

const BED_FEET = 100;
const BED_INCHES = 30;
const FOOT = 0.3048;
const INCH = 0.0254;
const MINUTES = 60;
/** A bed 30 in by 100 ft, the one that rates by the bed are told for, m2. */
const RATED_BED = BED_FEET * FOOT * BED_INCHES * INCH;

function triple(id: string, name: string, type: ReturnType<typeof quantity>, note: string) {
  return [
    entered(`${id}-low`, `${name} low`, type, { decimals: 1, least: 0 }),
    entered(id, name, type, { note, decimals: 1, least: 0 }),
    entered(`${id}-high`, `${name} high`, type, { decimals: 1, least: 0 }),
  ];
}

export const workRatesSheet: SheetDeclaration = {
  id: 'work-rates',
  name: 'Work rates',
  question: 'What',
  about:
    'How much one person does in an hour, by task. Nearly every figure is recalled: time your own work and write it over them.',
  rows: { from: 'entry' },
  key: 'work',
  columns: [
    ...group('Work', entered('work', 'Work', TEXT, { required: true }), entered('task', 'Task', choice(...WORK_TASKS))),
    ...group(
      'Rate',
      ...triple('time-by-area', 'Time by area', TIME_BY_AREA, 'Of bed, paths left out.'),
      ...triple('pieces-an-hour', 'Pieces an hour', PIECES_AN_HOUR, 'Bunches, heads, plants, blocks.'),
      ...triple('weight-an-hour', 'Weight an hour', MASS_AN_HOUR, ''),
      ...triple('row-an-hour', 'Row an hour', ROW_AN_HOUR, 'Length of row.'),
    ),
    ...group(
      'Source',
      entered('basis', 'Basis', TEXT, { note: 'What the source says, where it says only part.' }),
      entered('source', 'Source', TEXT, { note: 'Memory marks a recalled rate: time your own.' }),
    ),
  ],
  checks: [],
  cautions: ['Rates leave out set-up, carrying and breaks: ten to twenty percent more is common.'],
};

/** Four significant digits, as a grower would type it. */
function typed(value: number): string {
  return `${Number(value.toPrecision(4))}`;
}

function cells({ kind, low, likely, high }: WorkRate): Readonly<Record<string, string>> {
  const three = (name: string, unit: string, factor = 1) => ({
    [`${name} low`]: `${typed(low * factor)}${unit}`,
    [name]: `${typed(likely * factor)}${unit}`,
    [`${name} high`]: `${typed(high * factor)}${unit}`,
  });
  if (kind === 'hours a bed') return three('Time by area', ' min/m2', MINUTES / RATED_BED);
  if (kind === 'pieces an hour') return three('Pieces an hour', ' 1/h');
  if (kind === 'weight an hour') return three('Weight an hour', ' kg/h');
  return three('Row an hour', ' m/h');
}

/** The rows of a fresh workbook. */
export const WORK_RATE_ROWS: readonly Readonly<Record<string, string>>[] = WORK_RATES.map((rate) => ({
  Work: rate.work,
  Task: rate.task,
  ...cells(rate),
  Basis: rate.basis,
  Source: rate.source.cite,
}));
