// Labels for trays and rows, and the common grids of label sheets they are printed on. Measures in millimetres. Pure.

import { type Book, settings } from '../../../engine/index.ts';
import { PLANTINGS } from '../panels/columns.ts';
import { askRows, hasColumns } from '../pictures/kit/ask.ts';
import { dayWords } from '../store/day-words.ts';
import { counted } from './paper.ts';
import { SOWING_NEEDS } from './sowing-pages.ts';

/** A sheet of labels: so many across and down, each so large, so far from the sheet's edges and from each other. */
export interface LabelGrid {
  readonly id: string;
  readonly name: string;
  readonly page: 'letter' | 'A4';
  readonly across: number;
  readonly down: number;
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly top: number;
  readonly gap: number;
}

/** Sizes that label sheets are commonly cut to (common practice). */
export const LABEL_GRIDS: readonly LabelGrid[] = [
  {
    id: 'letter-30',
    name: 'Letter, 30 of 2 5/8 x 1 in',
    page: 'letter',
    across: 3,
    down: 10,
    width: 66.7,
    height: 25.4,
    left: 4.8,
    top: 12.7,
    gap: 3.1,
  },
  {
    id: 'letter-10',
    name: 'Letter, 10 of 4 x 2 in',
    page: 'letter',
    across: 2,
    down: 5,
    width: 101.6,
    height: 50.8,
    left: 4,
    top: 12.7,
    gap: 4.8,
  },
  {
    id: 'a4-24',
    name: 'A4, 24 of 70 x 37 mm',
    page: 'A4',
    across: 3,
    down: 8,
    width: 70,
    height: 37,
    left: 0,
    top: 0.5,
    gap: 0,
  },
  {
    id: 'a4-21',
    name: 'A4, 21 of 63.5 x 38.1 mm',
    page: 'A4',
    across: 3,
    down: 7,
    width: 63.5,
    height: 38.1,
    left: 7.2,
    top: 15.1,
    gap: 2.5,
  },
];

/** The grid that a person has chosen, or the first on the paper that goes with the workbook's units (common practice). */
export function labelGrid(book: Book, chosen: string): LabelGrid | undefined {
  const page = settings(book).units === 'si' ? 'A4' : 'letter';
  return LABEL_GRIDS.find(({ id }) => id === chosen) ?? LABEL_GRIDS.find((grid) => grid.page === page);
}

export interface Label {
  readonly head: string;
  readonly lines: readonly string[];
}

export type LabelKind = 'trays' | 'rows';

/** A label a tray of what is sown in trays. A sowing of very many trays gets no more than `most`. */
export function trayLabels(book: Book, most = 60): readonly Label[] {
  if (!hasColumns(book, SOWING_NEEDS)) return [];
  return askRows(book, 'sowing-list').flatMap((row): readonly Label[] => {
    const on = row.figure('on');
    const trays = Math.min(most, Math.ceil(row.figure('trays') ?? 0));
    if (row.text('job') !== 'Sow' || on === undefined || trays < 1) return [];
    return Array.from({ length: trays }, (_, index) => ({
      head: row.text('variety'),
      lines: [
        besides(row.text('variety'), row.text('planting')),
        `sown ${dayWords(book, on)}`,
        [row.text('tray'), `${index + 1} of ${trays}`].filter((part) => part !== '').join(', '),
      ].filter((line) => line !== ''),
    }));
  });
}

/** A label a planting, for the end of its rows. */
export function rowLabels(book: Book): readonly Label[] {
  if (!hasColumns(book, { [PLANTINGS]: ['planting', 'variety', 'bed', 'planted-out', 'in-row-spacing'] })) return [];
  return askRows(book, PLANTINGS).flatMap((row): readonly Label[] => {
    const out = row.figure('planted-out');
    if (out === undefined) return [];
    const spacing = row.full('in-row-spacing');
    const harvest = row.figure('harvest');
    return [
      {
        head: row.text('variety'),
        lines: [
          [besides(row.text('variety'), row.text('planting')), row.text('bed')]
            .filter((part) => part !== '')
            .join(', '),
          `in the bed ${dayWords(book, out)}${spacing === '' ? '' : `, ${spacing} apart`}`,
          harvest === undefined ? '' : `harvest from ${dayWords(book, harvest)}`,
        ].filter((line) => line !== ''),
      },
    ];
  });
}

/** What a planting is called besides its variety; '' where both have one name, which is said once. */
function besides(variety: string, planting: string): string {
  return planting === variety ? '' : planting;
}

/** Labels by the sheet they are printed on. */
export function labelSheets(labels: readonly Label[], { across, down }: LabelGrid): readonly (readonly Label[])[] {
  const each = across * down;
  return Array.from({ length: Math.ceil(labels.length / each) }, (_, sheet) =>
    labels.slice(sheet * each, (sheet + 1) * each),
  );
}

/** '134 labels on 5 sheets', '1 label on 1 sheet'. */
export function labelsInWords(labels: number, sheets: number): string {
  return `${counted(labels, 'label')} on ${counted(sheets, 'sheet')}`;
}
