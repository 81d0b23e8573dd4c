// The Sources sheet: for every model its equation, where it holds and who published it. Filled from the lists that stand
// beside the models; a grower adds own ones.

import { MODEL_SOURCES, type SheetDeclaration } from '../engine/index.ts';
import { choice, entered, group, TEXT } from './authoring.ts';

export const sourcesSheet: SheetDeclaration = {
  id: 'sources',
  name: 'Sources',
  question: 'About',
  about: 'Where the figures come from. Outside the range of a model its cells say so instead of guessing.',
  rows: { from: 'entry' },
  key: 'model',
  columns: [
    ...group(
      'Model',
      entered('model', 'Model', TEXT, { required: true }),
      entered('gives', 'Gives', TEXT),
      entered('equation', 'Equation', TEXT),
      entered('range', 'Range', TEXT),
      entered('source', 'Source', TEXT),
      entered('standing', 'Standing', choice('published', 'common practice', 'memory')),
    ),
  ],
  checks: [],
  cautions: [],
};

export const SOURCE_ROWS: readonly Readonly<Record<string, string>>[] = MODEL_SOURCES.map((one) => ({
  Model: one.model,
  Gives: one.gives,
  Equation: one.equation,
  Range: one.range,
  Source: one.source,
  Standing: one.standing,
}));
