// Functions of other spreadsheets that formulas bring along when they are pasted, and that hyperformula has not, or only for single
// cells: each in the form in which those have it today. They ask hyperformula's own where that suffices. Fetched with room.ts.

import { ArraySize, CellError, ErrorType, FunctionPlugin, HyperFormula, SimpleRangeValue } from 'hyperformula';
import { asLine, asValue, type Grid, inBlock, isAll, numberIn, straightLine, wholeOf } from './grids.ts';
import { nameBeside, nameInside, nameOutside, PASTED, SAID_HERE, WorkbookContext } from './inside.ts';
import {
  type Call,
  callTree,
  columnTree,
  constant,
  gridOf,
  over,
  type Single,
  type State,
  type Tree,
  times,
  type Value,
} from './trees.ts';

/** AGGREGATE counts its functions so. */
const AGGREGATES =
  'AVERAGE COUNT COUNTA MAX MIN PRODUCT STDEV.S STDEV.P SUM VAR.S VAR.P MEDIAN MODE.SNGL LARGE SMALL PERCENTILE.INC QUARTILE.INC PERCENTILE.EXC QUARTILE.EXC'.split(
    ' ',
  );
/** From LARGE on a place or a share follows the cells. */
const WITH_PLACE = AGGREGATES.indexOf('LARGE');
/** Of its options those that leave faults out; rows are never hidden on a paper. */
const WITHOUT_FAULTS = [2, 3, 6, 7];

class PastedFunctions extends FunctionPlugin {
  static override implementedFunctions = Object.fromEntries(
    [...PASTED].map((name) => [
      nameBeside(name),
      {
        method: 'call',
        sizeOfResultArrayMethod: 'size',
        vectorizationForbidden: true,
        ...(name === 'ROW' || name === 'COLUMN'
          ? { doesNotNeedArgumentsToBeComputed: true, isDependentOnSheetStructureChange: true }
          : {}),
      },
    ]),
  );

  call({ procedureName, args }: Call, state: State): Value {
    const name = nameOutside(procedureName);
    switch (name) {
      case 'ROW':
      case 'COLUMN':
        return asValue(this.places(name, args, state));
      case 'INDEX':
        return this.index(args, state);
      case 'VLOOKUP':
      case 'HLOOKUP':
        return this.inTable(name, args, state);
      case 'XLOOKUP':
        return this.inColumn(args, state);
      case 'AVERAGEIFS':
        return this.mean(args, state);
      case 'AGGREGATE':
        return this.aggregate(args, state);
      case 'DOLLAR':
        return this.money(args, state);
      default:
        return this.trend(args, state);
    }
  }

  /** How many cells the answer fills, as far as the formula tells. */
  size({ procedureName, args }: Call, state: State): ArraySize {
    const name = nameOutside(procedureName);
    const [first, second, third] = args;
    switch (name) {
      case 'ROW':
      case 'COLUMN': {
        const size = this.sizeOf(first, state);
        return name === 'ROW' ? new ArraySize(1, size.height) : new ArraySize(size.width, 1);
      }
      case 'INDEX': {
        const [whole, row, column] = [first, second, third].map((tree) => this.sizeOf(tree, state));
        if (whole === undefined || row === undefined || column === undefined) return ArraySize.scalar();
        const isLine = third === undefined && whole.height === 1;
        const height = isAll(second) && !isLine ? whole.height : 1;
        const width =
          isAll(isLine ? second : third) && (third !== undefined || whole.width === 1 || isAll(second))
            ? whole.width
            : 1;
        return new ArraySize(Math.max(width, row.width, column.width), Math.max(height, row.height, column.height));
      }
      case 'XLOOKUP': {
        const wanted = this.sizeOf(first, state);
        return wanted.height > 1 || wanted.width > 1 ? plain(wanted) : this.sizeOf(callTree(name, ...args), state);
      }
      case 'VLOOKUP':
      case 'HLOOKUP':
      case 'DOLLAR':
        return plain(this.sizeOf(first, state));
      case 'AVERAGEIFS': {
        const sizes = args.filter((_, i) => i > 0 && i % 2 === 0).map((tree) => this.sizeOf(tree, state));
        return new ArraySize(
          Math.max(1, ...sizes.map(({ width }) => width)),
          Math.max(1, ...sizes.map(({ height }) => height)),
        );
      }
      case 'AGGREGATE':
        return args[3] === undefined ? ArraySize.scalar() : plain(this.sizeOf(args[3], state));
      default:
        return plain(this.sizeOf(third ?? second ?? first, state));
    }
  }

