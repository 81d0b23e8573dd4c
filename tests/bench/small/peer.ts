// The peer: the same season in hyperformula, a general spreadsheet engine, with look-ups by INDEX and rollups by SUMIFS on
// sheets of cells. Formulas are those of season.ts in A1 form.

import { HyperFormula, type RawCellContent } from 'hyperformula';
import { bedName, plantingName, type SeasonFigures, varietyName } from './season.ts';

export interface Peer {
  readonly engine: HyperFormula;
  /** Entered cell of a planting's spacing, of a variety's germination, of the farm's spare seed. */
  spacing(row: number, value: number): void;
  germination(variety: number, value: number): void;
  spare(value: number): void;
  /** A computed planting column by name. */
  read(column: string): number[];
  readonly orderCost: () => number[];
}

// Plantings: A name, B variety, C bed, D length, E spacing, F sown, G wanted, H waste, I row of the variety; computed from J.
const ROW_FORMULAS: readonly (readonly [string, (r: number, n: number) => string])[] = [
  ['Germination', (r) => `=INDEX(Varieties!$B$1:$B$200,I${r})`],
  ['Rows', (r) => `=INDEX(Varieties!$J$1:$J$200,I${r})`],
  ['Row spacing', (r) => `=Farm!$C$1/K${r}`],
  ['Stations', (r) => `=K${r}*ROUNDDOWN(D${r}/E${r},0)`],
  ['Area', (r) => `=D${r}*Farm!$C$1`],
  ['Density', (r) => `=M${r}/N${r}`],
  ['Target', (r) => `=ROUNDUP(M${r}*(1+Farm!$A$1),0)`],
  ['Seeds per cell', (r) => `=MAX(1,ROUNDUP(LN(1-G${r})/LN(1-J${r}),0))`],
  ['Cell chance', (r) => `=(1-BINOM.DIST(0,Q${r},J${r},TRUE()))*Farm!$B$1`],
  ['Cells', (r) => `=ROUNDUP(P${r}/R${r},0)`],
  ['Cells per tray', (r) => `=INDEX(Varieties!$I$1:$I$200,I${r})`],
  ['Trays', (r) => `=ROUNDUP(S${r}/T${r},0)`],
  ['Whole cells', (r) => `=U${r}*T${r}`],
  ['Seeds', (r) => `=V${r}*Q${r}`],
  ['Seed mass', (r) => `=W${r}/INDEX(Varieties!$C$1:$C$200,I${r})`],
  ['Planted out', (r) => `=F${r}+INDEX(Varieties!$D$1:$D$200,I${r})`],
  ['First harvest', (r) => `=Y${r}+INDEX(Varieties!$E$1:$E$200,I${r})`],
  ['Last harvest', (r) => `=Z${r}+INDEX(Varieties!$F$1:$F$200,I${r})`],
  ['Harvest week', (r) => `=ISOWEEKNUM(Z${r})`],
  ['Shortfall risk', (r) => `=BINOM.DIST(M${r}-1,S${r},R${r},TRUE())`],
  ['Plants standing', (r) => `=M${r}*INDEX(Varieties!$K$1:$K$200,I${r})`],
  ['Yield', (r) => `=AD${r}*INDEX(Varieties!$G$1:$G$200,I${r})*(1-H${r})`],
  ['Yield per area', (r) => `=AE${r}/N${r}`],
  ['Price', (r) => `=INDEX(Varieties!$H$1:$H$200,I${r})*Farm!$D$1`],
  ['Revenue', (r) => `=AE${r}*AG${r}`],
  ['Revenue per area', (r) => `=AH${r}/N${r}`],
];

/** Days from hyperformula's date 0 (1899-12-30) to 1970-01-01. */
const EPOCH = 25_569;

/** Builds the whole season; `rollups` false leaves out beds and order. */
export function makePeer(figures: SeasonFigures, rollups: boolean): Peer {
  const n = figures.plantings.length;
  const plantings = figures.plantings.map((one, i): RawCellContent[] => {
    const r = i + 1;
    return [
      plantingName(i),
      varietyName(one.variety),
      bedName(one.bed),
      one.length,
      one.spacing,
      one.sown + EPOCH,
      one.wanted,
      one.waste,
      `=MATCH(B${r},Varieties!$A$1:$A$200,0)`,
      ...ROW_FORMULAS.map(([, formula]) => formula(r, n)),
    ];
  });
  const sheets: Record<string, RawCellContent[][]> = {
    Farm: [[figures.farm.spare, figures.farm.nursery, figures.farm.bedWidth, figures.farm.priceFactor]],
    Varieties: figures.varieties.map((one, i) => [
      varietyName(i),
      one.germination,
      one.seedsPerGram,
      one.trayDays,
      one.daysToMaturity,
      one.harvestDays,
      one.plantMass,
      one.price,
      one.cellsPerTray,
      one.rows,
      one.survival,
    ]),
    Plantings: plantings,
  };
  if (rollups) {
    const ifs = (column: string, by: string, key: string): string =>
      `=SUMIFS(Plantings!$${column}$1:$${column}$${n},Plantings!$${by}$1:$${by}$${n},${key})`;
    sheets.Beds = figures.bedLengths.map((length, i) => {
      const key = `A${i + 1}`;
      return [
        bedName(i),
        length,
        ifs('D', 'C', key),
        ifs('M', 'C', key),
        ifs('AH', 'C', key),
        `=COUNTIFS(Plantings!$C$1:$C$${n},${key})`,
        `=B${i + 1}-C${i + 1}`,
      ];
    });
    sheets.Order = figures.varieties.map((_, i) => {
      const r = i + 1;
      return [varietyName(i), ifs('W', 'B', `A${r}`), `=B${r}/Varieties!C${r}`, `=ROUNDUP(C${r}/5,0)`, `=D${r}*3.5`];
    });
  }
  const engine = HyperFormula.buildFromSheets(sheets, { licenseKey: 'gpl-v3', maxRows: Math.max(40_000, n + 1) });
  const id = (name: string): number => engine.getSheetId(name) ?? 0;
  const numbers = (sheet: string, column: number, count: number): number[] =>
    Array.from({ length: count }, (_, row) => {
      const value = engine.getCellValue({ sheet: id(sheet), col: column, row });
      return typeof value === 'number' ? value : Number.NaN;
    });
  const set = (sheet: string, col: number, row: number, value: number): void => {
    engine.setCellContents({ sheet: id(sheet), col, row }, value);
  };
  return {
    engine,
    spacing: (row, value) => set('Plantings', 4, row, value),
    germination: (variety, value) => set('Varieties', 1, variety, value),
    spare: (value) => set('Farm', 0, 0, value),
    read: (column) => numbers('Plantings', 9 + ROW_FORMULAS.findIndex(([name]) => name === column), n),
    orderCost: () => (rollups ? numbers('Order', 4, figures.varieties.length) : []),
  };
}
