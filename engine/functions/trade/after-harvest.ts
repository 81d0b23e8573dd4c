// From the field to the racks as functions: curing loss, racks, containers, air. Models stand in agronomy/curing.ts; read
// by trade/index.ts.

import {
  airflow,
  CURING_CONDITIONS,
  CURING_LIMITS,
  containersForMass,
  curedMass,
  freshForCured,
  measuredLoss,
  rackArea,
} from '../../agronomy/curing.ts';
import { canonicalUnit } from '../../units/arithmetic.ts';
import { divideDimensions, NONE, TIME, VOLUME } from '../../units/dimension.ts';
import type { FunctionDefinition } from '../definition.ts';
import {
  KILOGRAM,
  length,
  MASS_PER_VOLUME,
  mass,
  numeric,
  PLAIN,
  plain,
  quantity,
  SHARE,
  SQUARE_METRE,
  scalar,
  text,
} from './build.ts';

const CURING = 'Maw & Mullinix 2005, Postharvest Biology and Technology 35:223-227';
const RACKS =
  'Kitinoja & Kader, Small-scale postharvest handling practices, FAO; bulk density 390 to 679 kg/m3: Abhayawick et al.';
const FLOW = divideDimensions(NONE, TIME);
const AIR = divideDimensions(VOLUME, TIME);

const LOSS = plain('loss', { limit: CURING_LIMITS.loss });
const BULK_DENSITY = quantity('bulk_density', MASS_PER_VOLUME, { limit: CURING_LIMITS.bulkDensity });

/** 'Onion, bulb' cures as Onion, 'Sweet potato' as itself. */
function conditionsOf(crop: string): string | null {
  const row =
    CURING_CONDITIONS.find((one) => one.crop === crop) ??
    CURING_CONDITIONS.find((one) => one.crop === crop.split(',')[0]);
  if (row === undefined) return null;
  const [warm, warmest] = row.temperature;
  const [dry, damp] = row.humidity.map((share) => Math.round(share * 100));
  const air = dry === damp ? `${dry} %` : `${dry} to ${damp} %`;
  return `${warm} to ${warmest} degC, ${air} humidity, ${row.days[0]} to ${row.days[1]} days`;
}

export const AFTER_HARVEST: readonly FunctionDefinition[] = [
  numeric(
    {
      name: 'CUREDMASS',
      group: 'after harvest',
      parameters: [mass('fresh'), LOSS],
      gives: KILOGRAM,
      doc: 'Mass left after curing: fresh x (1 - loss).',
      source: CURING,
    },
    curedMass,
  ),
  numeric(
    {
      name: 'FRESHFORCURED',
      group: 'after harvest',
      parameters: [mass('cured'), LOSS],
      gives: KILOGRAM,
      doc: 'Fresh mass to harvest for a cured mass.',
      source: CURING,
    },
    freshForCured,
  ),
  numeric(
    {
      name: 'CURINGLOSS',
      group: 'after harvest',
      parameters: [mass('fresh'), mass('now')],
      gives: SHARE,
      doc: 'Share of mass lost, from what was weighed fresh and weighs now; blank where it weighs more than it did.',
      source: 'Arithmetic',
    },
    measuredLoss,
  ),
  scalar(
    {
      name: 'CURINGCONDITIONS',
      group: 'after harvest',
      parameters: [text('crop')],
      result: { is: 'text' },
      doc: 'Warmth, humidity and days in which a crop cures; blank where none are published.',
      source:
        'University of Massachusetts Extension; Oregon State University; Kitinoja & Kader, Small-scale postharvest handling practices, FAO',
    },
    ([crop]) => (typeof crop === 'string' ? conditionsOf(crop) : null),
  ),
  numeric(
    {
      name: 'RACKAREA',
      group: 'after harvest',
      parameters: [mass('mass'), BULK_DENSITY, length('depth')],
      gives: SQUARE_METRE,
      doc: 'Rack or floor for a mass spread so deep: mass / (bulk density x depth).',
      source: RACKS,
    },
    rackArea,
  ),
  numeric(
    {
      name: 'CONTAINERS',
      group: 'after harvest',
      parameters: [mass('mass'), BULK_DENSITY, quantity('volume', VOLUME), plain('fill', { optional: true })],
      gives: PLAIN,
      doc: 'Containers for a mass, each of a volume filled to a share of it (all, where left out); the last perhaps part filled.',
      source: RACKS,
    },
    (held = Number.NaN, density = Number.NaN, volume = Number.NaN, fill = Number.NaN) =>
      containersForMass(held, density, volume, Number.isNaN(fill) ? 1 : fill),
  ),
  numeric(
    {
      name: 'CURINGAIR',
      group: 'after harvest',
      parameters: [mass('mass'), BULK_DENSITY, quantity('flow_per_volume', FLOW)],
      gives: canonicalUnit(AIR),
      doc: 'Air a batch wants: its bulk volume x changes of air in a time (onions 2 to 3 a minute when curing, 0.25 to 0.5 in store).',
      source: 'Cornell Cooperative Extension, VegEdge 8(25)',
    },
    airflow,
  ),
];
