// Dates typed as ranges in drawn seasons: what follows from them in their planting moves with them, to the day on which it stands
// with the drawn values typed; every other date stays as planned, whatever the season brings.

import { beforeAll, describe, expect, test } from 'vitest';
import {
  civilDay,
  type Drawn,
  Draws,
  type Figure,
  figureIn,
  message,
  numberOf,
  putInput,
  rowId,
  rowNamed,
  uncertainInputs,
  type Workbook,
} from '../../engine/index.ts';
import { SEASON_CHANCES } from '../../sheets-templates/index.ts';
import { streams } from '../../ui/chance.ts';
import { seasonOf } from './season.ts';

const SEASONS = 25;
const DATES = ['sown', 'planted-out', 'harvest', 'bed-free'];
const PLANTINGS = ['Raised', 'In place', 'Longer raised', 'Counted back', 'As planned'];

describe('a season with dates typed as ranges', () => {
  let workbook: Workbook;
  let drawn: Drawn;
  beforeAll(() => {
    const season = seasonOf({
      Varieties: [
        { Variety: 'Leaf', Crop: 'Lettuce, head' },
        { Variety: 'Root', Crop: 'Carrot' },
      ],
      Plantings: [
        { Planting: 'Raised', Variety: 'Leaf' },
        { Planting: 'In place', Variety: 'Root' },
        { Planting: 'Longer raised', Variety: 'Leaf', Sown: '2027-04-01' },
        { Planting: 'Counted back', Variety: 'Leaf', 'Planted out': '2027-06-01' },
        { Planting: 'As planned', Variety: 'Leaf', Sown: '2027-04-01' },
      ],
    });
    season.type('Plantings', 'Raised', 'Sown', '1 Mar..15 Apr');
    season.type('Plantings', 'In place', 'Sown', '1 Mar..1 May');
    season.type('Plantings', 'Longer raised', 'Time raised', '3..7 weeks');
    season.type('Plantings', 'Counted back', 'Time raised', '3..7 weeks');
    workbook = season.book.workbook;
    const inputs = uncertainInputs(workbook, SEASON_CHANCES.plan);
    const order = { inputs, asked: { figures: figures(), weekly: [] }, from: 0, until: SEASONS };
    const draws = new Draws(workbook, { ...order, chances: SEASON_CHANCES }, streams(1));
    expect(draws.step(SEASONS)).toBeUndefined();
    drawn = draws.result();
  });

  const cell = (planting: string, column: string): Figure => {
    const row = rowId(workbook, 'plantings', rowNamed(workbook, 'plantings', planting) ?? 0);
    return { figure: 'cell', sheet: 'plantings', row, column };
  };
  const figures = (): readonly Figure[] => PLANTINGS.flatMap((planting) => DATES.map((date) => cell(planting, date)));
  const valuesOf = (planting: string, column: string): readonly number[] =>
    Array.from(drawn.figures[PLANTINGS.indexOf(planting) * DATES.length + DATES.indexOf(column)]?.values ?? []);

  test('are sown and planted out as the ranges typed by hand, one value a season', () => {
    const typed = workbook.branch();
    const inputs = uncertainInputs(workbook, SEASON_CHANCES.plan).filter(({ sheet }) => sheet === 'plantings');
    for (let season = 0; season < SEASONS; season++) {
      const commands = inputs.map((input) => {
        const value = drawn.inputs.find(({ id }) => id === input.id)?.values[season] ?? Number.NaN;
        return putInput(typed, input, { value, unit: undefined });
      });
      expect(typed.do(commands, message('trial')).refused).toBe(false);
      for (const planting of PLANTINGS) {
        for (const date of ['sown', 'planted-out']) {
          const byHand = numberOf(figureIn(typed, cell(planting, date)));
          expect([planting, date, valuesOf(planting, date)[season]]).toEqual([planting, date, byHand]);
        }
      }
    }
  });

  test('are harvested later where they are sown later, and no bed is taken before', () => {
    for (const planting of ['Raised', 'In place']) {
      const [sown, out] = [valuesOf(planting, 'sown'), valuesOf(planting, 'planted-out')];
      const spread = (days: readonly number[]): number => Math.max(...days) - Math.min(...days);
      expect(spread(sown)).toBeGreaterThan(14);
      expect(spread(out)).toBe(spread(sown));
      expect(spread(valuesOf(planting, 'harvest'))).toBeGreaterThan(7);
      expect(out.every((day, season) => day >= (sown[season] ?? 0))).toBe(true);
    }
    // A planting whose time under cover alone is drawn: planted out later from its sowing, or sown earlier before its planting out.
    expect(new Set(valuesOf('Longer raised', 'sown'))).toEqual(new Set([civilDay(2027, 4, 1)]));
    expect(new Set(valuesOf('Longer raised', 'planted-out')).size).toBeGreaterThan(7);
    expect(new Set(valuesOf('Counted back', 'planted-out'))).toEqual(new Set([civilDay(2027, 6, 1)]));
    expect(new Set(valuesOf('Counted back', 'sown')).size).toBeGreaterThan(7);
  });

  test('leave the dates of other plantings as planned', () => {
    for (const date of ['sown', 'planted-out'])
      expect(new Set(valuesOf('As planned', date))).toEqual(
        new Set([numberOf(figureIn(workbook, cell('As planned', date)))]),
      );
  });
});