  sizeOf(tree: Tree | undefined, state: State): ArraySize {
    return tree === undefined ? ArraySize.scalar() : this.arraySizeForAst(tree, state);
  }

  /** A value that is wanted once; undefined where it is left out. */
  one(tree: Tree | undefined, state: State): Single | undefined {
    return tree === undefined || tree.type === 'EMPTY' ? undefined : gridOf(this.evaluateAst(tree, state))[0]?.[0];
  }

  number(tree: Tree | undefined, state: State, otherwise: number): number | CellError {
    const value = this.one(tree, state);
    if (value === undefined) return otherwise;
    const read = this.coerceScalarToNumberOrError(value);
    return typeof read === 'object' && !(read instanceof CellError) ? read.val : read;
  }

  /** ROW, COLUMN: the places of cells, of this one where none are named; of several as many. */
  places(name: 'ROW' | 'COLUMN', [given]: readonly Tree[], { formulaAddress: here }: State): Grid | CellError {
    let tree = given;
    while (tree?.type === 'PARENTHESES') tree = tree.expression;
    const isRow = name === 'ROW';
    if (tree === undefined) return [[(isRow ? here.row : here.col) + 1]];
    if (tree.type === 'CELL_REFERENCE') {
      const at = tree.reference.toSimpleCellAddress(here);
      return [[(isRow ? at.row : at.col) + 1]];
    }
    let ends: readonly [number, number] | undefined;
    if (tree.type === 'CELL_RANGE') {
      const [from, to] = [tree.start.toSimpleCellAddress(here), tree.end.toSimpleCellAddress(here)];
      ends = isRow ? [from.row, to.row] : [from.col, to.col];
    } else if (tree.type === 'ROW_RANGE' && isRow)
      ends = [tree.start.toSimpleRowAddress(here).row, tree.end.toSimpleRowAddress(here).row];
    else if (tree.type === 'COLUMN_RANGE' && !isRow)
      ends = [tree.start.toSimpleColumnAddress(here).col, tree.end.toSimpleColumnAddress(here).col];
    if (ends === undefined) return fault(`${name} asks where cells stand: name a cell, or cells such as A1:A9.`);
    const [from, to] = ends;
    const numbers = Array.from({ length: to - from + 1 }, (_, i) => from + i + 1);
    return isRow ? numbers.map((number) => [number]) : [numbers];
  }

  /** INDEX: the cell in a row and column of a block, a whole row or column where the other is left out or 0; of several as many. */
  index([block, rowTree, columnTree]: readonly Tree[], state: State): Value {
    if (block === undefined || (rowTree === undefined && columnTree === undefined))
      return fault('INDEX wants cells and a row: INDEX(A1:A9,3).');
    const value = this.evaluateAst(block, state);
    if (value instanceof CellError) return value;
    const cells = gridOf(value);
    const isLine = columnTree === undefined && cells.length === 1;
    const [rows, columns] = isLine
      ? [undefined, rowTree]
      : [rowTree, columnTree ?? ((cells[0]?.length ?? 0) === 1 || isAll(rowTree) ? undefined : constant(1))];
    return inBlock(cells, this.asked(rows, state), this.asked(columns, state));
  }

