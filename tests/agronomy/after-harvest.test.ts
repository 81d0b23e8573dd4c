// Harvest windows, curing, racks, containers, loss in store, store verdicts and what to sell first.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airflow,
  bulkVolume,
  containersForMass,
  curedMass,
  curedOn,
  freshForCured,
  measuredLoss,
  peakRackArea,
  rackArea,
} from '../../engine/agronomy/curing.ts';
import { harvestWindow, lodging, lodgingSentence, pickings } from '../../engine/agronomy/harvest.ts';
import {
  daysLeft,
  keepsUntil,
  MONTH_DAYS,
  massAfter,
  massToStore,
  monthlyLossOf,
  type StoredLot,
  sellingOrder,
  storeRun,
  storeSentence,
  storeVerdict,
  storeVolume,
} from '../../engine/agronomy/storage.ts';

const share = fc.double({ min: 0, max: 0.5, noNaN: true });
const mass = fc.double({ min: 1, max: 5000, noNaN: true });

describe('harvest', () => {
  it('runs from maturity for the days of the window and then frees the bed', () => {
    expect(harvestWindow(1000, 60, 14)).toEqual({ start: 1060, end: 1073, free: 1074 });
    expect(harvestWindow(1000, 60, 1)).toEqual({ start: 1060, end: 1060, free: 1061 });
    expect(harvestWindow(1000, Number.NaN, 5).start).toBeNaN();
    expect(harvestWindow(1000, 60, 0).free).toBeNaN();
  });

  it('is picked at its interval to the last day', () => {
    expect(pickings(harvestWindow(0, 50, 15), 7)).toEqual([50, 57, 64]);
    expect(pickings(harvestWindow(0, 50, 1), 3)).toEqual([50]);
    expect(pickings(harvestWindow(0, 50, 15), 0)).toEqual([]);
    expect(pickings(harvestWindow(0, Number.NaN, 15), 7)).toEqual([]);
  });

  it('of onions begins when half the tops are down', () => {
    expect([0.49, 0.5, 1].map(lodging)).toEqual(['growing', 'ready', 'all down']);
    expect(lodging(1.2)).toBeUndefined();
    expect(lodgingSentence('growing')).toContain('leave the bulbs');
    expect(lodgingSentence('ready')).toContain('pull');
    expect(lodgingSentence('all down')).toContain('All tops');
  });
});

describe('curing', () => {
  it('loses its share, and turns round', () => {
    fc.assert(
      fc.property(mass, share, (fresh, loss) => {
        const cured = curedMass(fresh, loss);
        expect(freshForCured(cured, loss)).toBeCloseTo(fresh, 6);
        expect(measuredLoss(fresh, cured)).toBeCloseTo(loss, 9);
      }),
    );
    expect(curedMass(10, 1.1)).toBeNaN();
    expect(freshForCured(10, 1)).toBeNaN();
    expect(measuredLoss(10, 11)).toBeNaN();
    expect(curedOn(500, 13.2)).toBe(514);
    expect(curedOn(500, -1)).toBeNaN();
  });

  it('takes rack, containers and air by bulk density', () => {
    expect(rackArea(550, 550, 0.1)).toBeCloseTo(10, 12);
    expect(bulkVolume(600, 600)).toBe(1);
    expect(containersForMass(1000, 500, 0.05)).toBe(40);
    expect(containersForMass(1000, 500, 0.05, 0.9)).toBe(45);
    expect(containersForMass(0, 500, 0.05)).toBe(0);
    expect(airflow(1000, 500, 2.5)).toBe(5);
    expect(rackArea(550, 550, 0)).toBeNaN();
    expect(containersForMass(1000, 500, 0)).toBeNaN();
    expect(bulkVolume(1, 0)).toBeNaN();
    expect(airflow(1, 500, -1)).toBeNaN();
  });

  it('peaks where batches stand together', () => {
    const batches = [
      { from: 0, until: 14, area: 6 },
      { from: 7, until: 21, area: 5 },
      { from: 14, until: 28, area: 4 },
    ];
    expect(peakRackArea(batches)).toBe(11);
    expect(peakRackArea([])).toBe(0);
  });
});

