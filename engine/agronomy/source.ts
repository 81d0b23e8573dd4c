// What the "Sources" page says of a model: its equation, where it holds and who published it.

export interface ModelSource {
  readonly model: string;
  /** What a grower gets from it, in a few words. */
  readonly gives: string;
  readonly equation: string;
  readonly range: string;
  /** Author, year, title or journal. */
  readonly source: string;
  readonly standing: 'published' | 'common practice' | 'memory';
}
