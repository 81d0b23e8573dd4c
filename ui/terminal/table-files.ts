// `import` and `export`: rows of a table from a file and to one, in the formats that the engine lists.

import {
  cellValue,
  ENCODINGS,
  type Encoding,
  FORMATS,
  type Format,
  formatOfId,
  formatOfName,
  type ImportChoices,
  importTable,
  nearestName,
  type ReadingChoices,
  readTableFile,
  refusalInWords,
  rows,
  type SheetView,
  sheetViews,
  type Workbook,
} from '../../engine/index.ts';
import { formatTools } from '../format-tools.ts';
import type { Given } from './arguments.ts';
import { isSameFile, writePlain } from './disk.ts';
import { findColumn, findTable } from './places.ts';
import { during } from './progress.ts';
import { bytesOf, type Changed, changeWorkbook, openWorkbook, STREAM } from './workbook-files.ts';
import { onOneLine, refuse, type World } from './world.ts';

/** Rows that can't be taken, told one by one; the rest are counted. */
const MOST_TOLD = 20;

/** Adds or updates rows, all or none; with --good-rows those that can be taken. */
export async function importRows(given: Given, world: World): Promise<number> {
  const [file = '', tableName = '', source = ''] = given.words;
  if (file === STREAM && source === STREAM) {
    refuse("Workbook and rows can't both come from standard input: name a file for one of them.");
  }
  const reading = readingChoices(given);
  const bytes = await bytesOf(source, world);
  return changeWorkbook(file, given, world, async (workbook): Promise<Changed> => {
    const table = findTable(workbook, file, tableName);
    const name = source === STREAM ? 'Standard input' : source;
    const read = await readTableFile(bytes, table, formatTools, reading);
    if (!read.ok) return refuse(onOneLine(`${name}: ${read.why}`));
    const imported = importTable(workbook, table.id, read, importChoices(given, table, file));
    if (!imported.ok) return refuse(onOneLine(`${name}: ${imported.why}`));
    const { added, updated, unchanged, refused, faults, notes } = imported;
    const counts = [
      `${added} added`,
      `${updated} updated`,
      ...(unchanged === 0 ? [] : [`${unchanged} left as they were`]),
      ...(refused === 0 ? [] : [`${refused} not taken`]),
    ];
    for (const fault of faults.slice(0, MOST_TOLD)) world.warn(onOneLine(`${name}: ${refusalInWords(fault)}`));
    if (refused > MOST_TOLD) world.warn(`${name}: ${refused - MOST_TOLD} more rows were not taken.`);
    const says = [`${table.name}: ${counts.join(', ')}.`, ...notes].map((line) => `${line}\n`).join('');
    return { says, status: refused === 0 ? 0 : 1 };
  });
}

function readingChoices({ values }: Given): ReadingChoices {
  const encoding = values.get('encoding');
  const delimiter = values.get('delimiter');
  const table = values.get('sheet');
  return {
    ...(encoding === undefined ? {} : { encoding: encodingOf(encoding) }),
    ...(delimiter === undefined ? {} : { delimiter: delimiterOf(delimiter) }),
    ...(table === undefined ? {} : { table }),
  };
}

function encodingOf(given: string): Encoding {
  const known = ENCODINGS.find((one) => one === given.toLowerCase());
  return known ?? refuse(`--encoding is one of ${ENCODINGS.join(', ')}, and not “${given}”.`);
}

function delimiterOf(given: string): NonNullable<ReadingChoices['delimiter']> {
  if (given === ',' || given === ';') return given;
  return given === 'tab' || given === '\t' ? '\t' : refuse(`--delimiter is “,” or “;” or tab, and not “${given}”.`);
}

