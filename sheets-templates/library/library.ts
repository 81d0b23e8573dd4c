// The crop library as a whole: every crop of the family files, as rows of the Crops sheet and as a list of figures with
// their sources. The season template and the Sources page call it.

import { ASIAN_BRASSICAS } from './asian-brassicas.ts';
import { BRASSICA_ROOTS } from './brassica-roots.ts';
import { CABBAGES } from './cabbages.ts';
import { CELERY_FAMILY } from './celery-family.ts';
import { CUCURBITS } from './cucurbits.ts';
import type { Crop, Figure } from './figure.ts';
import { GARLIC_AND_LEEK } from './garlic-and-leek.ts';
import { HERBS } from './herbs.ts';
import { LEAVES } from './leaves.ts';
import { LEGUMES_AND_GRAIN } from './legumes-and-grain.ts';
import { NIGHTSHADES } from './nightshades.ts';
import { ONIONS } from './onions.ts';
import { ROOTS } from './roots.ts';
import type { Source } from './sources.ts';

/** Every crop of the library, family by family. */
export const LIBRARY: readonly Crop[] = [
  ...ONIONS,
  ...GARLIC_AND_LEEK,
  ...LEAVES,
  ...CABBAGES,
  ...ASIAN_BRASSICAS,
  ...BRASSICA_ROOTS,
  ...ROOTS,
  ...NIGHTSHADES,
  ...CUCURBITS,
  ...LEGUMES_AND_GRAIN,
  ...CELERY_FAMILY,
  ...HERBS,
];

/** The id of a crop of the library by its name. */
export function cropId(name: string): string {
  const crop = LIBRARY.find((one) => one.name === name);
  if (crop === undefined) throw new Error(`The library has no crop called ${name}`);
  return crop.id;
}

/** A figure of a crop with where it comes from: a citation, 'memory' or 'common practice'. */
export interface SourcedFigure {
  readonly column: string;
  readonly text: string;
  readonly source: string;
  /** 'as for cabbage' where a recalled figure is a relative's; '' otherwise. */
  readonly note: string;
}

function figuresOf(crop: Crop): readonly (readonly [column: string, figure: Figure])[] {
  return Object.entries(crop.figures);
}

/** Every figure of a crop with its source, in the order of the library. Empty for a crop the library lacks. */
export function figureSources(cropName: string): readonly SourcedFigure[] {
  const crop = LIBRARY.find(({ name }) => name === cropName);
  if (crop === undefined) return [];
  return figuresOf(crop).map(([column, { text, source }]) => ({
    column,
    text,
    source: source.cite,
    note: source.note,
  }));
}

function labelOf({ cite, note }: Source): string {
  return note === '' ? cite : `${cite}, ${note}`;
}

/** 'Seed life: Maynard & Hochmuth 1997 ... | Seeds per gram, Seed oil: memory': each source with the columns it gave. */
function sourceNote(crop: Crop): string {
  const columnsBySource = new Map<string, string[]>();
  for (const [column, { source }] of figuresOf(crop)) {
    const label = labelOf(source);
    columnsBySource.set(label, [...(columnsBySource.get(label) ?? []), column]);
  }
  return [...columnsBySource].map(([label, columns]) => `${columns.join(', ')}: ${label}`).join(' | ');
}

/** 'Weeks in propagation 9 weeks to 12 weeks; ...' for the figures that vary. */
function rangeNote(crop: Crop): string {
  return figuresOf(crop)
    .flatMap(([column, { range }]) => (range === undefined ? [] : [`${column} ${range.low} to ${range.high}`]))
    .join('; ');
}

/**
 * The library as rows of the Crops sheet: for each column the text a grower would type, units included. A column without
 * a figure is left out and stands blank in the sheet. Ranges, Doubts and Sources are sentences.
 */
export function libraryRows(): readonly Readonly<Record<string, string>>[] {
  return LIBRARY.map((crop) => ({
    Crop: crop.name,
    ...Object.fromEntries(figuresOf(crop).map(([column, { text }]) => [column, text])),
    Ranges: rangeNote(crop),
    Doubts: crop.doubts.join(' '),
    Sources: sourceNote(crop),
  }));
}
