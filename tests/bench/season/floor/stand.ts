// The floor, stand: planting places, what comes up, seed, trays and mix of each planting. Plain loops; the columns stand in
// planting-stand.ts of the templates.

import { germinationByStorageLife } from '../../../../engine/agronomy/seed-life.ts';
import { seedViability } from '../../../../engine/agronomy/seed-viability.ts';
import { offsetGain, offsetStations, stations as squareStations } from '../../../../engine/agronomy/spacing.ts';
import {
  blocksNeeded,
  emptyShare,
  meanPlants,
  plantsPerBlockDistribution,
  thinToMost,
} from '../../../../engine/agronomy/stand.ts';
import { tolerantCeil, tolerantRound } from '../../../../engine/values/tolerance.ts';
import {
  BLOCKS,
  CELLS,
  type Columns,
  columnIn,
  DEEP_TRAY,
  DIRECT,
  type Inputs,
  isBlank,
  most,
  NURSERY_BED,
  or,
  STARTS,
} from './inputs.ts';
import { FREEZING } from './year.ts';

const THIRTY_INCHES = 0.762;

/** What the later parts read of it. `work` works out some rows anew. */
export interface Stand {
  readonly start: Int8Array;
  readonly spacing: Float64Array;
  readonly plantedTyped: Float64Array;
  readonly newSeedGermination: Float64Array;
  work(from: number, to: number): void;
}

