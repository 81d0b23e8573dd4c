// The figures of a fitted yield curve one by one, as templates asked for them before FIT answered with all of them at once.

import type { FunctionDefinition } from '../definition.ts';
import { GRAM } from '../trade/build.ts';
import { TRIALS } from '../trade/trials.ts';
import { figureOf } from './figure-of.ts';

const FITTED: readonly (readonly [name: string, from: string, figure: string])[] = [
  ['FITPLOTS', 'FIT', 'Plots'],
  ['FITISOLATED', 'FIT', 'Isolated mass'],
  ['FITISOLATEDERROR', 'FIT', 'Isolated mass error'],
  ['FITCEILING', 'FIT', 'Ceiling yield'],
  ['FITCEILINGERROR', 'FIT', 'Ceiling yield error'],
  ['FITSPREAD', 'FIT', 'Scatter'],
  ['FITSAYS', 'FIT', 'No curve because'],
  ['FITA', 'FIT', 'a'],
  ['FITAERROR', 'FIT', 'a error'],
  ['FITB', 'FIT', 'b'],
  ['FITBERROR', 'FIT', 'b error'],
  ['FITTHETA', 'FITGENERAL', 'Theta'],
  ['FITTHETAERROR', 'FITGENERAL', 'Theta error'],
  ['FITMASS', 'FITAT', 'Mass'],
];

export const FORMER_FITS: readonly FunctionDefinition[] = FITTED.flatMap(([name, from, figure]) => {
  const definition = TRIALS.find(({ signature }) => signature.name === from);
  return definition === undefined ? [] : [figureOf(name, definition, figure, GRAM)];
});
