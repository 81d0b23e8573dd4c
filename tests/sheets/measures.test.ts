// A workbook's own measures: usual spacings in whole steps of the units it starts with, usual beds, and both taken to the other units
// while nothing is planted.

import { describe, expect, it } from 'vitest';
import { message, type UnitSystem } from '../../engine/index.ts';
import { groundIn } from '../../sheets-templates/index.ts';
import { seasonOf } from './season.ts';

const CROPS = ['Garlic', 'Carrot', 'Onion, bulb', 'Salad mix, baby leaf', 'Tomato'];

const rows = {
  Varieties: CROPS.map((crop) => ({ Variety: crop, Crop: crop })),
  Plantings: CROPS.map((crop) => ({ Planting: crop, Variety: crop })),
};

function spacings(units: UnitSystem, farm: Readonly<Record<string, string>> = {}): readonly string[] {
  const season = seasonOf(rows, farm, { units });
  return CROPS.map((crop) => season.shown('Plantings', crop, 'In-row spacing'));
}

describe('usual spacings', () => {
  it('are whole inches where a workbook counts in them, halves and quarters where plants stand closer', () => {
    expect(spacings('us')).toEqual(['6', '1.5', '8', '0.5', '20']);
  });

  it('are whole centimetres in a metric one', () => {
    expect(spacings('si')).toEqual(['15', '4', '19', '1', '50']);
  });

  it('are the library’s own where no step is given, or one of nothing', () => {
    const own = ['5.91', '1.57', '7.5', '0.39', '19.69'];
    expect(spacings('us', { 'Spacing step': '' })).toEqual(own);
    expect(spacings('us', { 'Spacing step': '0 in' })).toEqual(own);
  });

  it('never differ from the library’s by more than half the step that is taken', () => {
    const season = seasonOf(rows);
    for (const crop of CROPS) {
      const [taken = 0, usual = 0] = ['Plantings', 'Crops'].map((sheet) =>
        season.number(sheet, crop, 'In-row spacing'),
      );
      if (crop === 'Onion, bulb') continue;
      expect(Math.abs(taken - usual), crop).toBeLessThanOrEqual(usual < 1 ? 0.125 : usual < 3 ? 0.25 : 0.5);
    }
  });
});

describe('other units', () => {
  const switched = (farm: Readonly<Record<string, string>>, planted: boolean, from: UnitSystem) => {
    const season = seasonOf(planted ? rows : {}, farm, { units: from });
    const to = from === 'us' ? 'si' : 'us';
    const { workbook } = season.book;
    const done = workbook.do(
      [{ command: 'set units', units: to }, ...groundIn(workbook, from, to)],
      message('si units'),
    );
    expect(done.refused).toBe(false);
    return ['Spacing step', 'Bed width', 'Bed length', 'Path width'].map((column) => season.shown('Farm', '', column));
  };

  it('bring their own usual beds and steps while nothing is planted', () => {
    expect(switched({}, false, 'us')).toEqual(['1', '75', '15', '45']);
    expect(switched({}, false, 'si')).toEqual(['1', '30', '50', '18']);
  });

  it('leave what was typed', () => {
    expect(switched({ 'Bed length': '100 ft', 'Spacing step': '2 in' }, false, 'us')).toEqual([
      '2 in',
      '75',
      '100 ft',
      '45',
    ]);
  });

  it('change nothing of a planted farm but how it is shown', () => {
    expect(switched({}, true, 'us')).toEqual(['1 in', '76.2', '15.24', '45.72']);
  });
});
