// Orders and bed plans as integer linear programs in the LP format of CPLEX, for a solver to prove what is best. They state the
// questions anew, from what they mean, and share nothing with the searches. The tests and the bench call them.

import { join } from 'node:path';
import { BedPlan, type BedQuestion, type OrderQuestion, PLAN_COSTS } from '../../engine/index.ts';

/** An optimum, or the bounds between which it lies. */
export interface Solved {
  readonly status: string;
  readonly value: number;
}

export async function solve(program: string, seconds: number): Promise<Solved> {
  const { default: load } = await import('highs');
  // Where its package keeps it, whether this file runs by itself or in a bundle.
  const highs = await load({ locateFile: (file) => join(process.cwd(), 'node_modules', 'highs', 'build', file) });
  const { Status: status, ObjectiveValue: value } = highs.solve(program, { time_limit: seconds, mip_rel_gap: 0 });
  return { status, value };
}

interface Program {
  readonly costs: string[];
  readonly rows: string[];
  readonly whole: string[];
  readonly yesNo: string[];
}

function asText({ costs, rows, whole, yesNo }: Program): string {
  const named = rows.map((row, k) => `c${k}: ${row}`);
  const part = (head: string, names: readonly string[]) => (names.length === 0 ? [] : [head, names.join('\n')]);
  return [
    'Minimize',
    `cost: ${costs.join('\n')}`,
    'Subject To',
    ...named,
    ...part('General', whole),
    ...part('Binary', yesNo),
    'End',
  ].join('\n');
}

const signed = (factor: number, name: string): string => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`;

/** The cheapest whole order. Packs fifty times the need and more are left out where a smaller one is sold. */
export function orderProgram({ needs, offers, suppliers }: OrderQuestion): string {
  const program: Program = { costs: [], rows: [], whole: [], yesNo: [] };
  const bought = offers.flatMap((offer, k) => {
    const need = needs[offer.need] ?? 0;
    const tooLarge = offer.size >= 50 * need && offers.some((one) => one.need === offer.need && one.size < 50 * need);
    return tooLarge ? [] : [{ ...offer, name: `n${k}` }];
  });
  for (const { name, price } of bought) {
    program.costs.push(signed(price, name));
    program.whole.push(name);
  }
  needs.forEach((need, v) => {
    const own = bought.filter((offer) => offer.need === v);
    if (own.length > 0) program.rows.push(`${own.map(({ size, name }) => signed(size, name)).join(' ')} >= ${need}`);
  });
  suppliers.forEach(({ postage, freeFrom, least }, s) => {
    const own = bought.filter((offer) => offer.supplier === s);
    if (own.length === 0) return;
    const goods = own.map(({ price, name }) => signed(price, name)).join(' ');
    program.yesNo.push(`u${s}`, `f${s}`);
    program.costs.push(signed(postage, `u${s}`), signed(-postage, `f${s}`));
    for (const { name, size, need } of own) {
      const most = Math.ceil((needs[need] ?? 0) / size) + 1000;
      program.rows.push(`${signed(1, name)} ${signed(-most, `u${s}`)} <= 0`);
    }
    program.rows.push(`${goods} ${signed(-least, `u${s}`)} >= 0`, `u${s} - f${s} >= 0`);
    program.rows.push(freeFrom === undefined ? `f${s} <= 0` : `${goods} ${signed(-freeFrom, `f${s}`)} >= 0`);
  });
  return asText(program);
}

/** The best plan of beds: lengths never over a bed's, then the costs of PLAN_COSTS. */
export function bedProgram(question: BedQuestion): string {
  const { beds, plantings } = question;
  const { allowed } = new BedPlan(question);
  const program: Program = { costs: [], rows: [], whole: [], yesNo: [] };
  const at = (p: number, b: number): string => `x${p}_${b}`;
  const may = (p: number, b: number): boolean => allowed[p]?.includes(b) === true;
  /** What of a planting stands on a bed: the planting there, or a wide one on the bed before. */
  const standing = (p: number, b: number): readonly string[] => [
    ...(may(p, b) ? [at(p, b)] : []),
    ...((plantings[p]?.across ?? 1) > 1 && may(p, b - 1) ? [at(p, b - 1)] : []),
  ];
  plantings.forEach(({ width, fixed }, p) => {
    const places = [...(allowed[p] ?? [])];
    program.yesNo.push(...places.map((b) => at(p, b)), `y${p}`);
    program.rows.push(`${[...places.map((b) => at(p, b)), `y${p}`].join(' + ')} = 1`);
    if (fixed !== undefined) program.rows.push(`y${p} <= 0`);
    program.costs.push(signed(PLAN_COSTS.unplaced, `y${p}`));
    for (const b of places) {
      if (Math.abs((beds[b]?.width ?? 0) - width) > 1e-6) program.costs.push(signed(PLAN_COSTS.width, at(p, b)));
    }
  });
  beds.forEach(({ length }, b) => {
    for (const { from: day } of plantings) {
      const there = plantings.flatMap((planting, p) =>
        planting.from <= day && day < planting.until ? [{ ...planting, p }] : [],
      );
      const load = there.flatMap(({ p, length: long }) => standing(p, b).map((name) => signed(long, name)));
      const fixed = there.reduce(
        (sum, { p, fixed: bed, length: long }) => (bed !== undefined && standing(p, b).length > 0 ? sum + long : sum),
        0,
      );
      if (load.length > 0) program.rows.push(`${load.join(' ')} <= ${Math.max(length, fixed)}`);
    }
    plantings.forEach((one, p) => {
      plantings.forEach((other, q) => {
        const overlap = one.from < other.until && other.from < one.until;
        if (q <= p || one.family === '' || one.family !== other.family || overlap) return;
        const [mine, theirs] = [standing(p, b), standing(q, b)];
        if (mine.length === 0 || theirs.length === 0) return;
        const name = `r${p}_${q}_${b}`;
        program.yesNo.push(name);
        program.costs.push(signed(PLAN_COSTS.repeat, name));
        program.rows.push(`${[...mine, ...theirs].join(' + ')} - ${name} <= 1`);
      });
    });
  });
  for (const crop of new Set(plantings.map((planting) => planting.crop))) fieldsOf(crop, question, allowed, program);
  return asText(program);
}

/** Each field beyond the first that a crop is spread over. */
function fieldsOf(
  crop: string,
  { beds, plantings }: BedQuestion,
  allowed: readonly Int32Array[],
  program: Program,
): void {
  const key = `${program.yesNo.length}`;
  const fields = [...new Set(beds.map(({ field }) => field))].map((field, k) => ({ field, name: `z${key}_${k}` }));
  program.yesNo.push(...fields.map(({ name }) => name), `w${key}`);
  program.costs.push(...fields.map(({ name }) => signed(PLAN_COSTS.field, name)), signed(-PLAN_COSTS.field, `w${key}`));
  program.rows.push(`${fields.map(({ name }) => name).join(' + ')} - w${key} >= 0`);
  plantings.forEach((planting, p) => {
    if (planting.crop !== crop) return;
    for (const b of allowed[p] ?? []) {
      const name = fields.find(({ field }) => field === beds[b]?.field)?.name ?? '';
      program.rows.push(`${name} - x${p}_${b} >= 0`);
    }
  });
}
