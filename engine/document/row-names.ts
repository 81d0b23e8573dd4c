// Which rows of a sheet are called what: by the text of their key, ignoring case. Two people may have given two rows one
// name; then the first in order is found, and a finding says so.

import type { Token } from '../values/column.ts';

export class RowNames {
  owner: Token;
  readonly #slots: Map<string, readonly number[]>;

  constructor(owner: Token, slots = new Map<string, readonly number[]>()) {
    this.owner = owner;
    this.#slots = slots;
  }

  copy(owner: Token): RowNames {
    return new RowNames(owner, new Map(this.#slots));
  }

  /** Slots of the rows called so. */
  find(name: string): readonly number[] {
    return this.#slots.get(name.toLowerCase()) ?? [];
  }

  add(name: string, slot: number): void {
    this.#slots.set(name.toLowerCase(), [...this.find(name), slot]);
  }

  remove(name: string, slot: number): void {
    const left = this.find(name).filter((one) => one !== slot);
    if (left.length === 0) this.#slots.delete(name.toLowerCase());
    else this.#slots.set(name.toLowerCase(), left);
  }

  /** Names that several rows share. */
  shared(): readonly (readonly number[])[] {
    return [...this.#slots.values()].filter((slots) => slots.length > 1);
  }
}
