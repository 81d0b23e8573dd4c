// What a trial of faults is and how it is counted. `npm run faults` (main.ts) runs the trials of list.ts at full length; tests run
// a small share of each.

/** How often something was tried, and how often it went wrong, each time with what it was. */
export interface Outcome {
  readonly tried: number;
  /** Something was thrown, or the program ended by itself. */
  readonly crashed: number;
  /** It took longer than it may. */
  readonly hung: number;
  /** Something that was to be kept is gone, or something wrong was taken without a word. */
  readonly lost: number;
  /** The first few of what went wrong, in a sentence each. */
  readonly examples: readonly string[];
}

export interface Trial {
  /** A short word: `npm run faults -- files`. */
  readonly name: string;
  /** What is tried, for the table. */
  readonly about: string;
  /** How often, at full length. */
  readonly full: number;
  /** Tries so often; `tell` hears how many were tried so far. */
  run(count: number, tell?: (tried: number) => void): Promise<Outcome>;
}

/** Processor time, in milliseconds, that one try may take: on a busy machine the clock would tell of others' work. */
const LONGEST = 1000;
const MOST_EXAMPLES = 20;

/** Counts tries made in this process. */
export class Tally {
  #tried = 0;
  #crashed = 0;
  #hung = 0;
  #lost = 0;
  readonly #examples: string[] = [];
  readonly #tell: ((tried: number) => void) | undefined;

  constructor(tell?: (tried: number) => void) {
    this.#tell = tell;
  }

  /** One try: what `work` throws is a crash, a sentence that it gives is a loss, too much of the processor's time a hang. */
  async try(
    what: string,
    work: () => string | undefined | Promise<string | undefined>,
    longest = LONGEST,
  ): Promise<void> {
    this.#tried += 1;
    const before = process.cpuUsage();
    try {
      const wrong = await work();
      if (wrong !== undefined) this.lost(what, wrong);
    } catch (thrown) {
      this.#crashed += 1;
      this.#note(`${what}: crashed: ${thrown instanceof Error ? thrown.message : String(thrown)}`);
    }
    const spent = process.cpuUsage(before);
    const milliseconds = (spent.user + spent.system) / 1000;
    if (milliseconds > longest) this.hung(what, `${Math.round(milliseconds)} ms`);
    if (this.#tried % 100 === 0) this.tell();
  }

  /** Says how many were tried so far. */
  tell(): void {
    this.#tell?.(this.#tried);
  }

  /** So many tries, counted by whoever makes them. */
  tried(count = 1): void {
    this.#tried += count;
    this.tell();
  }

  crashed(what: string, how: string): void {
    this.#crashed += 1;
    this.#note(`${what}: crashed: ${how}`);
  }

  hung(what: string, how: string): void {
    this.#hung += 1;
    this.#note(`${what}: hung: ${how}`);
  }

  lost(what: string, how: string): void {
    this.#lost += 1;
    this.#note(`${what}: lost: ${how}`);
  }

  #note(example: string): void {
    if (this.#examples.length < MOST_EXAMPLES) this.#examples.push(example.slice(0, 600));
  }

  outcome(): Outcome {
    return {
      tried: this.#tried,
      crashed: this.#crashed,
      hung: this.#hung,
      lost: this.#lost,
      examples: this.#examples,
    };
  }
}

/** Nothing but tries. */
export function isClean({ crashed, hung, lost }: Outcome): boolean {
  return crashed === 0 && hung === 0 && lost === 0;
}

/** Whether a sentence can be put before a person: it ends as one and holds no word of a programmer's. */
export function isSentence(text: string): boolean {
  return /\S.*[.?)]$/s.test(text) && !/\b(?:undefined|NaN|\[object|TypeError|RangeError|stack)\b/.test(text);
}
