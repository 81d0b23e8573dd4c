// What the checks found: formulas that don't check, cells that became errors where they began, empty cells that must be
// filled, the sentences of the sheets' own checks, names given twice, rows brought back, and what is kept aside. Kept by
// row as changes come: a column is looked through again only where it changed.

import { contentInWords, placeContent } from '../document/cells.ts';
import type { Reading } from '../document/reading.ts';
import type { Program, ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { entry } from '../schema/records.ts';
import { isComputed, isEnteredSheet, isMadeSheet } from '../schema/schema.ts';
import { BLANK, FILLED } from '../values/column.ts';
import { isError } from '../values/error.ts';
import type { Book } from './book.ts';
import { inOwnDegrees } from './own-units.ts';
import { rowName, scalarAt } from './shown.ts';

export type FindingLevel = 'error' | 'warning' | 'note';

export interface Finding {
  readonly level: FindingLevel;
  readonly sheet: string;
  readonly sheetName: string;
  /** The row's slot and id; undefined for what concerns a whole sheet or column. */
  readonly row: number | undefined;
  readonly rowId: string;
  readonly rowName: string;
  /** '' for what concerns no one column. */
  readonly column: string;
  readonly columnName: string;
  readonly says: string;
  /** The check that found it; '' for what every sheet is checked for. */
  readonly check: string;
}

/** Something looked for in one column: what it says for a row, or undefined. */
interface Probe {
  readonly level: FindingLevel;
  readonly sheet: ProgramSheet;
  readonly column: string;
  readonly check: string;
  /** Another whenever what the probe looks at changed. */
  stamp(frame: Reading): string;
  /** What finds it in rows, for as long as nothing changes; undefined where there is nothing in any. */
  says(book: Book): ((row: number) => string | undefined) | undefined;
}

interface Kept {
  readonly stamp: string;
  readonly found: readonly { readonly row: number; readonly says: string }[];
}

const NO_ROWS = new Int32Array(0);

const LEVELS: readonly FindingLevel[] = ['error', 'warning', 'note'];

/** Keeps the findings of one workbook current. Ask it again after changes; what didn't change is not looked at again. */
export class Findings {
  readonly #book: Book;
  #program: Program | undefined;
  #probes: readonly Probe[] = [];
  #kept = new Map<Probe, Kept>();
  /** How many probes were prepared of those there are. */
  #prepared = 0;

  constructor(book: Book) {
    this.#book = book;
  }

  /** Brings what the checks look at up to date and looks at it, one after another for as long as `goOn` says; true where more is left. */
  prepare(goOn: () => boolean): boolean {
    this.#makeProbes();
    while (this.#prepared < this.#probes.length) {
      const probe = this.#probes[this.#prepared++];
      if (probe !== undefined) this.#found(probe);
      if (!goOn()) return true;
    }
    this.#prepared = 0;
    return false;
  }

  #makeProbes(): void {
    const { program } = this.#book.document;
    if (program === this.#program) return;
    this.#program = program;
    this.#probes = program.sheets.flatMap(probesOf);
    this.#kept = new Map();
    this.#prepared = 0;
  }

  /** Everything that needs a look, errors first, then in the order of sheets and rows. */
  all(): readonly Finding[] {
    this.#makeProbes();
    const found: Finding[] = [...wholes(this.#book), ...this.#probes.flatMap((probe) => this.#look(probe))];
    return LEVELS.flatMap((level) => found.filter((finding) => finding.level === level));
  }

  #look(probe: Probe): readonly Finding[] {
    return this.#found(probe).map(({ row, says }) => finding(this.#book, probe, row, says));
  }

  #found(probe: Probe): Kept['found'] {
    const { frame } = this.#book.document;
    const stamp = probe.stamp(frame);
    let kept = this.#kept.get(probe);
    if (kept?.stamp !== stamp) {
      const found: { row: number; says: string }[] = [];
      const saysOf = probe.says(this.#book);
      for (const row of saysOf === undefined ? NO_ROWS : frame.rows(probe.sheet.table)) {
        const says = saysOf?.(row);
        if (says !== undefined) found.push({ row, says });
      }
      kept = { stamp, found };
      this.#kept.set(probe, kept);
    }
    return kept.found;
  }
}

function finding(
  book: Book,
  { level, sheet, column, check }: Pick<Probe, 'level' | 'sheet' | 'column' | 'check'>,
  row: number | undefined,
  says: string,
): Finding {
  return {
    level,
    sheet: sheet.id,
    sheetName: sheet.name,
    row,
    rowId: row === undefined ? '' : (book.document.rowIdOf(sheet.id, row) ?? ''),
    rowName: row === undefined ? '' : rowName(book, sheet.id, row),
    column,
    columnName: sheet.column(column)?.name ?? '',
    says: inOwnDegrees(says, book.document.program.units),
    check,
  };
}

function probesOf(sheet: ProgramSheet): readonly Probe[] {
  return [
    ...sheet.columns.flatMap((column) => [...errorProbe(sheet, column), ...missingProbe(sheet, column)]),
    ...sheet.checks.flatMap(({ check, def, diagnostic }): Probe[] => {
      if (diagnostic !== undefined) return [];
      return [
        {
          level: check.level,
          sheet,
          column: check.column,
          check: check.id,
          stamp: (frame) => `${frame.column(def).stamp} ${frame.rowsStamp(sheet.table)}`,
          says: ({ document }) => {
            const { values, states } = document.frame.column(def);
            const { texts } = document.program.words;
            return (row) => {
              const said = states[row] === FILLED ? texts.text(values[row] ?? 0) : '';
              return said === '' ? undefined : said;
            };
          },
        },
      ];
    }),
  ];
}

/** Errors are told where they began. */
function errorProbe(sheet: ProgramSheet, column: ProgramColumn): readonly Probe[] {
  if (!isComputed(column) || column.diagnostic !== undefined) return [];
  return [
    {
      level: 'error',
      sheet,
      column: column.id,
      check: '',
      stamp: (frame) => stampOf(frame, sheet, column),
      says: (book) => {
        const { states, exceptions } = book.document.frame.column(column.def);
        if (exceptions === 0) return undefined;
        return (row) => {
          if ((states[row] ?? FILLED) <= BLANK) return undefined;
          const error = scalarAt(book, column, row);
          const here =
            isError(error) && error.at?.sheet === sheet.id && error.at.row === row && error.at.column === column.id;
          return here ? error.why : undefined;
        };
      },
    },
  ];
}

function missingProbe(sheet: ProgramSheet, column: ProgramColumn): readonly Probe[] {
  const { declaration, role, name } = column;
  if (declaration.required !== true || role !== 'entered') return [];
  return [
    {
      level: 'warning',
      sheet,
      column: column.id,
      check: '',
      stamp: (frame) => stampOf(frame, sheet, column),
      says: ({ document }) => {
        const { states, exceptions } = document.frame.column(column.def);
        if (exceptions === 0) return undefined;
        return (row) => (states[row] === FILLED ? undefined : `${name} is empty: fill it in, much else rests on it.`);
      },
    },
  ];
}

function stampOf(frame: Reading, sheet: ProgramSheet, column: ProgramColumn): string {
  return `${frame.column(column.def).stamp} ${frame.rowsStamp(sheet.table)}`;
}

/** What concerns whole sheets and columns, and rows in themselves; few things, looked at every time. */
function wholes(book: Book): readonly Finding[] {
  return book.document.program.sheets.flatMap((sheet) => [
    ...diagnostics(book, sheet),
    ...namesakes(book, sheet),
    ...broughtBack(book, sheet),
    ...keptAside(book, sheet),
    ...goneColumns(book, sheet),
  ]);
}

function diagnostics(book: Book, sheet: ProgramSheet): readonly Finding[] {
  const say = (column: string, why: string): Finding =>
    finding(book, { level: 'error', sheet, column, check: '' }, undefined, why);
  return [
    ...sheet.rowDiagnostics.map(({ why }) => say('', why)),
    ...sheet.columns.flatMap(({ id, diagnostic }) => (diagnostic === undefined ? [] : [say(id, diagnostic.why)])),
    ...sheet.checks.flatMap(({ check, diagnostic }) =>
      diagnostic === undefined ? [] : [say(check.column, diagnostic.why)],
    ),
  ];
}

function namesakes(book: Book, sheet: ProgramSheet): readonly Finding[] {
  const { key } = sheet.schema;
  if (key === undefined) return [];
  return book.document
    .namesOf(sheet.id)
    .shared()
    .flatMap((slots) =>
      slots.map((slot) => {
        const says = `${slots.length} rows of ${sheet.name} have this name, and what names it means the first: give each its own.`;
        return finding(book, { level: 'error', sheet, column: key, check: '' }, slot, says);
      }),
    );
}

function broughtBack(book: Book, sheet: ProgramSheet): readonly Finding[] {
  if (!isEnteredSheet(sheet.schema)) return [];
  return [...book.document.rowsOf(sheet.id).records()].flatMap(({ slot, broughtBack: back }) => {
    if (back !== true || slot < 0) return [];
    const says = 'Somebody removed this row while another changed it: keep it, or remove it again.';
    return [finding(book, { level: 'warning', sheet, column: sheet.schema.key ?? '', check: '' }, slot, says)];
  });
}

/** What was typed and has no place now. */
function keptAside(book: Book, sheet: ProgramSheet): readonly Finding[] {
  const { document } = book;
  if (document.shelf.isEmpty) return [];
  const found: Finding[] = [];
  for (const row of document.shelf.rows(sheet.id)) {
    const slot = document.slotOf(sheet.id, row);
    const isRemoved = document.rowsOf(sheet.id).record(row)?.removed !== undefined;
    if (slot === undefined && (isMadeSheet(sheet.schema) || isRemoved)) continue;
    for (const [columnId, content] of document.shelf.cells(sheet.id, row)) {
      const column = sheet.column(columnId);
      if (column === undefined) continue;
      const placed = placeContent(content, column, document.program, document);
      if (placed.ok) continue;
      const says = `${contentInWords(content)} is kept aside: ${placed.why}. Type it anew, or clear the cell.`;
      found.push(finding(book, { level: 'warning', sheet, column: columnId, check: '' }, slot, says));
    }
  }
  return found;
}

/** Typed cells of columns that the template has no more. Those of a column that a person took out are known to them. */
function goneColumns(book: Book, sheet: ProgramSheet): readonly Finding[] {
  const { document } = book;
  const { shelf, program } = document;
  if (shelf.isEmpty) return [];
  const own = entry(program.schema.own, sheet.id)?.columns;
  const contents = new Map<string, string[]>();
  for (const row of shelf.rows(sheet.id)) {
    if (document.rowsOf(sheet.id).record(row)?.removed !== undefined) continue;
    for (const [column, content] of shelf.cells(sheet.id, row)) {
      if (sheet.column(column) !== undefined || entry(own, column)?.removed === true) continue;
      contents.set(column, [...(contents.get(column) ?? []), contentInWords(content)]);
    }
  }
  return [...contents].map(([column, words]) => {
    const first = words.slice(0, 3).join(', ');
    const says = `${sheet.name} has a column “${column}” no more. What was typed there is kept aside: ${first}${words.length > 3 ? ` and ${words.length - 3} more` : ''}.`;
    return finding(book, { level: 'note', sheet, column: '', check: '' }, undefined, says);
  });
}
