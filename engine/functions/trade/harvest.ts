// The harvest of one planting spread over its window, and what onions lose by bulbing with little leaf, as functions. Models
// stand in agronomy/; read by trade/index.ts.

import { BULB_LIGHT_LIMITS, bulbYieldFactor } from '../../agronomy/bulb-light.ts';
import { cutShare, HARVEST_CURVE_LIMITS, harvestedShare } from '../../agronomy/harvest-curve.ts';
import { dear } from '../build.ts';
import type { FunctionDefinition } from '../definition.ts';
import { days, degreeDays, numeric, plain, SHARE } from './build.ts';

export const HARVEST: readonly FunctionDefinition[] = [
  dear(
    numeric(
      {
        name: 'HARVESTED',
        group: 'after harvest',
        parameters: [
          days('since_first'),
          days('window'),
          plain('middle', { limit: HARVEST_CURVE_LIMITS.middle }),
          plain('spread', { limit: HARVEST_CURVE_LIMITS.spread }),
        ],
        gives: SHARE,
        doc: 'Share of a planting picked by a time after the first picking: a logistic curve over the window, its middle and spread as shares of it.',
        source:
          'Logistic yield over pickings: Ciencia Rural 46(2):233, 2016; fitted to weighed pickings of Lendway 2020-21',
      },
      harvestedShare,
    ),
  ),
  numeric(
    {
      name: 'CUTS',
      group: 'after harvest',
      parameters: [
        days('since_first'),
        days('between'),
        plain('second', { limit: HARVEST_CURVE_LIMITS.cut }),
        plain('third', { limit: HARVEST_CURVE_LIMITS.cut }),
      ],
      gives: SHARE,
      doc: 'Share of a planting cut by a time after the first cut, with a second and third cut as shares of the first.',
      source: 'Common practice',
    },
    cutShare,
  ),
  numeric(
    {
      name: 'BULBLIGHT',
      group: 'light and climate',
      parameters: [degreeDays('leaf_growth', { limit: BULB_LIGHT_LIMITS.leafGrowth })],
      gives: SHARE,
      doc: 'Yield of bulb onions over the usual one, by the leaf growth (degree-days 6 to 20 degC) when bulbing starts: the light they catch while bulbs fill.',
      source:
        'Goudriaan & Monteith 1990, Annals of Botany 66:695-701; Brewster 2008, Onions and Other Vegetable Alliums, eq 4.17a and Table 4.2',
    },
    bulbYieldFactor,
  ),
];
