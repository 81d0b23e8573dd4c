// Records by id, where the ids come from files and people: only a record's own entries count, so that an id such as
// 'constructor' finds nothing that was not put there.

export type ById<T> = Readonly<Record<string, T>>;

export function entry<T>(record: ById<T> | undefined, id: string): T | undefined {
  return record !== undefined && Object.hasOwn(record, id) ? record[id] : undefined;
}

/** The same with one entry changed; undefined takes it out. Entries stand in the order of their ids. */
export function withEntry<T>(record: ById<T> | undefined, id: string, value: T | undefined): ById<T> {
  const entries = Object.entries(record ?? {}).filter(([name]) => name !== id);
  if (value !== undefined) entries.push([id, value]);
  return Object.fromEntries(entries.sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** Without the field where `value` is undefined. */
export function withField<T extends object, K extends keyof T>(record: T, field: K, value: T[K] | undefined): T {
  const { [field]: _, ...rest } = record;
  // Taking a field out of T and putting it back makes a T again where the field may be absent.
  return (value === undefined ? rest : { ...rest, [field]: value }) as T;
}

/** Whether two pieces of plain data say the same, in whatever order their fields stand; a field that is undefined says nothing. */
export function sameData(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [first, second] = [new Map(Object.entries(a)), new Map(Object.entries(b))];
  return [...new Set([...first.keys(), ...second.keys()])].every((key) => sameData(first.get(key), second.get(key)));
}
