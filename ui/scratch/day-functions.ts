// Days stay days: the latest of some days is a day, and so are their mean and the third of them, as other spreadsheets show them.
// hyperformula gives plain numbers there, and takes a plain number less a day for a day of 1900. Fetched with room.ts.

import {
  type ArraySize,
  CellError,
  CellValueDetailedType,
  EmptyValue,
  FunctionPlugin,
  HyperFormula,
  SimpleRangeValue,
} from 'hyperformula';
import { KEEPS_DAYS, nameBeside, nameInside, nameOutside } from './inside.ts';
import { type Call, callTree, gridOf, type Single, type State, type Tree, type Value } from './trees.ts';

/** Of the functions that SUBTOTAL counts those whose answer is of the kind of their cells: AVERAGE, MAX, MIN. */
const CHOOSING_SUBTOTALS = [1, 4, 5, 101, 104, 105];

/** As hyperformula hands itself to what is put into it. */
type Inside = ConstructorParameters<typeof FunctionPlugin>[0];

class DayFunctions extends FunctionPlugin {
  static override implementedFunctions = Object.fromEntries(
    [...KEEPS_DAYS].map((name) => [
      nameInside(name),
      { method: 'call', sizeOfResultArrayMethod: 'size', vectorizationForbidden: true },
    ]),
  );

  constructor(inside: Inside) {
    super(inside);
    const reckoning = this.arithmeticHelper;
    const { subtract, divide, unaryMinus } = reckoning;
    reckoning.subtract = (left, right) => subtract(left, isDay(left) ? right : plainOf(right));
    reckoning.divide = (left, right) => divide(plainOf(left), plainOf(right));
    reckoning.unaryMinus = (number) => unaryMinus(plainOf(number));
  }

  /** What hyperformula's own function gives, or the one beside it, as a day where it was asked of days. */
  call({ procedureName, args }: Call, state: State): Value {
    const name = nameOutside(procedureName);
    const answer = this.evaluateAst(callTree(nameBeside(name), ...args), state);
    if (answer instanceof CellError || !this.isOfDays(name, args, state)) return answer;
    if (!(answer instanceof SimpleRangeValue)) return this.day(answer);
    return SimpleRangeValue.onlyValues(answer.data.map((line) => line.map((one) => this.day(one))));
  }

  /** As many cells as without its days. */
  size({ procedureName, args }: Call, state: State): ArraySize {
    return this.arraySizeForAst(callTree(nameBeside(nameOutside(procedureName)), ...args), state);
  }

  day(value: Single): Single {
    return typeof value === 'number' ? this.returnNumberWrapper(value, CellValueDetailedType.NUMBER_DATE) : value;
  }

  /** Whether a day is the first number in something that the answer is chosen from. */
  isOfDays(name: string, args: readonly Tree[], state: State): boolean {
    return this.chosenFrom(name, args, state).some((tree) => {
      const cells = tree.type === 'EMPTY' ? [] : gridOf(this.evaluateAst(tree, state));
      for (const line of cells)
        for (const cell of line)
          if (cell !== EmptyValue && (typeof cell === 'number' || typeof cell === 'object')) return isDay(cell);
      return false;
    });
  }

  chosenFrom(name: string, args: readonly Tree[], state: State): readonly Tree[] {
    if (/^(?:MAX|MIN|MAXA|MINA|AVERAGE|AVERAGEA|MEDIAN|MODE|MODE\.SNGL)$/.test(name)) return args;
    if (name === 'AVERAGEIF') return args.slice(args.length === 3 ? 2 : 0).slice(0, 1);
    if (name !== 'SUBTOTAL') return args.slice(0, 1);
    const [which] = args;
    const number = which === undefined ? '' : gridOf(this.evaluateAst(which, state))[0]?.[0];
    return typeof number === 'number' && CHOOSING_SUBTOTALS.includes(number) ? args.slice(1) : [];
  }
}

function isDay(value: Single): boolean {
  if (typeof value !== 'object' || value instanceof CellError) return false;
  const type: CellValueDetailedType = value.getDetailedType();
  return type === CellValueDetailedType.NUMBER_DATE || type === CellValueDetailedType.NUMBER_DATETIME;
}

/** A day as a plain number; any other number as it is. */
function plainOf<T extends Single>(number: T): T | number {
  return typeof number === 'object' && !(number instanceof CellError) && isDay(number) ? number.val : number;
}

HyperFormula.registerFunctionPlugin(DayFunctions, {
  enGB: Object.fromEntries([...KEEPS_DAYS].map((name) => [nameInside(name), nameInside(name)])),
});
