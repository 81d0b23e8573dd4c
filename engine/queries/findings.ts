// What the checks found: formulas that don't check, cells that became errors where they began, empty cells that must be
// filled, the sentences of the sheets' own checks, names given twice, rows brought back, and what is kept aside. Kept by
// row as changes come: a column is looked through again only where it changed.

import type { Reading } from '../document/reading.ts';
import type { Program, ProgramColumn, ProgramSheet } from '../schema/compile.ts';
import { isComputed } from '../schema/schema.ts';
import { BLANK, FILLED } from '../values/column.ts';
import { isError } from '../values/error.ts';
import type { Writing } from '../values/writing.ts';
import type { Book } from './book.ts';
import { type About, type Finding, type FindingLevel, finding } from './finding.ts';
import { rowNamesStamp } from './row-names-stamp.ts';
import { sheetFindings } from './sheet-findings.ts';
import { scalarAt } from './shown.ts';

/** Something looked for in one column: what it says for a row, or undefined. */
interface Probe extends About {
  /** Another whenever what the probe looks at in rows changed. */
  stamp(frame: Reading): number;
  /** What finds it in rows, for as long as nothing changes; undefined where there is nothing in any. */
  says(book: Book): ((row: number) => string | undefined) | undefined;
}

interface Kept {
  readonly stamp: string;
  readonly found: readonly { readonly row: number; readonly says: string }[];
  told: Told | undefined;
}

/** The same as findings, with the names that rows had and the way of writing then. */
interface Told {
  readonly names: string | undefined;
  readonly writing: Writing | undefined;
  readonly findings: readonly Finding[];
}

/** What sheets were found to be while a list of findings is made: their rows and their rows' names as they stand. */
interface Seen {
  readonly rows: Map<ProgramSheet, string>;
  readonly names: Map<ProgramSheet, string | undefined>;
}

const NO_ROWS = new Int32Array(0);

/** Gravest first. */
export const FINDING_LEVELS: readonly FindingLevel[] = ['error', 'warning', 'note'];

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
      if (probe !== undefined) this.#found(probe, new Map());
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
    const ofSheets = sheetFindings(this.#book);
    const seen: Seen = { rows: new Map(), names: new Map() };
    const lists = this.#probes.map((probe) => ({ level: probe.level, found: this.#look(probe, seen) }));
    const inOrder = FINDING_LEVELS.flatMap((level) => [
      ofSheets.filter((finding) => finding.level === level),
      ...lists.flatMap((list) => (list.level === level ? [list.found] : [])),
    ]);
    const none: readonly Finding[] = [];
    return none.concat(...inOrder);
  }

  #look(probe: Probe, seen: Seen): readonly Finding[] {
    const { sheet } = probe;
    const kept = this.#found(probe, seen.rows);
    if (kept.found.length === 0) return [];
    if (!seen.names.has(sheet)) seen.names.set(sheet, rowNamesStamp(this.#book, sheet));
    const names = seen.names.get(sheet);
    const { writing } = this.#book.document;
    if (kept.told === undefined || names === undefined || kept.told.names !== names || kept.told.writing !== writing) {
      const findings = kept.found.map(({ row, says }) => finding(this.#book, probe, row, says));
      kept.told = { names, writing, findings };
    }
    return kept.told.findings;
  }

  /** `seen`: the stamps of sheets' rows that were asked for already. */
  #found(probe: Probe, seen: Map<ProgramSheet, string>): Kept {
    const { frame } = this.#book.document;
    const { sheet } = probe;
    const rows = seen.get(sheet) ?? frame.rowsStamp(sheet.table);
    seen.set(sheet, rows);
    const stamp = `${probe.stamp(frame)} ${rows}`;
    const before = this.#kept.get(probe);
    if (before?.stamp === stamp) return before;
    const found: { row: number; says: string }[] = [];
    const saysOf = probe.says(this.#book);
    for (const row of saysOf === undefined ? NO_ROWS : frame.rows(sheet.table)) {
      const says = saysOf?.(row);
      if (says !== undefined) found.push({ row, says });
    }
    const kept = { stamp, found, told: undefined };
    this.#kept.set(probe, kept);
    return kept;
  }
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
          stamp: (frame) => frame.column(def).stamp,
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
      stamp: (frame) => frame.column(column.def).stamp,
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
      stamp: (frame) => frame.column(column.def).stamp,
      says: ({ document }) => {
        const { states, exceptions } = document.frame.column(column.def);
        if (exceptions === 0) return undefined;
        return (row) => (states[row] === FILLED ? undefined : `${name} is empty: fill it in, much else rests on it.`);
      },
    },
  ];
}
