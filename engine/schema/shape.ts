// Shapes of data that comes from outside. One shape is the reader, which takes anything and gives what it promises or says in
// a grower's words where the data is not as it should be, and at once the JSON Schema that other programs read; its type is
// bound to the declared one, so that none of the three can say another thing than the others. Knows nothing of workbooks.

import { nearestName } from '../language/nearest.ts';

/** Where in the file a value stands, outermost first: 'sheet “Beds”', 'column “Length”'. */
export type Place = readonly string[];

/** A JSON Schema (2020-12), as plain data. */
export type JsonSchema = Readonly<Record<string, unknown>>;

export interface Shape<T> {
  readonly read: (value: unknown, place: Place) => T;
  readonly schema: JsonSchema;
}

/** Data is not as it should be. The message is a whole sentence with its place. */
export class Misfit extends Error {
  constructor(place: Place, why: string) {
    const where = place.join(', ');
    super(where === '' ? why : `${where.charAt(0).toUpperCase()}${where.slice(1)}: ${why}`);
  }
}

function kindOf(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'a group of fields';
  if (typeof value === 'boolean') return String(value);
  return typeof value === 'number' ? `the number ${value}` : `“${String(value).slice(0, 40)}”`;
}

export function misfit(value: unknown, place: Place, wanted: string): never {
  throw new Misfit(place, `${wanted} should stand here, and ${kindOf(value)} does.`);
}

export const text: Shape<string> = {
  read: (value, place) => (typeof value === 'string' ? value : misfit(value, place, 'a text')),
  schema: { type: 'string' },
};

export const name: Shape<string> = {
  read: (value, place) =>
    typeof value === 'string' && value !== '' ? value : misfit(value, place, 'a name of at least one letter'),
  schema: { type: 'string', minLength: 1 },
};

export const flag: Shape<boolean> = {
  read: (value, place) => (typeof value === 'boolean' ? value : misfit(value, place, 'true or false')),
  schema: { type: 'boolean' },
};

export const number: Shape<number> = {
  read: (value, place) =>
    typeof value === 'number' && Number.isFinite(value) ? value : misfit(value, place, 'a number'),
  schema: { type: 'number' },
};

export function whole(least: number, most: number): Shape<number> {
  return {
    read: (value, place) =>
      typeof value === 'number' && Number.isInteger(value) && value >= least && value <= most
        ? value
        : misfit(value, place, `a whole number from ${least} to ${most}`),
    schema: { type: 'integer', minimum: least, maximum: most },
  };
}

/** `wanted` says in words what the pattern asks for. */
export function like(pattern: RegExp, wanted: string): Shape<string> {
  return {
    read: (value, place) => (typeof value === 'string' && pattern.test(value) ? value : misfit(value, place, wanted)),
    schema: { type: 'string', pattern: pattern.source },
  };
}

export function oneOf<const T extends string>(...words: readonly T[]): Shape<T> {
  const wanted = `one of ${words.map((word) => `“${word}”`).join(', ')}`;
  return {
    read: (value, place) => words.find((word) => word === value) ?? misfit(value, place, wanted),
    schema: { enum: words },
  };
}

/** The one text. */
export function exactly<const T extends string>(word: T): Shape<T> {
  return {
    read: (value, place) => (value === word ? word : misfit(value, place, `“${word}”`)),
    schema: { const: word },
  };
}

/** The flag that is only ever given as true. */
export const onlyTrue: Shape<true> = {
  read: (value, place) => (value === true ? true : misfit(value, place, 'true')),
  schema: { const: true },
};

export function orNull<T>(shape: Shape<T>): Shape<T | null> {
  return {
    read: (value, place) => (value === null ? null : shape.read(value, place)),
    schema: { anyOf: [shape.schema, { type: 'null' }] },
  };
}

/** Inside a list: 'sheet “Beds”' says enough, and “sheets” before it nothing more. */
function within(place: Place, item: string): Place {
  return [...(place.at(-1)?.startsWith('“') === true ? place.slice(0, -1) : place), item];
}

/** A list; `called` names an item for the sentence. */
export function list<T>(item: Shape<T>, called: (value: unknown, index: number) => string): Shape<readonly T[]> {
  return {
    read: (value, place) => {
      if (!Array.isArray(value)) return misfit(value, place, 'a list');
      return value.map((one: unknown, index) => item.read(one, within(place, called(one, index))));
    },
    schema: { type: 'array', items: item.schema },
  };
}

