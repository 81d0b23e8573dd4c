// The peer, hyperformula, on what it can hold of the season: places, stand, plant mass and yield of each planting, and beds by day. What
// its functions don't know (dates out of warmth, chances of a stand, sizes) it is given as numbers. Checked equal with the floor.

import { HyperFormula, type RawCellContent } from 'hyperformula';
import type { Workbook } from '../../../engine/index.ts';
import { type Cost, costOf, timed } from '../cpu.ts';
import { close } from './floor/agree.ts';
import type { SeasonFloor } from './floor/floor.ts';
import { inputsOf, most, numbersOf, textsOf } from './floor/inputs.ts';

/** Worked out, by the floor's column of that name; names in braces are cells of the row, with `all` whole columns. */
const WORKED: readonly (readonly [name: string, formula: string])[] = [
  ['bed-area', '={bed-length-used}*{bed-width}'],
  ['row-spacing', '={bed-width}/{rows}'],
  ['in-a-row', '=ROUNDDOWN({bed-length-used}/{in-row-spacing}+0.000000001,0)'],
  ['in-a-shifted-row', '=ROUNDDOWN({bed-length-used}/{in-row-spacing}-0.5+0.000000001,0)'],
  [
    'stations',
    '=IF({offset}=1,({rows}-ROUNDDOWN({rows}/2,0))*{in-a-row}+ROUNDDOWN({rows}/2,0)*{in-a-shifted-row},{rows}*{in-a-row})',
  ],
  ['plants-standing', '={stations}*{plants-per-station}*{field-survival}*IF({direct}=1,1-{empty-stations},1)'],
  ['ground-area', '={bed-area}*{beds-across}'],
  ['plant-density', '={plants-standing}/{ground-area}'],
  ['rectangularity', '=MAX({row-spacing}/{in-row-spacing},{in-row-spacing}/{row-spacing})'],
  ['factor', '=(1-{squareness-loss}*LN(MIN(8,{rectangularity}))/LN(8))*{season-factor}'],
  ['mean-plant-mass', '={factor}/(1/{isolated-plant-mass}+{plant-density}/{ceiling-yield})'],
  ['total-yield', '={plants-standing}*{mean-plant-mass}'],
  ['yield-per-bed-area', '={total-yield}/{ground-area}'],
  [
    'bed-in-use',
    '=SUMIFS({all bed-length-used},{all bed},{bed},{all planted-out},"<="&{planted-out},{all bed-free},">"&{planted-out})',
  ],
];
/** The floor's columns that it is given. */
const GIVEN = [
  'bed-length-used',
  'bed-width',
  'rows',
  'in-row-spacing',
  'plants-per-station',
  'field-survival',
  'empty-stations',
  'season-factor',
  'squareness-loss',
  'planted-out',
  'bed-free',
] as const;

export interface PeerFigures {
  readonly columns: number;
  readonly build: number;
  readonly spacing: Cost;
  readonly date: Cost;
}

/** Built, checked against the floor and edited; throws where it holds something else. */
export function peerFigures(workbook: Workbook, floor: SeasonFloor): PeerFigures {
  const { varietyOf, bedOf, crop, variety } = inputsOf(workbook);
  const [across, isolated, ceiling] = [crop('beds-across'), variety('isolated-plant-mass'), variety('ceiling-yield')];
  const starts = textsOf(workbook, 'plantings', 'start');
  const patterns = textsOf(workbook, 'plantings', 'pattern');
  const byVariety = (figures: Float64Array): Float64Array => Float64Array.from(varietyOf, (v) => figures[v] ?? 0);
  const given = new Map<string, ArrayLike<number>>([
    ...GIVEN.map((name) => [name, floor.plantings.get(name) ?? []] as const),
    ['bed', bedOf],
    ['direct', starts.map((start) => Number(start === 'direct seed'))],
    ['offset', patterns.map((pattern) => Number(pattern === 'offset'))],
    ['beds-across', byVariety(across.map((beds) => most(1, beds)))],
    ['isolated-plant-mass', byVariety(isolated)],
    ['ceiling-yield', byVariety(ceiling)],
  ]);
  const names = [...given.keys(), ...WORKED.map(([name]) => name)];
  const count = numbersOf(workbook, 'plantings', 'rows').length;
  const letter = (name: string): string => lettersOf(names.indexOf(name));
  const formula = (text: string, row: number): string =>
    text
      .replace(/\{all ([a-z-]+)\}/g, (_, name) => `$${letter(name)}$1:$${letter(name)}$${count}`)
      .replace(/\{([a-z-]+)\}/g, (_, name) => `${letter(name)}${row + 1}`);
  const rows = Array.from({ length: count }, (_, row): RawCellContent[] => [
    ...[...given.values()].map((column) => (Number.isNaN(column[row] ?? Number.NaN) ? null : (column[row] ?? null))),
    ...WORKED.map(([, text]) => formula(text, row)),
  ]);
  const [build, engine] = timed(() => HyperFormula.buildFromArray(rows, { licenseKey: 'gpl-v3' }));
  check(engine, names, floor);
  const set = (name: string, row: number, value: number): void => {
    engine.setCellContents({ sheet: 0, col: names.indexOf(name), row }, value);
  };
  return {
    columns: WORKED.length,
    build,
    spacing: costOf(10, (call) => set('in-row-spacing', (call * 37) % count, 0.1 + call / 100)),
    date: costOf(3, (call) => set('planted-out', (call * 41) % count, 20_900 + call)),
  };
}

function check(engine: HyperFormula, names: readonly string[], floor: SeasonFloor): void {
  for (const [name] of WORKED) {
    const figures = floor.plantings.get(name);
    if (figures === undefined) continue;
    const differs = figures.findIndex((figure, row) => {
      const value = engine.getCellValue({ sheet: 0, col: names.indexOf(name), row });
      return !Number.isNaN(figure) && !close(figure, Number(value));
    });
    if (differs >= 0) throw new Error(`The peer differs from the floor in ${name}, row ${differs}.`);
  }
}

/** A to Z, then AA and on. */
function lettersOf(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : lettersOf(Math.floor(column / 26) - 1) + last;
}
