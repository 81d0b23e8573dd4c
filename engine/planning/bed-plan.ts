// Which planting goes on which bed: what is asked and what it costs, and a plan that is changed one planting at a time with its
// cost kept up to date. The search stands in bed-search.ts. Pure: lengths in one unit, dates in days; calls nothing.

/** A bed with what stood on it. */
export interface PlanBed {
  readonly length: number;
  readonly width: number;
  /** Beds of one field stand together. */
  readonly field: string;
  /** Families of last year, two years ago and so on, 'Apiaceae, Asteraceae' where several stood there; '' where none is known. */
  readonly families: readonly string[];
}

/** A planting that wants a bed, or has one that is not to be changed. */
export interface PlanPlanting {
  readonly length: number;
  readonly width: number;
  /** First day in the bed, and the day from which the bed is free again. */
  readonly from: number;
  readonly until: number;
  readonly crop: string;
  readonly family: string;
  /** Years before the family comes back to a bed. */
  readonly rotationYears: number;
  /** Beds side by side that it covers: 1 or 2. */
  readonly across: number;
  /** The number of the bed it stands on whatever the plan; undefined: to be placed. */
  readonly fixed?: number;
}

export interface BedQuestion {
  readonly beds: readonly PlanBed[];
  readonly plantings: readonly PlanPlanting[];
}

/**
 * What a plan costs: a planting without a bed far more than all else; then each further field that a crop is spread over, a
 * family twice on a bed in one season, and a bed of another width than the planting was reckoned for.
 */
export const PLAN_COSTS = { unplaced: 1000, field: 10, repeat: 4, width: 1 } as const;

export const NO_BED = -1;
const DUST = 1e-6;

/** Whether a family may come to a bed again, by what stood there in earlier years; a planting whose family is not known may. */
export function isRotated({ family, rotationYears }: PlanPlanting, { families }: PlanBed): boolean {
  return (
    family === '' || !families.some((before, year) => year + 1 < rotationYears && before.split(', ').includes(family))
  );
}

function overlap(a: PlanPlanting, b: PlanPlanting): boolean {
  return a.from < b.until && b.from < a.until;
}

/** A plan under way: plantings on beds, never too full, with its cost. */
export class BedPlan {
  readonly question: BedQuestion;
  /** The bed of each planting; NO_BED where it has none. */
  readonly bedOf: Int32Array;
  /** Beds on which each planting may stand at all, in order; of a wide one the first of the two. */
  readonly allowed: readonly Int32Array[];
  cost = 0;
  readonly #on: number[][];
  readonly #fields: Map<string, Map<string, number>> = new Map();

  constructor(question: BedQuestion) {
    this.question = question;
    this.bedOf = new Int32Array(question.plantings.length).fill(NO_BED);
    this.#on = question.beds.map(() => []);
    this.allowed = question.plantings.map((planting) => this.#allowedFor(planting));
    this.cost = question.plantings.length * PLAN_COSTS.unplaced;
    question.plantings.forEach(({ fixed }, p) => {
      if (fixed !== undefined) this.place(p, fixed);
    });
  }

  #allowedFor(planting: PlanPlanting): Int32Array {
    const { beds } = this.question;
    if (planting.fixed !== undefined) return Int32Array.of(planting.fixed);
    const fits = (b: number): boolean => {
      const bed = beds[b];
      return bed !== undefined && planting.length <= bed.length + DUST && isRotated(planting, bed);
    };
    return Int32Array.from(beds.keys()).filter((b) => {
      if (!fits(b)) return false;
      return planting.across < 2 || (fits(b + 1) && beds[b + 1]?.field === beds[b]?.field);
    });
  }

