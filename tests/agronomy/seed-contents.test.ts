// Oil and sealed-packet moisture: the published table, and agreement with what the crop library starts a grower with.

import { describe, expect, test } from 'vitest';
import { SEALED_PACKET_MOISTURE, SEED_OIL } from '../../engine/agronomy/seed-contents.ts';
import { LIBRARY } from '../../sheets-templates/library/library.ts';

// 7 CFR 201.36c, per cent of fresh weight, as Hawaii Administrative Rules 4-67 repeat it in Table 1.
const PUBLISHED: readonly (readonly [number, string])[] = [
  [5, 'Broccoli, Brussels sprouts, Cabbage, Cauliflower, Chinese cabbage, Collards, Kale, Kohlrabi'],
  [5.5, 'Lettuce'],
  [6, 'Cucumber, Eggplant, Muskmelon, Parsnip'],
  [6.5, 'Chives, Leek, Onion, Parsley'],
  [7, 'Carrot, Celeriac, Celery'],
  [7.5, 'Beet'],
];

// Kinds whose names hold a comma.
const PUBLISHED_BY_NAME: readonly (readonly [string, number])[] = [
  ['Mustard, India', 5],
  ['Onion, Welsh', 6.5],
  ['Bean, garden', 7],
  ['Bean, lima', 7],
  ['Chard, Swiss', 7.5],
  ['Corn, sweet', 8],
];

describe('sealed packets', () => {
  test('hold at most the published moisture, kind by kind and no other kind', () => {
    const published = [
      ...PUBLISHED.flatMap(([percent, kinds]) => kinds.split(', ').map((kind) => [kind, percent] as const)),
      ...PUBLISHED_BY_NAME,
    ];
    const inPercent = Object.entries(SEALED_PACKET_MOISTURE).map(([kind, share]): [string, number] => [
      kind,
      Math.round(share * 1000) / 10,
    ]);
    expect(new Map(inPercent)).toEqual(new Map(published));
  });
});

describe('oil of the dry seed', () => {
  test('is what the crop library gives a crop of the same name', () => {
    const shares = new Map(SEED_OIL.map(({ crop, oil }) => [crop, oil]));
    const compared = LIBRARY.filter((crop) => shares.has(crop.name) && crop.figures['Seed oil'] !== undefined);
    expect(compared.length).toBeGreaterThan(10);
    for (const crop of compared) {
      expect([crop.name, crop.figures['Seed oil']?.text]).toEqual([
        crop.name,
        `${Math.round((shares.get(crop.name) ?? Number.NaN) * 100)}%`,
      ]);
    }
  });

  test('names each crop once and says that the figure is recalled', () => {
    expect(new Set(SEED_OIL.map(({ crop }) => crop)).size).toBe(21);
    for (const { note } of SEED_OIL) expect(note).toMatch(/^memory/);
  });
});
