// Loss in curing and store, as a sum on paper. What curing, harvest signs and rotation are taken from their sources is held by
// tests/agronomy/as-their-sources-say.test.ts.
import { curedMass, SWEET_ONION_CURING_LOSS } from '../../engine/agronomy/curing.ts';
import { massAfter } from '../../engine/agronomy/storage.ts';
import type { Fact } from './check.ts';

export const facts: readonly Fact[] = [
  {
    kind: 'arithmetic',
    fact: 'mass after curing and six months in warm store',
    unit: 'kg',
    rule: '1000 kg x (1 - 7.3 %) x (1 - 3.3 %) six times over',
    points: [
      {
        what: '1000 kg of sweet onions',
        given: 757.9,
        computed: () => massAfter(curedMass(1000, SWEET_ONION_CURING_LOSS.optimal), 0.033, 6),
        tolerance: 0.05,
      },
    ],
  },
];
