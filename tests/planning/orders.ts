// Made-up orders from a seed: needs, suppliers with postage, packs. The tests and the bench share them.

import { type OrderQuestion, seededNumbers } from '../../engine/index.ts';

export function order(needs: number, suppliers: number, seed: number): OrderQuestion {
  const random = seededNumbers(seed);
  const whole = (from: number, to: number): number => from + Math.floor(random() * (to - from + 1));
  const wanted = Array.from({ length: needs }, () => whole(1, 60) * 50);
  const sellers = Array.from({ length: suppliers }, () => ({
    postage: whole(0, 16) / 2,
    freeFrom: random() < 0.6 ? whole(4, 24) * 5 : undefined,
    least: random() < 0.4 ? whole(1, 6) * 5 : 0,
  }));
  const offers = wanted.flatMap((_, need) =>
    sellers.flatMap((_, supplier) => {
      if (random() > 2.5 / suppliers) return [];
      const price = whole(250, 500) / 100;
      return [250, 1000, 5000].slice(0, whole(1, 3)).map((size, k) => ({
        need,
        supplier,
        size,
        price: Math.round(price * ([1, 2.6, 8][k] ?? 1) * 100) / 100,
      }));
    }),
  );
  return { needs: wanted, offers, suppliers: sellers };
}
