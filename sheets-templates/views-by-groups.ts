// The ways of looking of long sheets that nobody wrote any for: their columns under the questions that they stand in, small
// questions joined and large ones parted, so that each view has five to a dozen columns. views.ts calls it.

import type { SheetDeclaration, ViewDeclaration } from '../engine/index.ts';

/** Besides what names a row, which may be two columns. */
const LEAST = 5;
const MOST = 10;

interface Part {
  readonly names: readonly string[];
  readonly columns: readonly string[];
}

export function viewsByGroups({ columns, key }: SheetDeclaration): readonly ViewDeclaration[] {
  const groups: Part[] = [];
  for (const { id, group } of columns) {
    if (id === key) continue;
    const last = groups.at(-1);
    if (last?.names[0] === group) groups[groups.length - 1] = { ...last, columns: [...last.columns, id] };
    else groups.push({ names: [group], columns: [id] });
  }
  const taken = new Set<string>();
  return joined(groups.flatMap(parted)).map(({ names, columns: shown }, at) => {
    const name = names.join(', ');
    const told = taken.has(name) ? `${name}, part ${at + 1}` : name;
    taken.add(told);
    return { id: `part-${at + 1}`, name: told, columns: shown };
  });
}

/** A question with too many columns in runs of about the same length. */
function parted({ names, columns }: Part): readonly Part[] {
  const count = Math.ceil(columns.length / MOST);
  if (count === 1) return [{ names, columns }];
  const each = Math.ceil(columns.length / count);
  const [name = ''] = names;
  return Array.from({ length: count }, (_, at) => ({
    names: [`${name} ${at + 1}`],
    columns: columns.slice(at * each, (at + 1) * each),
  }));
}

/** Neighbours together where one alone has too few, as far as they fit. */
function joined(parts: readonly Part[]): readonly Part[] {
  const list: Part[] = [];
  for (const part of parts) {
    const last = list.at(-1);
    const fits = last !== undefined && last.columns.length + part.columns.length <= MOST;
    if (fits && (last.columns.length < LEAST || part.columns.length < LEAST)) {
      list[list.length - 1] = { names: [...last.names, ...part.names], columns: [...last.columns, ...part.columns] };
    } else list.push(part);
  }
  return list.map((part, at) => (part.columns.length >= LEAST ? part : filledUp(part, list[at - 1], list[at + 1])));
}

/** Where one alone has too few, the nearest columns of its neighbour stand in both. */
function filledUp({ names, columns }: Part, before: Part | undefined, after: Part | undefined): Part {
  const wanted = LEAST - columns.length;
  const more = before === undefined ? (after?.columns.slice(0, wanted) ?? []) : before.columns.slice(-wanted);
  return { names, columns: before === undefined ? [...columns, ...more] : [...more, ...columns] };
}