  /** Rows or columns asked for; undefined for all. */
  asked(tree: Tree | undefined, state: State): Grid | undefined {
    if (tree === undefined || tree.type === 'EMPTY') return undefined;
    const grid = gridOf(this.evaluateAst(tree, state)).map((line) =>
      line.map((one): Single => this.coerceScalarToNumberOrError(one)),
    );
    const [only] = grid.length === 1 && grid[0]?.length === 1 ? grid[0] : [];
    return only !== undefined && wholeOf(only) === 0 ? undefined : grid;
  }

  /** VLOOKUP, HLOOKUP: hyperformula's own among cells of a paper; in a table written in braces or worked out by MATCH and INDEX. */
  inTable(name: 'VLOOKUP' | 'HLOOKUP', args: readonly Tree[], state: State): Value {
    const [wanted, table, place, sorted] = args;
    const isOfCells = table === undefined || /_RANGE$/.test(table.type);
    if (wanted === undefined || place === undefined || isOfCells)
      return this.evaluateAst(callTree(name, ...args), state);
    const value = this.evaluateAst(table, state);
    if (value instanceof CellError) return value;
    const cells = gridOf(value);
    const isDown = name === 'VLOOKUP';
    const keys = isDown ? cells.map(([first = '']) => first) : (cells[0] ?? []);
    const isSorted = sorted === undefined ? 1 : this.number(sorted, state, 0);
    if (isSorted instanceof CellError) return isSorted;
    const at = gridOf(
      this.evaluateAst(callTree('MATCH', wanted, columnTree(keys), constant(isSorted === 0 ? 0 : 1)), state),
    );
    const line = this.asked(place, state) ?? [[0]];
    return isDown ? inBlock(cells, at, line) : inBlock(cells, line, at);
  }

  /** XLOOKUP: hyperformula's own for one value; of several values one figure each. */
  inColumn(args: readonly Tree[], state: State): Value {
    const [wanted, ...more] = args;
    const values = wanted === undefined ? '' : this.evaluateAst(wanted, state);
    if (!(values instanceof SimpleRangeValue)) return this.evaluateAst(callTree('XLOOKUP', ...args), state);
    return asValue(
      values.data.map((line) =>
        line.map((one): Single => {
          const found = this.evaluateAst(callTree('XLOOKUP', constant(one), ...more), state);
          return found instanceof SimpleRangeValue
            ? fault('XLOOKUP of several values gives one figure for each: name one column of results.')
            : found;
        }),
      ),
    );
  }

  /** AVERAGEIFS: the total of what meets the conditions over how many numbers do. */
  mean([values, ...conditions]: readonly Tree[], state: State): Value {
    if (values === undefined || conditions.length === 0 || conditions.length % 2 !== 0)
      return fault('AVERAGEIFS wants the cells to average, and then cells and a condition in pairs.');
    const isAllNumbers = gridOf(this.evaluateAst(values, state)).every((line) =>
      line.every((one) => numberIn(one) !== undefined),
    );
    const count = isAllNumbers
      ? callTree('COUNTIFS', ...conditions)
      : callTree('SUMIFS', times(callTree('ISNUMBER', values), constant(1)), ...conditions);
    return this.evaluateAst(over(callTree('SUMIFS', values, ...conditions), count), state);
  }

  aggregate([which, how, ...cells]: readonly Tree[], state: State): Value {
    const [number, option] = [this.number(which, state, 0), this.number(how, state, 0)];
    if (number instanceof CellError) return number;
    if (option instanceof CellError) return option;
    const name = AGGREGATES[Math.trunc(number) - 1];
    if (name === undefined || cells.length === 0 || option < 0 || option > 7)
      return fault('AGGREGATE wants a function from 1 to 19, an option from 0 to 7, and cells.');
    const leavesOut = WITHOUT_FAULTS.includes(Math.trunc(option));
    if (name === 'COUNTA' && leavesOut) {
      const values = cells.flatMap((tree) => gridOf(this.evaluateAst(tree, state)).flat());
      return values.filter((value) => !(value instanceof CellError) && typeof value !== 'symbol').length;
    }
    const hasPlace = Math.trunc(number) > WITH_PLACE;
    const taken = cells.map((tree, i) =>
      leavesOut && !(hasPlace && i > 0) ? callTree('IFERROR', tree, constant('')) : tree,
    );
    return this.evaluateAst(callTree(nameInside(name), ...taken), state);
  }

