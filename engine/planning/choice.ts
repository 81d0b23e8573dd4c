// What to grow where room, hands and demand end: amounts of each crop within limits, for the most gain, as a linear program. Makes the
// program and reads its answer in words; whoever calls it brings the solver. Pure.

/** A crop, or a planting, by the unit in which its amount is counted: a foot of bed, a tray. */
export interface Choice {
  readonly id: string;
  readonly name: string;
  /** Gain of one unit: margin, or hours saved as a negative number. */
  readonly gain: number;
  readonly least: number;
  readonly most: number;
  /** What one unit takes of each limit. */
  readonly takes: ReadonlyMap<string, number>;
}

export interface Limit {
  readonly id: string;
  readonly name: string;
  readonly most: number;
  /** A balance of the program itself, such as that no more is sold than grows, of which nobody could have one more. */
  readonly isBalance?: boolean;
  /** Limits of one thing, such as the beds week by week, of which one more is one more of each. */
  readonly thing?: string;
}

/** Rows and columns of a linear program: most gain, every row at most its limit, every amount between its ends. */
export interface LinearProgram {
  readonly gains: readonly number[];
  readonly rows: readonly { readonly id: string; readonly most: number; readonly takes: readonly number[] }[];
  readonly least: readonly number[];
  readonly most: readonly number[];
}

/** The amounts that gain most; undefined where no amounts keep within every limit. */
export type Solver = (program: LinearProgram) => readonly number[] | undefined;

export interface Chosen {
  readonly gain: number;
  readonly amounts: ReadonlyMap<string, number>;
  /** The limits that hold it back, and what one unit more of each would gain; the dearest first. */
  readonly heldBackBy: readonly { readonly limit: Limit; readonly worth: number }[];
}

/** As much nearness to a limit, by its size, counts as being at it. */
const AT = 1e-7;

export function choose(choices: readonly Choice[], limits: readonly Limit[], solve: Solver): Chosen | undefined {
  const program = programOf(choices, limits);
  const amounts = solve(program);
  if (amounts === undefined) return undefined;
  const gain = gainOf(program, amounts);
  const priced = new Set<string>();
  const heldBackBy = limits.flatMap((limit, at) => {
    const row = program.rows[at];
    const { thing = limit.id } = limit;
    if (row === undefined || limit.isBalance === true) return [];
    const used = sumOf(row.takes, amounts);
    if (used < limit.most - AT * Math.max(1, Math.abs(limit.most))) return [];
    // Of one thing the limit met first stands for all.
    if (priced.has(thing)) return [];
    priced.add(thing);
    const worth = worthOf(program, new Set(sameThing(limits, thing)), gain, solve);
    return worth <= AT * Math.max(1, Math.abs(gain)) ? [] : [{ limit, worth }];
  });
  return {
    gain,
    amounts: new Map(choices.map(({ id }, i) => [id, amounts[i] ?? 0])),
    heldBackBy: heldBackBy.sort((a, b) => b.worth - a.worth),
  };
}

function programOf(choices: readonly Choice[], limits: readonly Limit[]): LinearProgram {
  return {
    gains: choices.map(({ gain }) => gain),
    rows: limits.map(({ id, most }) => ({ id, most, takes: choices.map(({ takes }) => takes.get(id) ?? 0) })),
    least: choices.map(({ least }) => least),
    most: choices.map(({ most }) => most),
  };
}

function sameThing(limits: readonly Limit[], thing: string): readonly number[] {
  return limits.flatMap((limit, at) => ((limit.thing ?? limit.id) === thing ? [at] : []));
}

/** What one unit more of some limits would gain: the whole unit, which is what a person would add, so the program is solved again. */
function worthOf(program: LinearProgram, widened: ReadonlySet<number>, gain: number, solve: Solver): number {
  const rows = program.rows.map((row, i) => (widened.has(i) ? { ...row, most: row.most + 1 } : row));
  const wider = { ...program, rows };
  const amounts = solve(wider);
  return amounts === undefined ? 0 : gainOf(wider, amounts) - gain;
}

function gainOf({ gains }: LinearProgram, amounts: readonly number[]): number {
  return sumOf(gains, amounts);
}

function sumOf(factors: readonly number[], amounts: readonly number[]): number {
  return factors.reduce((sum, factor, i) => sum + factor * (amounts[i] ?? 0), 0);
}
