// Shapes of data that comes from outside. One shape is the reader, which takes anything and gives what it promises or says in
// a grower's words where the data is not as it should be, and at once the JSON Schema that other programs read; its type is
// bound to the declared one, so that none of the three can say another thing than the others. Knows nothing of workbooks.

import { nearestName } from '../language/nearest.ts';

/** A way into data by names of fields and places in lists. */
export type Way = readonly (string | number)[];

interface Step {
  readonly key: string | number;
  /** In words: 'sheet “Beds”', 'column “Length”'; '' where the words before it say enough. */
  readonly words: string;
  /** The data can do without what stands here: an item of a list, an entry of a record, a field that may be missing. */
  readonly part: boolean;
}

/** Where in the data a value stands, outermost first, and who is told of a part that is not as it should be. */
export interface Place {
  readonly steps: readonly Step[];
  /** Hears of parts that are left out; without it the first one ends the reading. */
  readonly spare: ((misfit: Misfit) => void) | undefined;
}

/** The outermost place: the first misfit ends the reading. */
export const WHOLE: Place = { steps: [], spare: undefined };

/** The outermost place of data whose parts are left out one by one where they are not as they should be. */
export function sparing(spare: (misfit: Misfit) => void): Place {
  return { steps: [], spare };
}

/** A JSON Schema (2020-12), as plain data. */
export type JsonSchema = Readonly<Record<string, unknown>>;

export interface Shape<T> {
  readonly read: (value: unknown, place: Place) => T;
  readonly schema: JsonSchema;
}

/** Data is not as it should be. The message is a whole sentence with its place. */
export class Misfit extends Error {
  readonly way: Way;
  /** The least part that holds it and that the data can do without, as the start of its way; undefined where there is none. */
  readonly part: Way | undefined;

  constructor({ steps }: Place, why: string) {
    const where = inWords(steps);
    super(where === '' ? why : `${where.charAt(0).toUpperCase()}${where.slice(1)}: ${why}`);
    this.way = steps.map(({ key }) => key);
    const last = steps.findLastIndex(({ part }) => part);
    this.part = last < 0 ? undefined : this.way.slice(0, last + 1);
  }
}

/** Inside a list, 'sheet “Beds”' says enough, and “sheets” before it nothing more. */
function inWords(steps: readonly Step[]): string {
  const words: string[] = [];
  for (const { key, words: said } of steps) {
    if (said === '') continue;
    const field = said === `“${key}”`;
    if (!field && words.at(-1)?.startsWith('“') === true) words.pop();
    words.push(said);
  }
  return words.join(', ');
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

function at({ steps, spare }: Place, key: string | number, words: string, part: boolean): Place {
  return { steps: [...steps, { key, words, part }], spare };
}

/** Reads a part; where it is not as it should be and may be left out, somebody is told and there is none. */
function readPart<T>(shape: Shape<T>, value: unknown, place: Place): readonly T[] {
  if (place.spare === undefined) return [shape.read(value, place)];
  try {
    return [shape.read(value, place)];
  } catch (thrown) {
    if (!(thrown instanceof Misfit) || thrown.part?.length !== place.steps.length) throw thrown;
    place.spare(thrown);
    return [];
  }
}

/** A list; `called` names an item for the sentence. */
export function list<T>(item: Shape<T>, called: (value: unknown, index: number) => string): Shape<readonly T[]> {
  return {
    read: (value, place) => {
      if (!Array.isArray(value)) return misfit(value, place, 'a list');
      return value.flatMap((one: unknown, index) => readPart(item, one, at(place, index, called(one, index), true)));
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
        Object.entries(value).flatMap(([key, one]) => {
          if (names !== undefined && !names.pattern.test(key)) {
            return tellOf(at(place, key, '', true), (where) => misfit(key, where, names.wanted));
          }
          return readPart(item, one, at(place, key, called(key), true)).map((read): [string, T] => [key, read]);
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

/** Known fields alone, given back in the order of the table. An unknown one is refused, or told of: dropping it would lose it. */
export function fields<T>(table: Fields<T>): Shape<T> {
  const known = Object.entries<Shape<unknown> | Optional<unknown>>(table);
  const names = known.map(([key]) => key);
  const isOptional = (shape: Shape<unknown> | Optional<unknown>): shape is Optional<unknown> => 'optional' in shape;
  return {
    read: (value, place) => {
      if (!isFields(value)) return misfit(value, place, 'a group of fields');
      for (const key of Object.keys(value)) {
        if (!names.includes(key)) tellOf(at(place, key, '', true), (where) => refuseUnknown(key, names, where));
      }
      const given = known.flatMap(([key, shape]): [string, unknown][] => {
        const one = Object.hasOwn(value, key) ? value[key] : undefined;
        if (isOptional(shape)) {
          if (one === undefined) return [];
          const read = readPart(shape.optional, one, at(place, key, `“${key}”`, true));
          return read.map((field): [string, unknown] => [key, field]);
        }
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
  return at(place, key, `“${key}”`, false);
}

/** Refuses a part by its name alone; where parts may be left out, somebody is told and there is none. */
function tellOf(place: Place, refuse: (place: Place) => never): readonly never[] {
  return readPart({ read: (_, where) => refuse(where), schema: {} }, undefined, place);
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