function importChoices({ values, flags }: Given, table: SheetView, file: string): ImportChoices {
  const decimal = values.get('decimal');
  if (decimal !== undefined && decimal !== 'point' && decimal !== 'comma')
    return refuse(`--decimal is point or comma, and not “${decimal}”.`);
  return {
    goodOnes: flags.has('good-rows'),
    byHand: columnsByHand(values.get('columns') ?? '', table, file),
    ...(decimal === undefined ? {} : { decimal }),
  };
}

/** 'Crop name=Variety; Remarks=': headers of the file with the columns they go to, or with nothing to be left out. */
function columnsByHand(given: string, table: SheetView, file: string): Readonly<Record<string, string | null>> {
  const pairs = given.split(';').filter((pair) => pair.trim() !== '');
  return Object.fromEntries(
    pairs.map((pair): [string, string | null] => {
      const at = pair.lastIndexOf('=');
      if (at < 0) return refuse(`--columns takes HEADER=COLUMN; HEADER=COLUMN, and “${pair.trim()}” has no =.`);
      const column = pair.slice(at + 1).trim();
      return [pair.slice(0, at).trim(), column === '' ? null : findColumn(table, file, column).id];
    }),
  );
}

/** A table, or all of them where the format holds many, to standard output where no file is named. */
export async function exportTable(given: Given, world: World): Promise<number> {
  const [file = '', name] = given.words;
  const out = given.values.get('out') ?? STREAM;
  const format = formatFor(given, out);
  if (file !== STREAM && out !== STREAM && isSameFile(out, file)) {
    refuse(`${out} is the workbook itself: name another file.`);
  }
  const workbook = await openWorkbook(file, world);
  const sheets = sheetsFor(workbook, file, name, format);
  sheets.forEach((id, at) => {
    const view = sheetViews(workbook).find((one) => one.id === id);
    world.progress?.(`Working out ${view?.name ?? id}, ${at + 1} of ${sheets.length} ...`);
    const [first] = rows(workbook, id);
    for (const column of view?.columns ?? []) if (first !== undefined) cellValue(workbook, id, first, column.id);
  });
  const { content, notes } = await during(world, `Writing ${contentInWords(workbook, sheets)} ...`, () =>
    format.write(workbook, sheets, formatTools),
  );
  for (const note of notes) world.warn(note);
  if (out === STREAM) {
    world.out(content);
    return 0;
  }
  const what = contentInWords(workbook, sheets);
  if (given.flags.has('dry-run')) {
    world.out(`${out} would hold ${what}. Nothing was written: this was a trial.\n`);
    return 0;
  }
  writePlain(out, content, { force: given.flags.has('force') });
  world.out(`Wrote ${out}: ${what}.\n`);
  return 0;
}

function contentInWords(workbook: Workbook, sheets: readonly string[]): string {
  const [only] = sheets.length === 1 ? sheets : [];
  const table = sheetViews(workbook).find(({ id }) => id === only);
  return table === undefined ? `${sheets.length} tables` : `${rows(workbook, table.id).length} rows of ${table.name}`;
}

function formatFor({ values }: Given, out: string): Format {
  const wanted = values.get('format');
  const offered = FORMATS.filter(({ holds }) => holds !== 'workbook');
  const ids = offered.map(({ id }) => id);
  if (wanted === undefined) {
    const byName = offered.find((one) => one === formatOfName(out));
    return byName ?? offered[0] ?? refuse('No format can be written.');
  }
  const found = offered.find((one) => one === formatOfId(wanted.toLowerCase()));
  if (found !== undefined) return found;
  const near = nearestName(wanted, ids);
  const advice = near === undefined ? `choose one of ${ids.join(', ')}.` : `did you mean ${near}?`;
  return refuse(`There is no format “${wanted}”: ${advice}`);
}

function sheetsFor(workbook: Workbook, file: string, name: string | undefined, format: Format): readonly string[] {
  if (name !== undefined) return [findTable(workbook, file, name).id];
  if (format.holds === 'sheet') return refuse(`A ${format.name} file holds one table: name it after the workbook.`);
  return sheetViews(workbook).map(({ id }) => id);
}
