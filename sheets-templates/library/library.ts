// The crop library as a whole: every crop of the family files, as rows of the Crops sheet and as a list of figures with
// their sources. The season template and the Sources page call it.

import { ARUGULA_AND_SORREL } from './arugula-and-sorrel.ts';
import { ASIAN_BRASSICAS } from './asian-brassicas.ts';
import { BEANS } from './beans.ts';
import { BRASSICA_ROOTS } from './brassica-roots.ts';
import { BUNCHING_ALLIUMS } from './bunching-alliums.ts';
import { CABBAGES } from './cabbages.ts';
import { CELERY_FAMILY } from './celery-family.ts';
import { CHICORIES } from './chicories.ts';
import { RANGED_COLUMNS } from './columns.ts';
import { CORN_AND_OKRA } from './corn-and-okra.ts';
import { CUCUMBER_AND_SQUASH } from './cucumber-and-squash.ts';
import type { Crop, Figure, Figures } from './figure.ts';
import { FLOWERING_BRASSICAS } from './flowering-brassicas.ts';
import { FLOWERS } from './flowers.ts';
import { GARLIC_AND_LEEK } from './garlic-and-leek.ts';
import { HERBS } from './herbs.ts';
import { HUSK_TOMATOES } from './husk-tomatoes.ts';
import { KALES } from './kales.ts';
import { LEAF_HERBS } from './leaf-herbs.ts';
import { LETTUCES } from './lettuces.ts';
import { MELONS } from './melons.ts';
import { MUSTARDS } from './mustards.ts';
import { ONIONS } from './onions.ts';
import { PEAS } from './peas.ts';
import { PEPPERS } from './peppers.ts';
import { PERENNIAL_HERBS } from './perennial-herbs.ts';
import { PERENNIALS } from './perennials.ts';
import { PULSES } from './pulses.ts';
import { ROOTS } from './roots.ts';
import { SMALL_LETTUCES } from './small-lettuces.ts';
import type { Source } from './source.ts';
import { SPINACH_AND_CHARD } from './spinach-and-chard.ts';
import { TOMATOES } from './tomatoes.ts';
import { TUBERS } from './tubers.ts';
import { WINTER_BRASSICA_ROOTS } from './winter-brassica-roots.ts';
import { WINTER_SQUASH } from './winter-squash.ts';

/** Every crop of the library, family by family. */
export const LIBRARY: readonly Crop[] = [
  ...ONIONS,
  ...BUNCHING_ALLIUMS,
  ...GARLIC_AND_LEEK,
  ...LETTUCES,
  ...SMALL_LETTUCES,
  ...CHICORIES,
  ...SPINACH_AND_CHARD,
  ...ARUGULA_AND_SORREL,
  ...KALES,
  ...CABBAGES,
  ...FLOWERING_BRASSICAS,
  ...ASIAN_BRASSICAS,
  ...MUSTARDS,
  ...BRASSICA_ROOTS,
  ...WINTER_BRASSICA_ROOTS,
  ...ROOTS,
  ...TUBERS,
  ...TOMATOES,
  ...HUSK_TOMATOES,
  ...PEPPERS,
  ...CUCUMBER_AND_SQUASH,
  ...WINTER_SQUASH,
  ...MELONS,
  ...BEANS,
  ...PULSES,
  ...PEAS,
  ...CORN_AND_OKRA,
  ...CELERY_FAMILY,
  ...LEAF_HERBS,
  ...HERBS,
  ...PERENNIAL_HERBS,
  ...PERENNIALS,
  ...FLOWERS,
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

const RANGED: ReadonlySet<string> = new Set<string>(RANGED_COLUMNS);

/**
 * A figure as the cells it fills: itself, and where its lowest and highest have columns of their own, those before and
 * after it. A low or a high with a source of its own stands in the crop's figures and is left to that.
 */
function cellsOf(column: string, figure: Figure, figures: Figures): readonly (readonly [string, Figure])[] {
  const { range, source } = figure;
  if (range === undefined || !RANGED.has(column)) return [[column, figure]];
  const ends: readonly (readonly [string, string])[] = [
    [`${column} low`, range.low],
    [`${column} high`, range.high],
  ];
  const added = ends
    .filter(([name]) => !Object.hasOwn(figures, name))
    .map(([name, text]): readonly [string, Figure] => [name, { text, range: undefined, source }]);
  return [[column, figure], ...added];
}

function figuresOf(crop: Crop): readonly (readonly [column: string, figure: Figure])[] {
  return Object.entries(crop.figures).flatMap(([column, figure]) => cellsOf(column, figure, crop.figures));
}

/** Every filled cell of a crop with its source, in the order of the library. Empty for a crop the library lacks. */
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
function sourceNote(figures: readonly (readonly [column: string, figure: Figure])[]): string {
  const columnsBySource = new Map<string, string[]>();
  for (const [column, { source }] of figures) {
    const label = labelOf(source);
    const columns = columnsBySource.get(label);
    if (columns === undefined) columnsBySource.set(label, [column]);
    else columns.push(column);
  }
  return [...columnsBySource].map(([label, columns]) => `${columns.join(', ')}: ${label}`).join(' | ');
}

/** 'Weeks in propagation 9 weeks to 12 weeks; ...' for the figures that vary and have no columns for it. */
function rangeNote(crop: Crop): string {
  return Object.entries(crop.figures)
    .flatMap(([column, { range }]) =>
      range === undefined || RANGED.has(column) ? [] : [`${column} ${range.low} to ${range.high}`],
    )
    .join('; ');
}

/**
 * The library as rows of the Crops sheet: for each column the text a grower would type, units included. A column without
 * a figure is left out and stands blank, or at its default, in the sheet. Ranges, Doubts and Sources are sentences.
 */
export function libraryRows(): readonly Readonly<Record<string, string>>[] {
  return LIBRARY.map((crop) => {
    const figures = figuresOf(crop);
    const row: Record<string, string> = { Crop: crop.name };
    for (const [column, { text }] of figures) row[column] = text;
    return { ...row, Ranges: rangeNote(crop), Doubts: crop.doubts.join(' '), Sources: sourceNote(figures) };
  });
}
