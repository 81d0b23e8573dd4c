// Random calls of every function there is, written from its signature: arguments of the right type, with figures of every
// size, blanks, errors and dates from the first year to the last among them.

import type { Parameter, Pattern, Signature } from '../../engine/language/signature.ts';
import { canonicalUnit } from '../../engine/units/arithmetic.ts';
import type { Random } from './random.ts';

/** Columns of the sheet Wild by type; the computed ones hold errors and blanks. */
export const WILD = {
  number: ['Small', 'Huge', 'Broken', 'Counted'],
  length: ['Length', 'Long'],
  mass: ['Weight'],
  temperature: ['Low'],
  date: ['Sown', 'Far', 'Lost'],
  text: ['Name', 'Missing'],
  yesno: ['Good', 'Unsure'],
} as const;

type WildType = keyof typeof WILD;

const FIGURES = [
  '0',
  '1',
  '-1',
  '2',
  '0.5',
  '3',
  '12',
  '100',
  '1E6',
  '-1E6',
  '1E15',
  '1E-9',
  '1E300',
  '-1E300',
  '1E-300',
  '0.1',
  '170.5',
];
const DAYS = [
  'DATE(2027; 3; 15)',
  'DATE(1; 1; 1)',
  'DATE(9999; 12; 31)',
  'DATE(1900; 2; 28)',
  'TODAY()',
  'DATE(2000; 2; 29)',
];
const TEXTS = [
  '""',
  '"a"',
  '"Amber"',
  '"d"',
  '"0.00"',
  '"2027-03-15"',
  '"lb"',
  '"*?-~[("',
  '"Sat Sun"',
  '"😀"',
  '">5"',
];
const CONDITIONS = ['">0"', '"<>"', '""', '"<=1E300"', '"=5"'];

/** Which type a letter of the signature stands for in this call. */
type Letters = Map<string, WildType>;

const AMONG: Readonly<Record<'numbers' | 'ordered' | 'anything', readonly WildType[]>> = {
  numbers: ['number', 'number', 'length', 'mass'],
  ordered: ['number', 'number', 'length', 'date', 'temperature'],
  anything: ['number', 'text', 'date', 'yesno', 'length', 'temperature'],
};

function cellOrColumn(type: WildType, random: Random, whole: boolean): string {
  const name = random.pick<string>(WILD[type]);
  return whole ? `Wild[${name}]` : `[${name}]`;
}

function literal(type: WildType, random: Random): string {
  switch (type) {
    case 'number':
      return random.pick(FIGURES);
    case 'length':
      return `${random.pick(FIGURES)} ft`;
    case 'mass':
      return `${random.pick(FIGURES)} lb`;
    case 'temperature':
      return `${random.pick(['0', '20', '-300', '1E6', '-5'])} degC`;
    case 'date':
      return random.pick(DAYS);
    case 'text':
      return random.pick(TEXTS);
    case 'yesno':
      return random.pick(['TRUE', 'FALSE']);
  }
}

function valueFor(type: WildType, random: Random): string {
  return random.chance(0.55) ? cellOrColumn(type, random, false) : literal(type, random);
}

function typeOf(pattern: Pattern, random: Random, letters: Letters): WildType | undefined {
  switch (pattern.is) {
    case 'letter': {
      const known = letters.get(pattern.letter);
      if (known !== undefined) return known;
      const type = random.pick(AMONG[pattern.among]);
      letters.set(pattern.letter, type);
      return type;
    }
    case 'temperature':
    case 'date':
    case 'text':
    case 'yesno':
      return pattern.is;
    case 'anything':
      return random.pick(AMONG.anything);
    default:
      return undefined;
  }
}

/** A quantity of the dimension: a figure in its canonical unit, or a plain cell times one. */
function quantity(pattern: Extract<Pattern, { readonly is: 'quantity' }>, random: Random): string {
  const { symbol } = canonicalUnit(pattern.dimension);
  if (symbol === '') return valueFor('number', random);
  return random.chance(0.5) ? `${random.pick(FIGURES)} ${symbol}` : `[${random.pick(WILD.number)}] * (1 ${symbol})`;
}

function argumentFor(parameter: Parameter, random: Random, letters: Letters): string {
  const { pattern } = parameter;
  const whole = (of: Pattern): string => cellOrColumn(typeOf(of, random, letters) ?? 'number', random, true);
  switch (pattern.is) {
    case 'quantity':
      return quantity(pattern, random);
    case 'column':
      return whole(pattern.of);
    case 'values':
      if (random.chance(0.5)) return whole(pattern.of);
      return pattern.of.is === 'quantity'
        ? quantity(pattern.of, random)
        : valueFor(typeOf(pattern.of, random, letters) ?? 'number', random);
    case 'condition':
      return random.chance(0.5) ? random.pick(CONDITIONS) : valueFor(random.pick(AMONG.anything), random);
    case 'table':
    case 'first column':
      return 'Wild';
    case 'criteria':
      return 'Wanted';
    case 'field': {
      const type = typeOf(pattern.of, random, letters) ?? 'number';
      return `"${random.pick<string>(WILD[type])}"`;
    }
    default:
      return valueFor(typeOf(pattern, random, letters) ?? 'number', random);
  }
}

/** A call as text; it may still be refused, for a rule of types that no pattern says. */
export function anyCall({ name, parameters, repeating }: Signature, random: Random): string {
  const letters: Letters = new Map();
  const fixed = parameters.length - repeating;
  const given = parameters.filter((parameter) => parameter.optional !== true || random.chance(0.7));
  const repeated = Array.from({ length: repeating === 0 ? 0 : random.whole(0, 2) }, () =>
    parameters.slice(fixed),
  ).flat();
  return `${name}(${[...given, ...repeated].map((parameter) => argumentFor(parameter, random, letters)).join('; ')})`;
}

/** An operation on whatever stands in the row. */
export function anyOperation(random: Random): string {
  const type = random.pick(AMONG.ordered);
  const [one, other] = [valueFor(type, random), valueFor(type, random)];
  const operator = random.pick(['+', '-', '*', '/', '^', '&', '=', '<', '>=']);
  return operator === '^' ? `${one} ^ ${random.pick(['2', '-1', '0.5', '300'])}` : `${one} ${operator} ${other}`;
}