/** `sown` is worked out by the dates, which do not depend on the stand. */
export function standOf(inputs: Inputs, columns: Columns, sown: Float64Array): Stand {
  const { count, varietyOf, bedOf } = inputs;
  const usualStart = STARTS.map((start) => inputs.cropSays('usual-start', start));
  const typedStart = inputs.choice('start', STARTS);
  const start = Int8Array.from(typedStart, (typed, row) => {
    return typed >= 0 ? typed : usualStart.findIndex((says) => says[varietyOf[row] as number] === 1);
  });
  const typed = {
    lot: inputs.typed('seed-lot'),
    length: inputs.typed('bed-length-used'),
    rows: inputs.typed('rows'),
    spacing: inputs.typed('in-row-spacing'),
    seeds: inputs.typed('seeds-per-station'),
    offset: inputs.choice('pattern', ['offset']),
    nursery: inputs.typed('nursery-survival'),
    field: inputs.typed('field-survival'),
    thinTo: inputs.typed('thin-to'),
  };
  const lot = {
    tested: inputs.of('seed-lots', 'germination-when-tested'),
    agesFrom: inputs.of('seed-lots', 'ages-from'),
    moisture: inputs.of('seed-lots', 'moisture'),
    temperature: inputs.of('seed-lots', 'store-temperature'),
    byEquation: inputs.textsOf('seed-lots', 'method').map((method) => method === 'viability equation'),
  };
  const crop = {
    rows: inputs.crop('rows-per-bed'),
    spacing: inputs.crop('in-row-spacing'),
    clumpSpacing: inputs.crop('clump-in-row-spacing'),
    seedsPerBlock: inputs.crop('usual-seeds-per-block'),
    seedlings: inputs.crop('seedlings-per-seed'),
    field: inputs.crop('own-field-survival'),
    life: inputs.crop('seed-life'),
    ke: inputs.crop('ke'),
    cw: inputs.crop('cw'),
    ch: inputs.crop('ch'),
    cq: inputs.crop('cq'),
    pieceMass: inputs.crop('planted-piece-mass'),
  };
  const newSeedGermination = inputs.variety('germination');
  const bed = { width: inputs.of('beds', 'width'), length: inputs.of('beds', 'length') };
  const farm = {
    width: inputs.farm('bed-width'),
    confidence: inputs.farm('confidence'),
    spare: inputs.farm('spare-seed'),
    blocks: inputs.farm('blocks-in-block-tray'),
    cells: inputs.farm('cells-in-cell-tray'),
    loose: inputs.farm('seeds-in-deep-tray'),
    inNurseryBed: inputs.farm('seeds-in-a-nursery-bed'),
    blockVolume: inputs.farm('block-volume'),
    cellVolume: inputs.farm('cell-volume'),
    compaction: inputs.farm('mix-compaction'),
    deepMix: inputs.farm('mix-in-deep-tray'),
    blockArea: inputs.farm('block-tray-area'),
    cellArea: inputs.farm('cell-tray-area'),
    deepArea: inputs.farm('deep-tray-area'),
  };
  const column = (id: string): Float64Array => columnIn(columns, id, count);
  const out = {
    length: column('bed-length-used'),
    width: column('bed-width'),
    area: column('bed-area'),
    rows: column('rows'),
    usualSpacing: column('usual-spacing'),
    spacing: column('in-row-spacing'),
    rowSpacing: column('row-spacing'),
    stations: column('stations'),
    gain: column('offset-gain'),
    seeds: column('seeds-per-station'),
    seedlings: column('seedlings-per-seed'),
    germination: column('germination'),
    nursery: column('nursery-survival'),
    field: column('field-survival'),
    plants: column('plants-per-station'),
    empty: column('empty-stations'),
    with: [1, 2, 3, 4].map((plants) => column(`with-${plants}-plant${plants === 1 ? '' : 's'}`)),
    withMore: column('with-5-or-more'),
    blocks: column('blocks-to-start'),
    needed: column('seeds-needed'),
    bought: column('sets-or-plants-to-buy'),
    weight: column('weight-to-buy'),
    perTray: column('cells-per-tray'),
    trays: column('trays'),
    nurseryLength: column('nursery-bed-length'),
    mix: column('mix-volume'),
    bench: column('bench-area'),
  };

  const step = inputs.farm('spacing-step');

  function inSteps(usual: number): number {
    if (isBlank(step) || step === 0) return usual;
    const taken = step / (usual < step ? 4 : usual < 3 * step ? 2 : 1);
    return tolerantRound(usual / taken) * taken;
  }

  function lotGermination(row: number, seedLot: number, variety: number): number {
    const tested = lot.tested[seedLot] as number;
    const from = lot.agesFrom[seedLot] as number;
    if (isBlank(from)) return tested;
    const age = most(0, (sown[row] as number) - from);
    if (lot.byEquation[seedLot] !== true) return germinationByStorageLife(tested, age, crop.life[variety] as number);
    const store = (lot.temperature[seedLot] as number) - FREEZING;
    const moisture = lot.moisture[seedLot] as number;
    const [ke, cw, ch, cq] = [crop.ke[variety], crop.cw[variety], crop.ch[variety], crop.cq[variety]] as number[];
    return seedViability(tested, age, moisture, store, ke as number, cw as number, ch as number, cq as number);
  }

  function plantsStandingInAPlace(seeds: number, seedlings: number, germination: number, thinTo: number): number {
    if (isBlank(thinTo)) return meanPlants(seeds, germination) * seedlings;
    const { kept } = thinToMost(plantsPerBlockDistribution(seeds * seedlings, germination), Math.floor(thinTo));
    const standing = 1 - (kept[0] ?? Number.NaN);
    let plants = 0;
    for (let i = 0; i < kept.length; i++) plants += (kept[i] as number) * i;
    return standing > 0 ? plants / standing : Number.NaN;
  }

  function work(from: number, to: number): void {
    for (let row = from; row < to; row++) {
      const v = varietyOf[row] as number;
      const b = bedOf[row] as number;
      const begun = start[row] as number;
      const loose = begun === DEEP_TRAY || begun === NURSERY_BED;
      const raised = begun === BLOCKS || begun === CELLS || loose;
      const direct = begun === DIRECT;
      const fromSeed = raised || direct;
      const byPlace = fromSeed && !loose;
      const length = or(typed.length[row] as number, bed.length[b] as number);
      const width = bed.width[b] as number;
      const rows = or(
        typed.rows[row] as number,
        most(1, tolerantRound((crop.rows[v] as number) * (width / THIRTY_INCHES))),
      );
      const seedlings = or(crop.seedlings[v] as number, 1);
      const seedLot = typed.lot[row] as number;
      const germination = !fromSeed
        ? Number.NaN
        : isBlank(seedLot)
          ? (newSeedGermination[v] as number)
          : lotGermination(row, seedLot, v);
      const field = or(typed.field[row] as number, or(crop.field[v] as number, direct ? 0.85 : 0.97));
      const usualSeeds = loose
        ? 1
        : raised
          ? or(crop.seedsPerBlock[v] as number, 1)
          : direct
            ? most(1, tolerantCeil(10 / (germination * field * seedlings)) / 10)
            : 1;
      const seeds = or(typed.seeds[row] as number, usualSeeds);
      const clump = crop.clumpSpacing[v] as number;
      const usualSpacing = seeds > 1.5 && raised && !isBlank(clump) ? clump : (crop.spacing[v] as number);
      const spacing = or(typed.spacing[row] as number, inSteps(usualSpacing));
      const offset = typed.offset[row] === 0;
      const stations = offset ? offsetStations(length, spacing, rows) : squareStations(length, spacing, rows);
      const nursery = or(
        typed.nursery[row] as number,
        begun === DEEP_TRAY ? 0.85 : begun === NURSERY_BED ? 0.7 : raised ? 0.95 : 1,
      );
      const empty = byPlace ? emptyShare(seeds, germination) : 0;
      out.length[row] = length;
      out.width[row] = width;
      out.area[row] = length * width;
      out.rows[row] = rows;
      out.usualSpacing[row] = usualSpacing;
      out.spacing[row] = spacing;
      out.rowSpacing[row] = width / rows;
      out.stations[row] = stations;
      out.gain[row] = offsetGain(length, spacing, rows);
      out.seeds[row] = seeds;
      out.seedlings[row] = seedlings;
      out.germination[row] = germination;
      out.nursery[row] = nursery;
      out.field[row] = field;
      out.plants[row] = byPlace
        ? plantsStandingInAPlace(seeds, seedlings, germination, typed.thinTo[row] as number)
        : seeds;
      out.empty[row] = empty;
      const shares = byPlace ? plantsPerBlockDistribution(seeds, germination) : [];
      let counted = empty;
      for (let plants = 1; plants <= 4; plants++) {
        const share = byPlace ? (shares[plants] ?? 0) : Number.NaN;
        (out.with[plants - 1] as Float64Array)[row] = share;
        counted += share;
      }
      out.withMore[row] = byPlace ? Math.max(0, 1 - counted) : Number.NaN;
      raising(row, begun, { loose, raised, fromSeed, stations, seeds, germination, nursery, empty, seedlings, v });
    }
  }

  /** Seed, trays and mix. */
  function raising(row: number, begun: number, of: Raising): void {
    const { loose, raised, fromSeed, stations, seeds, germination, nursery, empty, seedlings } = of;
    const { confidence } = farm;
    const blocks = raised && !loose ? blocksNeeded(stations, (1 - empty) * nursery, confidence) : Number.NaN;
    const sownSeeds = loose
      ? blocksNeeded(stations * seeds, Math.min(1, germination * seedlings) * nursery, confidence)
      : (raised ? blocks : stations) * seeds;
    const needed = fromSeed ? tolerantCeil((1 + farm.spare) * sownSeeds) : 0;
    const bought = fromSeed ? Number.NaN : tolerantCeil(stations * seeds * (1 + farm.spare));
    const inTrays = raised && begun !== NURSERY_BED;
    const perTray = inTrays ? (begun === BLOCKS ? farm.blocks : loose ? farm.loose : farm.cells) : Number.NaN;
    const trays = tolerantCeil((loose ? needed : blocks) / perTray);
    const trayArea = begun === BLOCKS ? farm.blockArea : loose ? farm.deepArea : farm.cellArea;
    const blockMix = begun === BLOCKS ? blocks * farm.blockVolume * farm.compaction : blocks * farm.cellVolume;
    out.blocks[row] = blocks;
    out.needed[row] = needed;
    out.bought[row] = bought;
    out.weight[row] = bought * (crop.pieceMass[of.v] as number);
    out.perTray[row] = perTray;
    out.trays[row] = trays;
    out.nurseryLength[row] = begun === NURSERY_BED ? needed / (farm.inNurseryBed * farm.width) : Number.NaN;
    out.mix[row] = raised ? (begun === NURSERY_BED ? 0 : loose ? trays * farm.deepMix : blockMix) : Number.NaN;
    out.bench[row] = raised ? (begun === NURSERY_BED ? 0 : trays * trayArea) : Number.NaN;
  }

  return {
    start,
    spacing: typed.spacing,
    plantedTyped: inputs.typed('planted-out'),
    newSeedGermination,
    work,
  };
}

interface Raising {
  readonly loose: boolean;
  readonly raised: boolean;
  readonly fromSeed: boolean;
  readonly stations: number;
  readonly seeds: number;
  readonly germination: number;
  readonly nursery: number;
  readonly empty: number;
  readonly seedlings: number;
  readonly v: number;
}
