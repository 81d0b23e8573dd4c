// The built-in workbooks by name. The terminal and the browser call this file alone. It only hands on: what the page's first
// load takes from here must not bring the acts with it.

export type { Act } from './acts/act.ts';
export { type ChooseWish, chooseAmounts } from './acts/choose-amounts.ts';
export { ALL_WITHIN } from './acts/choose-limits.ts';
export { laySuccession } from './acts/lay-succession.ts';
export { laySuccessions } from './acts/lay-successions.ts';
export { plantWay } from './acts/plant-way.ts';
export { type BedWish, bedWish, proposeBeds } from './acts/propose-beds.ts';
export { ALONG, PLANS, type RollOverOptions, rollOver } from './acts/roll-over.ts';
export { isLearned, type LearnedOffer, learnedOffers, takeOver } from './acts/take-over.ts';
export { workOutOrder } from './acts/work-out-order.ts';
export { SEASON_CHANCES, WEEKLY_CHANCES, type WeeklyChance } from './chance.ts';
export { groundIn } from './ground.ts';
export type { NamedRow } from './names.ts';
export { rowsById } from './names.ts';
export { OFFERS, type Offer, templateShelf, todaysTemplate } from './offers.ts';
export { type OrderLine, orderCsv, ordersOf, type SupplierOrder } from './orders.ts';
export { SEASON, type SeasonOptions, seasonStart, startOf } from './season.ts';
export { PLAN_BY_WEEK, PLAN_TOTALS } from './totals.ts';
