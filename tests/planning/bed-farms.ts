// Made-up farms for the bed plan: beds and plantings from a seed. The tests and the bench share them.

import { type BedQuestion, type PlanPlanting, seededNumbers } from '../../engine/index.ts';

const FAMILIES = [
  'Asteraceae',
  'Brassicaceae',
  'Apiaceae',
  'Amaryllidaceae',
  'Solanaceae',
  'Cucurbitaceae',
  'Fabaceae',
];
const FIRST_DAY = 20_500;

/** So many beds in fields of six and so many plantings, a quarter of them long ones; `share` of all stand fixed. */
export function farm(beds: number, plantings: number, seed: number, share = 0.1): BedQuestion {
  const random = seededNumbers(seed);
  const whole = (most: number): number => Math.floor(random() * most);
  const family = (): string => FAMILIES[whole(FAMILIES.length)] ?? '';
  const bedList = Array.from({ length: beds }, (_, b) => ({
    length: b % 6 === 5 ? 30 : 15,
    width: 0.76,
    field: `field ${Math.floor(b / 6)}`,
    families: Array.from({ length: 4 }, () => (random() < 0.8 ? family() : '')),
  }));
  const list = Array.from({ length: plantings }, (): PlanPlanting => {
    const of = family();
    const from = FIRST_DAY + whole(180);
    const planting = {
      length: random() < 0.25 ? 15 : 3 + whole(10),
      width: 0.76,
      from,
      until: from + 40 + whole(70),
      crop: `${of} ${whole(3)}`,
      family: of,
      rotationYears: 1 + whole(4),
      across: random() < 0.04 ? 2 : 1,
    };
    return random() < share ? { ...planting, fixed: whole(beds) } : planting;
  });
  return { beds: bedList, plantings: list };
}
