// The figures by which a grower tells one plan from another, and the amounts by week that stand behind them: what compared
// branches show first. By ids, so that they hold whatever a workbook calls its sheets.

import type { NamedFigure, WeeklyFigure } from '../engine/index.ts';

function total(id: string, name: string, fold: 'SUM' | 'MAX' | 'MIN', sheet: string, column: string): NamedFigure {
  const formula = `${fold}('#${sheet}'[#${sheet}/${column}])`;
  return { id, name, figure: { figure: 'formula', formula }, of: { sheet, column } };
}

export const PLAN_TOTALS: readonly NamedFigure[] = [
  total('yield', 'Yield to sell', 'SUM', 'plantings', 'yield-this-season'),
  total('pieces', 'Pieces', 'SUM', 'plantings', 'pieces-this-season'),
  total('seeds', 'Seeds', 'SUM', 'varieties', 'seeds-needed'),
  total('seed-cost', 'Cost of the seed order', 'SUM', 'seed-order', 'cost'),
  total('costs', 'Costs', 'SUM', 'plantings', 'costs-this-season'),
  total('revenue', 'Revenue', 'SUM', 'plantings', 'revenue-this-season'),
  total('margin', 'Margin', 'SUM', 'plantings', 'margin-this-season'),
  total('hours', 'Hours on plantings', 'SUM', 'plantings', 'hours-this-season'),
  total('busiest-week', 'Hours of the busiest week', 'MAX', 'labour', 'hours'),
  total('hours-over', 'Hours above the hands there are', 'SUM', 'labour', 'over'),
  total('ground', 'Bed length by week, planted', 'SUM', 'bed-calendar', 'planted'),
  total('bed-room', 'Bed length by week, free', 'SUM', 'bed-calendar', 'free'),
  total('bench-room', 'Bench room free at the fullest', 'MIN', 'propagation', 'bench-free'),
  total('racks', 'Curing racks at their fullest', 'MAX', 'harvest-and-curing', 'racks-that-day'),
  total('store', 'Fullest store', 'MAX', 'stores-by-week', 'full'),
  total('short', 'Short of demand', 'SUM', 'supply-against-demand', 'short'),
  total('lost', 'Lost in store', 'SUM', 'stores-by-week', 'lost'),
  { id: 'errors', name: 'Findings: errors', figure: { figure: 'findings', level: 'error' } },
  { id: 'warnings', name: 'Findings: warnings', figure: { figure: 'findings', level: 'warning' } },
];

export const PLAN_BY_WEEK: readonly WeeklyFigure[] = [
  { id: 'harvest', name: 'Harvest', sheet: 'weekly-harvest', date: 'week-starts', column: 'mass' },
  { id: 'pieces', name: 'Pieces', sheet: 'weekly-harvest', date: 'week-starts', column: 'pieces' },
  { id: 'hours', name: 'Hours', sheet: 'labour', date: 'monday', column: 'hours' },
  { id: 'sold', name: 'Sold', sheet: 'supply-against-demand', date: 'week-starts', column: 'sold' },
  { id: 'short', name: 'Short of demand', sheet: 'supply-against-demand', date: 'week-starts', column: 'short' },
  { id: 'in-store', name: 'In store', sheet: 'stores-by-week', date: 'week-starts', column: 'left' },
  { id: 'bed-room', name: 'Bed length free', sheet: 'bed-calendar', date: 'week-starts', column: 'free' },
];
