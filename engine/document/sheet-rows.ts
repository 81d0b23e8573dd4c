// The rows of one entered sheet: their ids, slots and places, and which were removed. A branch shares them until one of the
// two adds, removes or moves a row.

import type { Token } from '../values/column.ts';
import type { Stamp } from './stamps.ts';

export interface RowRecord {
  readonly id: string;
  /** -1 for a row that was removed. */
  readonly slot: number;
  /** Its place among the rows (positions.ts). */
  readonly at: string;
  readonly removed?: Stamp;
  /** It went as it had come, out of nowhere: what waits for it is told. */
  readonly asUnknown?: true;
  /** It went with the version of the template that had brought it. */
  readonly unshipped?: true;
  /** Another person changed it after it was removed, so it is back. */
  readonly broughtBack?: true;
}

/** Of a row or of what brings it in: the field that says it is marked, if it is. */
export function markOf({ broughtBack }: { readonly broughtBack?: true | undefined }): Pick<RowRecord, 'broughtBack'> {
  return broughtBack === undefined ? {} : { broughtBack };
}

export class SheetRows {
  owner: Token;
  readonly #records: Map<string, RowRecord>;
  readonly #ids: (string | undefined)[];
  #lastAt: string;
  readonly #broughtBack = new Set<string>();

  constructor(owner: Token, records = new Map<string, RowRecord>(), ids: (string | undefined)[] = [], lastAt = '') {
    this.owner = owner;
    this.#records = records;
    this.#ids = ids;
    this.#lastAt = lastAt;
    for (const { id, broughtBack } of records.values()) if (broughtBack === true) this.#broughtBack.add(id);
  }

  copy(owner: Token): SheetRows {
    return new SheetRows(owner, new Map(this.#records), this.#ids.slice(), this.#lastAt);
  }

  record(id: string): RowRecord | undefined {
    return this.#records.get(id);
  }

  /** The slot of a row that is there. */
  slotOf(id: string): number | undefined {
    const slot = this.#records.get(id)?.slot ?? -1;
    return slot < 0 ? undefined : slot;
  }

  /** The row in a slot; of a slot that a row left, that row until another takes it, since cells may still link to it. */
  idOf(slot: number): string | undefined {
    return this.#ids[slot];
  }

  /** Removed rows among them. */
  records(): Iterable<RowRecord> {
    return this.#records.values();
  }

  /** Slots of the rows that one person took out and another's change brought back. */
  broughtBack(): readonly number[] {
    return [...this.#broughtBack].flatMap((id) => this.slotOf(id) ?? []);
  }

  /** The place of the row that stands last, or stood so far back. */
  get lastAt(): string {
    return this.#lastAt;
  }

  put(record: RowRecord): void {
    const before = this.#records.get(record.id);
    if (record.slot >= 0) {
      if (before !== undefined && before.slot >= 0) this.#ids[before.slot] = undefined;
      this.#ids[record.slot] = record.id;
    }
    this.#records.set(record.id, record);
    if (record.broughtBack === true) this.#broughtBack.add(record.id);
    else this.#broughtBack.delete(record.id);
    if (record.at > this.#lastAt) this.#lastAt = record.at;
  }
}
