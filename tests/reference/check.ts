// What a reference check is: one fact from outside beside what Dibble computes, at one point or at many. The kind is told by the
// type: a published fact must say where it is printed, an independent program its name and version, arithmetic and common practice
// have no room for a publication. tests/reference/*.checks.ts hold the facts; README.md beside this file says how to add one.

/** Where something is printed, so that a stranger finds it. */
export interface Publication {
  /** Persons as in a list of references, or the body that publishes. */
  readonly author: string;
  /** The year of issue; in words where the page has none. */
  readonly year: number | `undated, ${string}`;
  readonly title: string;
  /** Publisher and place, or journal with volume and pages, or the site. */
  readonly publisher: string;
  readonly url?: `https://${string}`;
}

/** Another program that works the same thing out. */
export interface Program {
  readonly name: string;
  readonly version: string;
  /** The function, or what is done with it. */
  readonly call: string;
}

/** One figure: what stands outside, what Dibble computes, how far they may lie apart. */
export interface Point {
  /** The inputs, so that a reader can look the figure up. */
  readonly what: string;
  readonly given: number;
  readonly computed: () => number;
  /** Absolute, in the fact's unit; from the printed digits or the model's stated accuracy. */
  readonly tolerance: number;
  /** Where the model is known to be off: by how much at most, and why. It must then really be off, so that no such note outlives its cause. */
  readonly off?: { readonly upTo: number; readonly why: string };
}

interface Told {
  /** What is claimed, once; the points are where it is tried. */
  readonly fact: string;
  readonly unit: string;
  readonly points: readonly Point[];
}

/** A figure or table in print that the model did not take its constants from. */
export interface Published extends Told {
  readonly kind: 'published';
  readonly source: Publication;
  /** Page, table, figure, equation, example or section. */
  readonly at: string;
}

/** Worked out by an independent program, on data that may be published. */
export interface ByLibrary extends Told {
  readonly kind: 'library';
  readonly program: Program;
  readonly data?: Publication;
}

/** Published data to which the same curve was fitted by another program: the fit is nobody's publication. */
export interface Refitted extends Told {
  readonly kind: 're-fitted';
  readonly data: Publication;
  readonly at: string;
  readonly fittedBy: string;
}

/** A sum that anyone can do on paper; no publication can be claimed for it. */
export interface Arithmetic extends Told {
  readonly kind: 'arithmetic';
  readonly rule: string;
}

/** What growers commonly say, without a source. */
export interface CommonPractice extends Told {
  readonly kind: 'common practice';
  readonly practice: string;
}

export type Fact = Published | ByLibrary | Refitted | Arithmetic | CommonPractice;
export type Kind = Fact['kind'];

export const KINDS: readonly Kind[] = ['published', 'library', 're-fitted', 'arithmetic', 'common practice'];

/** 'Allen, R. G. & others 1998, Crop evapotranspiration, FAO, Rome'. */
export function citation({ author, year, title, publisher, url }: Publication): string {
  const where = url === undefined ? publisher : `${publisher}, ${url}`;
  return `${author}, ${year}. ${title}. ${where}`;
}

/** What a fact rests on, in words: its publication and page, its program, its rule. */
export function restsOn(fact: Fact): string {
  switch (fact.kind) {
    case 'published':
      return `${citation(fact.source)}; ${fact.at}`;
    case 'library': {
      const { name, version, call } = fact.program;
      const program = `${name} ${version}, ${call}`;
      return fact.data === undefined ? program : `${program}; data: ${citation(fact.data)}`;
    }
    case 're-fitted':
      return `${fact.fittedBy}; data: ${citation(fact.data)}; ${fact.at}`;
    case 'arithmetic':
      return fact.rule;
    case 'common practice':
      return fact.practice;
  }
}

export interface Verdict {
  readonly computed: number;
  readonly difference: number;
  /** 'agrees' within the tolerance; 'known to be off' where the point says so and is, by no more than it says. */
  readonly verdict: 'agrees' | 'known to be off' | 'FAILS';
}

/** Judges one point. A figure that is none never agrees. */
export function judge({ given, computed: compute, tolerance, off }: Point): Verdict {
  const computed = compute();
  const difference = computed - given;
  // A hair of slack keeps a difference that is equal to the tolerance on paper from failing in binary.
  const within = (limit: number): boolean => Math.abs(difference) <= limit * (1 + 1e-9);
  if (off === undefined) return { computed, difference, verdict: within(tolerance) ? 'agrees' : 'FAILS' };
  const reallyOff = !within(tolerance) && within(off.upTo);
  return { computed, difference, verdict: reallyOff ? 'known to be off' : 'FAILS' };
}
