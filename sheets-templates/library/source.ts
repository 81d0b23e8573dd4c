// A publication that figures of the crop library come from, or one of the two standings without one. The sources-*.ts
// files name the publications; the family files put them beside the figures.

export interface Source {
  /** What a reader sees. */
  readonly cite: string;
  /** Whose figure it is where it was taken over from a relative; '' where it is the crop's own. */
  readonly note: string;
}

export function source(cite: string): Source {
  return { cite, note: '' };
}

export const MEMORY = source('memory');
export const PRACTICE = source('common practice');

/** A figure taken over from a related crop: recalled for this one. */
export function asFor(crop: string): Source {
  return { cite: MEMORY.cite, note: `as for ${crop}` };
}

/** A figure that two or more sources bound together. */
export function both(...sources: readonly Source[]): Source {
  return source(sources.map(({ cite }) => cite).join('; '));
}
