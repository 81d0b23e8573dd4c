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

/** Beds on which each planting may stand at all. What a family may follow is looked up once for all plantings that ask the same. */
function allowedBeds({ beds, plantings }: BedQuestion): readonly Int32Array[] {
  const known = new Map<string, readonly boolean[]>();
  const rotated = (planting: PlanPlanting): readonly boolean[] => {
    const key = `${planting.rotationYears} ${planting.family}`;
    const there = known.get(key) ?? beds.map((bed) => isRotated(planting, bed));
    known.set(key, there);
    return there;
  };
  const numbers = Int32Array.from(beds.keys());
  return plantings.map((planting) => {
    if (planting.fixed !== undefined) return Int32Array.of(planting.fixed);
    const mayCome = rotated(planting);
    const fits = (b: number): boolean => mayCome[b] === true && planting.length <= (beds[b]?.length ?? 0) + DUST;
    return numbers.filter(
      (b) => fits(b) && (planting.across < 2 || (fits(b + 1) && beds[b + 1]?.field === beds[b]?.field)),
    );
  });
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
  /** Figures of each planting side by side: a search looks at them some thousand million times. */
  readonly #lengths: Float64Array;
  readonly #from: Float64Array;
  readonly #until: Float64Array;
  /** Families by number, 0 for one that is not known. */
  readonly #families: Int32Array;

  constructor(question: BedQuestion) {
    this.question = question;
    const { plantings } = question;
    this.bedOf = new Int32Array(plantings.length).fill(NO_BED);
    this.#on = question.beds.map(() => []);
    this.#lengths = Float64Array.from(plantings, ({ length }) => length);
    this.#from = Float64Array.from(plantings, ({ from }) => from);
    this.#until = Float64Array.from(plantings, ({ until }) => until);
    const numbers = new Map([['', 0]]);
    this.#families = Int32Array.from(plantings, ({ family }) => {
      const number = numbers.get(family) ?? numbers.size;
      numbers.set(family, number);
      return number;
    });
    this.allowed = allowedBeds(question);
    this.cost = plantings.length * PLAN_COSTS.unplaced;
    plantings.forEach(({ fixed }, p) => {
      if (fixed !== undefined) this.place(p, fixed);
    });
  }

  /** Whether a planting takes the bed beside its first as well. */
  #isWide(p: number, bed: number): boolean {
    const planting = this.question.plantings[p] as PlanPlanting;
    return planting.across > 1 && bed + 1 < this.#on.length;
  }

  /** The beds that a planting takes when its first is this one. */
  #covered(p: number, bed: number): readonly number[] {
    return this.#isWide(p, bed) ? [bed, bed + 1] : [bed];
  }

  /** Plantings on a bed. */
  on(bed: number): readonly number[] {
    return this.#on[bed] ?? [];
  }

  /** Whether there is room on a bed for a planting through all its days. */
  hasRoom(p: number, bed: number): boolean {
    return this.#hasRoomOn(p, bed) && (!this.#isWide(p, bed) || this.#hasRoomOn(p, bed + 1));
  }

  #hasRoomOn(p: number, bed: number): boolean {
    const most = (this.question.beds[bed] as PlanBed).length + DUST;
    const there = this.#on[bed] as number[];
    const [first, free] = [this.#from[p] as number, this.#until[p] as number];
    if (this.#load(p, there, first) > most) return false;
    // A bed is fullest on a day on which something goes in.
    for (const q of there) {
      const from = this.#from[q] as number;
      if (q !== p && from > first && from < free && this.#load(p, there, from) > most) return false;
    }
    return true;
  }

  /** The length that is taken on a day by a planting and those that are there. */
  #load(p: number, there: readonly number[], day: number): number {
    let sum = this.#lengths[p] as number;
    for (const q of there) {
      if (q !== p && (this.#from[q] as number) <= day && day < (this.#until[q] as number))
        sum += this.#lengths[q] as number;
    }
    return sum;
  }

  /** What the cost becomes more when an unplaced planting goes on a bed. */
  costOf(p: number, bed: number): number {
    const planting = this.question.plantings[p] as PlanPlanting;
    let cost = this.#repeats(p, bed) * PLAN_COSTS.repeat - PLAN_COSTS.unplaced;
    if (this.#isWide(p, bed)) cost += this.#repeats(p, bed + 1) * PLAN_COSTS.repeat;
    const { field, width } = this.question.beds[bed] as PlanBed;
    if (Math.abs(width - planting.width) > DUST) cost += PLAN_COSTS.width;
    const fields = this.#fields.get(planting.crop);
    if (fields !== undefined && fields.size > 0 && !fields.has(field)) cost += PLAN_COSTS.field;
    return cost;
  }

  /** Others of its family on a bed that stand there at another time of the season. */
  #repeats(p: number, bed: number): number {
    const family = this.#families[p];
    if (family === 0) return 0;
    const [from, until] = [this.#from[p] as number, this.#until[p] as number];
    let count = 0;
    for (const q of this.#on[bed] as number[]) {
      if (q === p || this.#families[q] !== family) continue;
      if (!(from < (this.#until[q] as number) && (this.#from[q] as number) < until)) count += 1;
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
