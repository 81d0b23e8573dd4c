// Curing at the edges: the last figures that have an answer and the first that have none.
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

const NONE = Number.NaN;

describe('curing', () => {
  it.each([
    ['all of it kept', 40, 0, 40],
    ['nothing to cure', 0, 0.1, 0],
    ['all of it lost', 40, 1, 0],
    ['more than all lost', 40, 1.01, NONE],
    ['a loss below nothing', 40, -0.01, NONE],
    ['less than nothing to cure', -40, 0.1, NONE],
    ['both below nothing', -40, -0.1, NONE],
  ])('mass after curing, %s', (_, fresh, loss, cured) => {
    expect(curedMass(fresh, loss)).toBe(cured);
  });

  it.each([
    ['no loss', 40, 0, 40],
    ['nothing wanted', 0, 0.1, 0],
    ['half lost', 40, 0.5, 80],
    ['a loss below nothing', 40, -0.01, NONE],
    ['less than nothing wanted', -40, 0.1, NONE],
    ['both below nothing', -40, -0.1, NONE],
    ['all lost', 40, 1, NONE],
  ])('fresh mass for a cured one, %s', (_, cured, loss, fresh) => {
    expect(freshForCured(cured, loss)).toBe(fresh);
  });

  it.each([
    ['nothing lost', 40, 40, 0],
    ['all lost', 40, 0, 1],
    ['a tenth lost', 40, 36, 0.1],
    ['heavier than before', 40, 40.1, NONE],
    ['less than nothing left', 40, -1, NONE],
    ['nothing weighed', 0, 0, NONE],
    ['a first weight below nothing', -40, -41, NONE],
  ])('measured loss, %s', (_, fresh, now, loss) => {
    expect(measuredLoss(fresh, now)).toBe(loss);
  });

  it('a batch that needs no days is cured the day it comes in', () => {
    expect(curedOn(500, 0)).toBe(500);
    expect(curedOn(500, 0.1)).toBe(501);
  });

  it.each([
    ['nothing', 0, 500, 0.2, 0],
    ['less than nothing', -1, 500, 0.2, NONE],
    ['no density', 100, 0, 0.2, NONE],
    ['a density below nothing', 100, -500, 0.2, NONE],
    ['both below nothing', -100, -500, 0.2, NONE],
    ['a depth below nothing', 100, 500, -0.2, NONE],
    ['no density and a negative depth', 100, -500, -0.2, NONE],
  ])('racks for %s', (_, mass, density, depth, area) => {
    expect(rackArea(mass, density, depth)).toBe(area);
  });

  it('bulk of nothing is nothing, and of less has no answer', () => {
    expect(bulkVolume(0, 500)).toBe(0);
    expect(bulkVolume(-1, 500)).toBeNaN();
    expect(bulkVolume(-1, -500)).toBeNaN();
  });

  it.each([
    ['quite full', 0.05, 1, 40],
    ['half full', 0.05, 0.5, 80],
    ['filled above the rim', 0.05, 1.01, NONE],
    ['not filled', 0.05, 0, NONE],
    ['filled below nothing', 0.05, -0.5, NONE],
    ['of a size below nothing', -0.05, 0.5, NONE],
    ['twice below nothing', -0.05, -0.5, NONE],
  ])('containers %s', (_, volume, fill, containers) => {
    expect(containersForMass(1000, 500, volume, fill)).toBe(containers);
  });

  it('still air is no airflow', () => {
    expect(airflow(1000, 500, 0)).toBe(0);
  });

  it('a batch leaves its rack free for the one that comes in the day it is gone', () => {
    const next = { from: 14, until: 20, area: 4 };
    expect(peakRackArea([{ from: 0, until: 14, area: 6 }, next])).toBe(6);
    expect(peakRackArea([{ from: 0, until: 15, area: 6 }, next])).toBe(10);
    expect(peakRackArea([{ from: 14, until: 15, area: 6 }, next])).toBe(10);
  });
});