describe('loss in store', () => {
  it('compounds, parts of a month included', () => {
    fc.assert(
      fc.property(mass, share, fc.double({ min: 0, max: 12, noNaN: true }), (start, loss, months) => {
        const half = massAfter(start, loss, months / 2);
        expect(massAfter(half, loss, months / 2)).toBeCloseTo(massAfter(start, loss, months), 6);
        expect(massToStore(massAfter(start, loss, months), loss, months)).toBeCloseTo(start, 6);
      }),
    );
    expect(massAfter(100, -0.1, 1)).toBeNaN();
    expect(massAfter(100, 0.1, -1)).toBeNaN();
    expect(massToStore(100, 1, 2)).toBeNaN();
  });

  it('of a whole season gives the loss of a month', () => {
    expect(massAfter(100, monthlyLossOf(0.3, 5), 5)).toBeCloseTo(70, 10);
    expect(monthlyLossOf(0.3, 0)).toBeNaN();
  });

  it('week by week agrees with the whole', () => {
    const weeks = 20;
    const run = storeRun(
      [1000],
      Array.from({ length: weeks + 1 }, () => 0),
      0.03,
    );
    expect(run.at(-1)?.left).toBeCloseTo(massAfter(1000, 0.03, (weeks * 7) / MONTH_DAYS), 8);
  });

  it('never sells more than is there, and adds up', () => {
    const flow = fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { maxLength: 15 });
    fc.assert(
      fc.property(flow, flow, share, (incoming, wanted, loss) => {
        const run = storeRun(incoming, wanted, loss);
        const sum = (value: (period: (typeof run)[number]) => number): number =>
          run.reduce((total, period) => total + value(period), 0);
        const broughtIn = incoming.reduce((total, amount) => total + amount, 0);
        expect(sum((p) => p.lost) + sum((p) => p.sold) + (run.at(-1)?.left ?? 0)).toBeCloseTo(broughtIn, 6);
        for (const period of run) {
          expect(period.left).toBeGreaterThanOrEqual(0);
          expect(period.short).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });

  it('takes room by bulk density and the share that can be filled', () => {
    expect(storeVolume(1000, 500, 0.5)).toBe(4);
    expect(storeVolume(1000, 500, 0)).toBeNaN();
  });
});

describe('a store against the crop', () => {
  const onion = { temperature: [0, 0], humidity: [0.65, 0.7], freezing: -0.8 } as const;
  const squash = { temperature: [10, 13], humidity: [0.5, 0.7] } as const;

  it('is judged both ways on both counts', () => {
    expect(storeVerdict(0.5, 0.68, onion)).toEqual({ temperature: 'right', humidity: 'right' });
    expect(storeVerdict(4, 0.9, onion)).toEqual({ temperature: 'too warm', humidity: 'too damp' });
    expect(storeVerdict(-1, 0.5, onion)).toEqual({ temperature: 'freezes', humidity: 'too dry' });
    expect(storeVerdict(4, 0.6, squash)?.temperature).toBe('too cold');
    expect(storeVerdict(Number.NaN, 0.6, squash)).toBeUndefined();
  });

  it('is told in a sentence', () => {
    expect(storeSentence({ temperature: 'too warm', humidity: 'too damp' })).toBe(
      'The store is warmer than this crop keeps best at: it will sprout, soften or rot sooner; the air is damper than it should be: it may root and rot.',
    );
    expect(storeSentence({ temperature: 'right', humidity: 'right' })).toContain('humidity is right');
  });
});

describe('what to sell first', () => {
  const lots: readonly StoredLot[] = [
    { name: 'keeper', storedOn: 100, keepsDays: 200, mass: 50 },
    { name: 'sweet', storedOn: 110, keepsDays: 45.8, mass: 20 },
    { name: 'sold out', storedOn: 90, keepsDays: 10, mass: 0 },
    { name: 'unknown', storedOn: 100, keepsDays: Number.NaN, mass: 10 },
    { name: 'sweet, more', storedOn: 110, keepsDays: 45, mass: 80 },
  ];

  it('is what keeps shortest, the larger lot of equals, and the unknown last', () => {
    expect(sellingOrder(lots).map((lot) => lot.name)).toEqual(['sweet, more', 'sweet', 'keeper', 'unknown']);
  });

  it('counts the days left, below zero once past', () => {
    const [keeper] = lots;
    if (keeper === undefined) throw new Error('no lot');
    expect(keepsUntil(keeper)).toBe(300);
    expect(daysLeft(keeper, 310)).toBe(-10);
  });
});