export function pair<T>(item: Shape<T>): Shape<readonly [T, T]> {
  return {
    read: (value, place) => {
      if (!Array.isArray(value) || value.length !== 2) return misfit(value, place, 'a list of two');
      return [item.read(value[0], place), item.read(value[1], place)];
    },
    schema: { type: 'array', items: item.schema, minItems: 2, maxItems: 2 },
  };
}

export function isFields(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Any names that fit a pattern with one shape of value. */
export function record<T>(
  item: Shape<T>,
  called: (name: string) => string,
  names?: { readonly pattern: RegExp; readonly wanted: string },
): Shape<Readonly<Record<string, T>>> {
  return {
    read: (value, place) => {
      if (!isFields(value)) return misfit(value, place, 'a group of fields');
      return Object.fromEntries(
        Object.entries(value).map(([key, one]) => {
          if (names !== undefined && !names.pattern.test(key)) misfit(key, place, names.wanted);
          return [key, item.read(one, within(place, called(key)))];
        }),
      );
    },
    schema: {
      type: 'object',
      additionalProperties: item.schema,
      ...(names === undefined ? {} : { propertyNames: { pattern: names.pattern.source } }),
    },
  };
}

interface Optional<T> {
  readonly optional: Shape<T>;
}

export function optional<T>(shape: Shape<T>): Optional<T> {
  return { optional: shape };
}

/** A shape for every field of T; optional ones must be marked, so that a new field can't be forgotten here. */
export type Fields<T> = {
  readonly [K in keyof T]-?: Record<string, never> extends Pick<T, K>
    ? Optional<Exclude<T[K], undefined>>
    : Shape<Exclude<T[K], undefined>>;
};

/** Known fields alone, given back in the order of the table. An unknown one is refused: dropping it would lose it. */
export function fields<T>(table: Fields<T>): Shape<T> {
  const known = Object.entries<Shape<unknown> | Optional<unknown>>(table);
  const names = known.map(([key]) => key);
  const isOptional = (shape: Shape<unknown> | Optional<unknown>): shape is Optional<unknown> => 'optional' in shape;
  return {
    read: (value, place) => {
      if (!isFields(value)) return misfit(value, place, 'a group of fields');
      for (const key of Object.keys(value)) if (!names.includes(key)) refuseUnknown(key, names, place);
      const given = known.flatMap(([key, shape]): [string, unknown][] => {
        const one = Object.hasOwn(value, key) ? value[key] : undefined;
        if (isOptional(shape)) return one === undefined ? [] : [[key, shape.optional.read(one, inside(place, key))]];
        if (one === undefined)
          throw new Misfit(place, `“${key}” is missing: add it, or take a whole copy of the file.`);
        return [[key, shape.read(one, inside(place, key))]];
      });
      return Object.fromEntries(given) as T;
    },
    schema: {
      type: 'object',
      properties: Object.fromEntries(
        known.map(([key, shape]) => [key, isOptional(shape) ? shape.optional.schema : shape.schema]),
      ),
      required: known.flatMap(([key, shape]) => (isOptional(shape) ? [] : [key])),
      additionalProperties: false,
    },
  };
}

function inside(place: Place, key: string): Place {
  return [...place, `“${key}”`];
}

function refuseUnknown(key: string, names: readonly string[], place: Place): never {
  const near = nearestName(key, names);
  const advice = near === undefined ? ': take it out.' : `; did you mean “${near}”?`;
  throw new Misfit(place, `“${key.slice(0, 40)}” is not a field known here${advice}`);
}

/** Groups of fields of several sorts, told apart by the text in one of them. */
export function variants<Tag extends string, T extends Readonly<Record<Tag, string>>>(
  tag: Tag,
  table: { readonly [K in T[Tag]]: Shape<Extract<T, Readonly<Record<Tag, K>>>> },
): Shape<T> {
  const shapes = new Map<string, Shape<T>>(Object.entries<Shape<T>>(table));
  const words = oneOf(...shapes.keys());
  return {
    read: (value, place) => {
      if (!isFields(value)) return misfit(value, place, 'a group of fields');
      const kind = Object.hasOwn(value, tag) ? value[tag] : undefined;
      if (kind === undefined) throw new Misfit(place, `“${tag}” is missing: add it, or take a whole copy of the file.`);
      const shape = shapes.get(words.read(kind, inside(place, tag)));
      return shape === undefined ? misfit(value, place, tag) : shape.read(value, place);
    },
    schema: { oneOf: [...shapes.values()].map(({ schema }) => schema) },
  };
}