  /** The beds that a planting takes when its first is this one. */
  #covered(p: number, bed: number): readonly number[] {
    const planting = this.question.plantings[p] as PlanPlanting;
    return planting.across > 1 && bed + 1 < this.#on.length ? [bed, bed + 1] : [bed];
  }

  /** Plantings on a bed. */
  on(bed: number): readonly number[] {
    return this.#on[bed] ?? [];
  }

  /** Whether there is room on a bed for a planting through all its days. */
  hasRoom(p: number, bed: number): boolean {
    return this.#covered(p, bed).every((one) => this.#hasRoomOn(p, one));
  }

  #hasRoomOn(p: number, bed: number): boolean {
    const planting = this.question.plantings[p] as PlanPlanting;
    const { length } = this.question.beds[bed] as PlanBed;
    const there = this.#on[bed] as number[];
    // A bed is fullest on a day on which something goes in.
    const load = (day: number): number => {
      let sum = planting.length;
      for (const q of there) {
        const other = this.question.plantings[q] as PlanPlanting;
        if (q !== p && other.from <= day && day < other.until) sum += other.length;
      }
      return sum;
    };
    if (load(planting.from) > length + DUST) return false;
    for (const q of there) {
      const { from } = this.question.plantings[q] as PlanPlanting;
      if (q !== p && from > planting.from && from < planting.until && load(from) > length + DUST) return false;
    }
    return true;
  }

  /** What the cost becomes more when an unplaced planting goes on a bed. */
  costOf(p: number, bed: number): number {
    const planting = this.question.plantings[p] as PlanPlanting;
    let cost = -PLAN_COSTS.unplaced;
    for (const one of this.#covered(p, bed)) cost += this.#repeats(p, one) * PLAN_COSTS.repeat;
    const { field, width } = this.question.beds[bed] as PlanBed;
    if (Math.abs(width - planting.width) > DUST) cost += PLAN_COSTS.width;
    const fields = this.#fields.get(planting.crop);
    if (fields !== undefined && fields.size > 0 && !fields.has(field)) cost += PLAN_COSTS.field;
    return cost;
  }

  #repeats(p: number, bed: number): number {
    const planting = this.question.plantings[p] as PlanPlanting;
    if (planting.family === '') return 0;
    let count = 0;
    for (const q of this.#on[bed] as number[]) {
      const other = this.question.plantings[q] as PlanPlanting;
      if (q !== p && other.family === planting.family && !overlap(planting, other)) count += 1;
    }
    return count;
  }

  place(p: number, bed: number): void {
    this.cost += this.costOf(p, bed);
    for (const one of this.#covered(p, bed)) this.#on[one]?.push(p);
    this.bedOf[p] = bed;
    const { crop } = this.question.plantings[p] as PlanPlanting;
    const fields = this.#fields.get(crop) ?? new Map<string, number>();
    this.#fields.set(crop, fields);
    const { field } = this.question.beds[bed] as PlanBed;
    fields.set(field, (fields.get(field) ?? 0) + 1);
  }

  /** Takes a planting off its bed. */
  lift(p: number): void {
    const bed = this.bedOf[p] ?? NO_BED;
    if (bed === NO_BED) return;
    for (const one of this.#covered(p, bed)) {
      const there = this.#on[one] as number[];
      there.splice(there.indexOf(p), 1);
    }
    this.bedOf[p] = NO_BED;
    const { crop } = this.question.plantings[p] as PlanPlanting;
    const { field } = this.question.beds[bed] as PlanBed;
    const fields = this.#fields.get(crop) as Map<string, number>;
    const left = (fields.get(field) ?? 0) - 1;
    if (left === 0) fields.delete(field);
    else fields.set(field, left);
    this.cost -= this.costOf(p, bed);
  }
}

/** The cost of a plan, reckoned from the beginning: what BedPlan keeps up to date. */
export function costOfPlan(question: BedQuestion, bedOf: ArrayLike<number>): number {
  const plan = new BedPlan(question);
  question.plantings.forEach(({ fixed }, p) => {
    const bed = bedOf[p] ?? NO_BED;
    if (fixed === undefined && bed !== NO_BED) plan.place(p, bed);
  });
  return plan.cost;
}

/** 'full': on none of the beds long enough; 'no room': on none of those to which its family may come back. */
export type NotPlaced = 'longer than any bed' | 'rotation' | 'no room' | 'full' | 'no dates';

/** Why a planting without a bed has none. */
export function whyNotPlaced(plan: BedPlan, p: number): NotPlaced {
  const planting = plan.question.plantings[p] as PlanPlanting;
  if (!(planting.until > planting.from)) return 'no dates';
  const longEnough = plan.question.beds.filter(({ length }) => planting.length <= length + DUST);
  if (longEnough.length === 0) return 'longer than any bed';
  if (longEnough.every((bed) => isRotated(planting, bed))) return 'full';
  return (plan.allowed[p]?.length ?? 0) === 0 ? 'rotation' : 'no room';
}
