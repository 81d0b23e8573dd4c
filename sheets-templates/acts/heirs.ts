// Which row of the season to come each row of the one that ends lives on as: most as themselves, some under another id beside, some
// not at all. Rows that follow from others live on as those do. Roll-over says it of the rows it makes anew; what is typed
// beside rows goes by it.

import {
  type DocumentData,
  message,
  pairRowId,
  partsOfPair,
  type RowSource,
  restoring,
  rowWithId,
  sheetView,
  type Workbook,
} from '../../engine/index.ts';
import type { Row } from './rows.ts';

/** A row of the season to come. */
interface Heir {
  readonly id: string;
  /** Its dates are those of the row before, years on. */
  readonly isMoved: boolean;
}

/** The heirs of a row that is typed, by sheet and id; of one that is not named here the row itself. */
export type Turned = ReadonlyMap<string, ReadonlyMap<string, readonly Heir[]>>;

/** The rows that roll-over makes anew. */
interface MadeAnew {
  /** Sheets whose dates move on. */
  readonly moving: readonly string[];
  /** Plantings that still stand. */
  readonly still: readonly Row[];
  /** Plantings a year on, each with the id of the one that it is like. */
  readonly copies: readonly { readonly from: string; readonly row: Row }[];
  /** Own jobs and what becomes of each: the same row where it stays as it is. */
  readonly jobs: readonly { readonly row: Row; readonly into: readonly Row[] }[];
}

/** What becomes of the typed rows of a document in the next one. */
export function turnedRows(data: DocumentData, next: DocumentData, { moving, still, copies, jobs }: MadeAnew): Turned {
  const stays = new Set(still.map(({ id }) => id));
  const jobsTo = new Map(
    jobs.map(({ row, into }) => [row.id, into.map(({ id }, i) => ({ id, isMoved: into[i] !== row }))]),
  );
  return new Map(
    Object.entries(data.rows).map(([sheet, list]) => {
      const there = new Set((next.rows[sheet] ?? []).map(({ id }) => id));
      const heirs = ({ id }: Row): readonly Heir[] => {
        if (sheet === 'own-jobs') return jobsTo.get(id) ?? [];
        if (sheet !== 'plantings') return there.has(id) ? [{ id, isMoved: moving.includes(sheet) }] : [];
        const anew = copies.filter(({ from }) => from === id).map(({ row }) => ({ id: row.id, isMoved: true }));
        return [...(stays.has(id) ? [{ id, isMoved: false }] : []), ...anew];
      };
      return [sheet, new Map(list.map((row) => [row.id, heirs(row)]))];
    }),
  );
}

export type HeirsOf = (sheet: string, id: string) => readonly Heir[];

/** Answers for rows of any sheet, within `work`; days, weeks and months live on where the season to come has them. */
export function withHeirs<T>(workbook: Workbook, next: DocumentData, turned: Turned, work: (of: HeirsOf) => T): T {
  return workbook.onBranch((branch) => {
    let isOpen = false;
    const hasDay = (sheet: string, id: string): boolean => {
      if (!isOpen) branch.do([restoring(next)], message('trial'));
      isOpen = true;
      return rowWithId(branch, sheet, id) !== undefined;
    };
    const of: HeirsOf = (sheet, id) => {
      const source = sheetView(workbook, sheet)?.source;
      if (source === undefined) return [{ id, isMoved: false }];
      return heirsBy(source, id, of, () =>
        source.from === 'span'
          ? hasDay(sheet, id)
            ? [{ id, isMoved: false }]
            : []
          : (turned.get(sheet)?.get(id) ?? [{ id, isMoved: false }]),
      );
    };
    return work(of);
  });
}

/** `itself`: the heirs of a row that follows from no other. */
function heirsBy(source: RowSource, id: string, of: HeirsOf, itself: () => readonly Heir[]): readonly Heir[] {
  switch (source.from) {
    case 'each':
      return of(source.sheet, id);
    case 'pairs': {
      const parts = partsOfPair(id);
      if (parts === undefined) return [];
      const [first, second] = [of(source.sheets[0], parts[0]), of(source.sheets[1], parts[1])];
      return first.flatMap((a) => second.map((b) => ({ id: pairRowId(a.id, b.id), isMoved: a.isMoved || b.isMoved })));
    }
    case 'events': {
      // An event a year on is another one.
      const [row, dated] = partsOfPair(id) ?? [];
      const sheet = dated?.split('.')[0];
      if (row === undefined || sheet === undefined) return [];
      return of(sheet, row).some((heir) => heir.id === row && !heir.isMoved) ? [{ id, isMoved: false }] : [];
    }
    default:
      return itself();
  }
}
