// Looks for a good bed for every planting: first one after another, the largest first, each on the bed where it costs least;
// then by small changes, worse ones taken less and less often (Kirkpatrick, Gelatt & Vecchi 1983, Optimization by Simulated
// Annealing, Science 220: 671-680). Works in slices, so that a page stays awake and a person can stop it; the same
// numbers handed in give the same plan.

import { BedPlan, type BedQuestion, NO_BED } from './bed-plan.ts';

/** Changes tried where no other number is asked; enough for 200 plantings on 60 beds in less than two seconds. */
export const BED_CHANGES = 300_000;

const WARMEST = 12;
const COLDEST = 0.2;

export class BedSearch {
  readonly #plan: BedPlan;
  readonly #random: () => number;
  readonly #changes: number;
  readonly #movable: Int32Array;
  #done = 0;
  #best: Int32Array;
  #bestCost: number;

  constructor(question: BedQuestion, random: () => number, changes = BED_CHANGES) {
    this.#plan = new BedPlan(question);
    this.#random = random;
    this.#changes = changes;
    this.#movable = Int32Array.from(question.plantings.keys()).filter((p) => this.#isMovable(p));
    this.#placeAll();
    this.#best = this.#plan.bedOf.slice();
    this.#bestCost = this.#plan.cost;
  }

  #isMovable(p: number): boolean {
    const planting = this.#plan.question.plantings[p];
    if (planting === undefined || planting.fixed !== undefined) return false;
    return planting.until > planting.from && (this.#plan.allowed[p]?.length ?? 0) > 0;
  }

  /** From 0 to 1. */
  get progress(): number {
    return this.#movable.length === 0 ? 1 : Math.min(1, this.#done / this.#changes);
  }

  /** The bed of each planting in the best plan so far; NO_BED where none was found. */
  get beds(): Int32Array {
    return this.#best;
  }

  get cost(): number {
    return this.#bestCost;
  }