  /** DOLLAR: a number as money is written here, negative in brackets. */
  money([given, digits]: readonly Tree[], state: State): Value {
    const { context } = this.config;
    if (given === undefined || !(context instanceof WorkbookContext)) return fault('DOLLAR wants a number.');
    const places = this.number(digits, state, 2);
    if (places instanceof CellError) return places;
    const shown = Math.min(15, Math.max(0, Math.trunc(places)));
    const write = moneyWriter(context, shown);
    const step = 10 ** Math.trunc(places);
    return asValue(
      gridOf(this.evaluateAst(given, state)).map((line) =>
        line.map((one): Single => {
          const read = this.coerceScalarToNumberOrError(one);
          if (read instanceof CellError) return read;
          const number = typeof read === 'object' ? read.val : read;
          return write(places < 0 ? Math.round(number * step) / step : number);
        }),
      ),
    );
  }

  /** TREND: the straight line through points, read at the new places; at the points' own where none are named. */
  trend([ysTree, xsTree, newTree, through]: readonly Tree[], state: State): Value {
    if (this.number(through, state, 1) === 0)
      return fault('TREND goes through the points here, not through nought: leave its last argument out.');
    const grid = (tree: Tree | undefined): Grid | undefined =>
      tree === undefined || tree.type === 'EMPTY' ? undefined : gridOf(this.evaluateAst(tree, state));
    const ysGrid = grid(ysTree) ?? [];
    const xsGrid = grid(xsTree) ?? asLine(ysGrid);
    const [ys, xs] = [ysGrid.flat(), xsGrid.flat()];
    const wrong = [...ys, ...xs].find((one) => one instanceof CellError);
    if (wrong instanceof CellError) return wrong;
    if (xs.length !== ys.length)
      return fault('TREND takes one column of places as long as that of figures: several at once are not fitted here.');
    const points = ys.map((y, i) => [numberIn(xs[i]), numberIn(y)] as const);
    if (points.some(([x, y]) => x === undefined || y === undefined) || points.length === 0)
      return fault('TREND wants numbers, and one of its cells holds none.');
    const line = straightLine(points.map(([x = 0, y = 0]) => [x, y]));
    return asValue(
      (grid(newTree) ?? xsGrid).map((row) =>
        row.map((one): Single => {
          const x = numberIn(one);
          return x === undefined ? (one instanceof CellError ? one : fault('TREND wants numbers.')) : line(x);
        }),
      ),
    );
  }
}

function fault(why: string): CellError {
  return new CellError(ErrorType.VALUE, SAID_HERE + why);
}

function plain({ width, height }: ArraySize): ArraySize {
  return new ArraySize(width, height);
}

/** A currency that is no code of three letters is written behind the number. */
function moneyWriter({ locale, currency }: WorkbookContext, places: number): (number: number) => string {
  const digits = { minimumFractionDigits: places, maximumFractionDigits: places };
  if (!/^[A-Z]{3}$/.test(currency)) {
    const write = new Intl.NumberFormat(locale, digits);
    return (number) => `${write.format(number)} ${currency}`;
  }
  const write = new Intl.NumberFormat(locale, { ...digits, style: 'currency', currency, currencySign: 'accounting' });
  return (number) => write.format(number);
}

HyperFormula.registerFunctionPlugin(PastedFunctions, {
  enGB: Object.fromEntries([...PASTED].map((name) => [nameBeside(name), nameBeside(name)])),
});