  /** Tries so many changes more; true once all are done. */
  step(changes: number): boolean {
    if (this.#movable.length === 0) return true;
    const until = Math.min(this.#changes, this.#done + changes);
    while (this.#done < until) {
      this.#change();
      this.#done += 1;
      if (this.#plan.cost < this.#bestCost - 1e-9) {
        this.#bestCost = this.#plan.cost;
        this.#best = this.#plan.bedOf.slice();
      }
    }
    return this.#done >= this.#changes;
  }

  /** Largest first, each where it costs least; of equal beds the one with the least left over. */
  #placeAll(): void {
    const { plantings, beds } = this.#plan.question;
    const size = (p: number): number => {
      const planting = plantings[p];
      return planting === undefined ? 0 : planting.length * planting.across * (planting.until - planting.from);
    };
    for (const p of [...this.#movable].sort((a, b) => size(b) - size(a) || a - b)) {
      let best = NO_BED;
      let least = Number.POSITIVE_INFINITY;
      for (const bed of this.#plan.allowed[p] ?? []) {
        if (!this.#plan.hasRoom(p, bed)) continue;
        const cost = this.#plan.costOf(p, bed) + (beds[bed]?.length ?? 0) * 1e-6 - this.#plan.on(bed).length * 1e-3;
        if (cost < least) [best, least] = [bed, cost];
      }
      if (best !== NO_BED) this.#plan.place(p, best);
    }
  }

  #pick(list: ArrayLike<number>): number {
    return list[Math.floor(this.#random() * list.length)] ?? NO_BED;
  }

  /** Colder and colder: how much worse a plan may become is taken less and less often. */
  #takes(worse: number): boolean {
    if (worse <= 0) return true;
    const warmth = WARMEST * (COLDEST / WARMEST) ** (this.#done / this.#changes);
    return this.#random() < Math.exp(-worse / warmth);
  }

  #change(): void {
    const p = this.#pick(this.#movable);
    const chance = this.#random();
    if (this.#plan.bedOf[p] === NO_BED || chance < 0.15) this.#makeRoom(p);
    else if (chance < 0.75) this.#move(p);
    else this.#exchange(p, this.#pick(this.#movable));
  }

  /** To another bed where there is room. */
  #move(p: number): void {
    const plan = this.#plan;
    const [from = NO_BED, to] = [plan.bedOf[p], this.#pick(plan.allowed[p] ?? [])];
    if (from === to) return;
    const before = plan.cost;
    plan.lift(p);
    if (plan.hasRoom(p, to)) {
      plan.place(p, to);
      if (this.#takes(plan.cost - before)) return;
      plan.lift(p);
    }
    plan.place(p, from);
  }

  /** Two plantings take each other's beds. */
  #exchange(p: number, q: number): void {
    const plan = this.#plan;
    const [one = NO_BED, other = NO_BED] = [plan.bedOf[p], plan.bedOf[q]];
    if (one === other || one === NO_BED || other === NO_BED) return;
    if (!(plan.allowed[p]?.includes(other) && plan.allowed[q]?.includes(one))) return;
    const before = plan.cost;
    plan.lift(p);
    plan.lift(q);
    if (plan.hasRoom(p, other)) {
      plan.place(p, other);
      if (plan.hasRoom(q, one)) {
        plan.place(q, one);
        if (this.#takes(plan.cost - before)) return;
        plan.lift(q);
      }
      plan.lift(p);
    }
    plan.place(p, one);
    plan.place(q, other);
  }

  /** Puts a planting on another bed, or on one at all, and finds others for those in its way; all back where that costs more. */
  #makeRoom(p: number): void {
    const plan = this.#plan;
    const from = plan.bedOf[p] ?? NO_BED;
    const bed = this.#pick(plan.allowed[p] ?? []);
    if (bed === from) return;
    const before = plan.cost;
    plan.lift(p);
    const moved = this.#clear(p, bed);
    if (moved !== undefined) {
      plan.place(p, bed);
      for (const [q] of moved) this.#placeSomewhere(q, bed);
      if (this.#takes(plan.cost - before)) return;
      for (const [q] of moved) plan.lift(q);
      plan.lift(p);
      for (const [q, home] of moved) plan.place(q, home);
    }
    if (from !== NO_BED) plan.place(p, from);
  }

  /** Lifts movable plantings off a bed until another has room; undefined, with all back, where they are not enough. */
  #clear(p: number, bed: number): readonly (readonly [planting: number, bed: number])[] | undefined {
    const plan = this.#plan;
    const { plantings } = plan.question;
    const lifted: (readonly [number, number])[] = [];
    if (plan.hasRoom(p, bed)) return lifted;
    const inTheWay = [...plan.on(bed), ...((plantings[p]?.across ?? 1) > 1 ? plan.on(bed + 1) : [])].filter(
      (q) => plantings[q]?.fixed === undefined && this.#meet(p, q),
    );
    for (const q of new Set(inTheWay)) {
      lifted.push([q, plan.bedOf[q] ?? NO_BED]);
      plan.lift(q);
      if (plan.hasRoom(p, bed)) return lifted;
    }
    for (const [q, from] of lifted) plan.place(q, from);
    return undefined;
  }

  #meet(p: number, q: number): boolean {
    const [one, other] = [this.#plan.question.plantings[p], this.#plan.question.plantings[q]];
    return one !== undefined && other !== undefined && one.from < other.until && other.from < one.until;
  }

  #placeSomewhere(p: number, not: number): void {
    const plan = this.#plan;
    const beds = plan.allowed[p] ?? [];
    const start = Math.floor(this.#random() * beds.length);
    for (let k = 0; k < beds.length; k += 1) {
      const bed = beds[(start + k) % beds.length] ?? NO_BED;
      if (bed !== not && plan.hasRoom(p, bed)) {
        plan.place(p, bed);
        return;
      }
    }
  }
}
