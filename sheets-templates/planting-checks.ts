// Plantings, what to watch: each check is a sentence that appears where it applies. plantings.ts puts the parts together.

import type { CheckDeclaration } from '../engine/index.ts';

export const PLANTING_CHECKS: readonly CheckDeclaration[] = [
  {
    name: 'Wrong lot',
    level: 'error',
    column: 'Seed lot',
    says: 'IF([Seed lot].[Variety].[Variety] <> [Variety].[Variety]; "This seed lot is of another variety: choose one of this variety, or leave it blank for new seed.")',
  },
  {
    name: 'Lot to replace',
    level: 'warning',
    column: 'Seed lot',
    says: 'IF([Seed lot].[Advice] = "replace"; "This lot is to be replaced: leave it blank for new seed, or test it first.")',
  },
  {
    name: 'Too cool or warm to come up',
    level: 'warning',
    column: 'Emergence',
    says: `IF([Raised]; IF([Germination temperature] < [Variety].[Crop].[Germination minimum];
      "It is cooler than the seed of this crop comes up in: germinate it warmer.";
      IF([Germination temperature] > [Variety].[Crop].[Germination maximum];
        "It is warmer than the seed of this crop comes up in: germinate it cooler.")))`,
  },
  {
    name: 'No places',
    level: 'warning',
    column: 'Stations',
    says: 'IF([Stations] = 0; "The spacing is longer than the bed: nothing can be planted.")',
  },
  {
    name: 'Longer than the bed',
    level: 'error',
    column: 'Bed length used',
    says: 'IF([Bed length used] > [Bed].[Length]; "Longer than the bed: shorten it, or split the planting over two beds.")',
  },
  {
    name: 'Beds overlap',
    level: 'warning',
    column: 'Bed',
    says: 'IF(AND([Bed in use] > [Bed].[Length]; [Bed length used] <= [Bed].[Length]); "More stands on this bed on that day than it holds: move a planting, or plant after the bed is free.")',
  },
  {
    name: 'Rotation',
    level: 'warning',
    column: 'Bed',
    says: 'IF([Back too soon]; [Family] & " stood on this bed " & IF([Years since the family] = 1; "last year"; TEXT([Years since the family]; "0") & " years ago") & "; " & TEXT([Variety].[Crop].[Rotation years]; "0") & " years are wanted. Choose another bed.")',
  },
  {
    name: 'Too early without cover',
    level: 'warning',
    column: 'Planted out',
    says: 'IF(AND([Planted out] < [Earliest in the bed]; [Planted out] >= Farm[Season starts]; [Cover] = "none"); "Earlier than this crop stands without cover here: cover it, or wait until the date under Earliest in the bed.")',
  },
  {
    name: 'Through the winter',
    level: 'note',
    column: 'Planted out',
    says: 'IF(AND([Planted out] < Farm[Season starts]; [Variety].[Crop].[Hardiness] <> "very hardy"); "Stands in the bed through the winter: this crop is seldom hardy enough without a tunnel.")',
  },
  {
    name: 'Late',
    level: 'warning',
    column: 'Harvest',
    says: 'IF(AND([Harvest] > Farm[First frost]; OR([Variety].[Crop].[Hardiness] = "tender"; [Variety].[Crop].[Hardiness] = "half-hardy")); "Comes in after the first frost, which this crop does not stand: plant earlier or choose a quicker variety.")',
  },
  {
    name: 'Planted late',
    level: 'note',
    column: 'Planted out',
    says: 'IF(AND([Planted out] > [Latest in the bed]; [Planted out] < Farm[First frost]); "Late for this crop: it may not finish before the first frost.")',
  },
  {
    name: 'Never bulbs',
    level: 'warning',
    column: 'Bulbing starts',
    says: 'IF(AND([Variety].[Bulb crop]; NOT(ISBLANK([Large enough])); NOT(ISBLANK(Farm[Latitude])); ISBLANK([Bulbing starts])); "It never bulbs here: the days stay shorter than this variety needs.")',
  },
  {
    name: 'Off latitude',
    level: 'warning',
    column: 'Variety',
    says: 'IF([Variety].[Suits this farm] <> "yes"; [Variety].[Why])',
  },
  {
    name: 'Small at bulbing',
    level: 'warning',
    column: 'Leaf growth in the bed',
    says: 'IF([Leaf growth in the bed] < 30 degC day; "Bulbing starts almost as soon as it is planted out, so the bulbs stay small: plant earlier, or choose one that needs longer days.")',
  },
  {
    name: 'Past the leaf equation',
    level: 'note',
    column: 'Leaf area at bulbing',
    says: 'IF([Leaf growth at bulbing] > 600 degC day; "Large at bulbing: past 600 degC days of leaf growth plants shade one another, and no leaf area is given.")',
  },
  {
    name: 'Bolting',
    level: 'warning',
    column: 'Bolting risk',
    says: 'IF([Bolting risk] <> "low"; [Bolting why])',
  },
  {
    name: 'Outside the trials',
    level: 'note',
    column: 'Plant density',
    says: 'IF(AND([Variety].[Bulb crop]; OR([Plant density] < 18.78/1 m2; [Plant density] > 334.55/1 m2)); "Outside the densities of the onion trials behind the yield curve (19 to 335 plants per m2): the yield is a guess here.")',
  },
  {
    name: 'Offset gains nothing',
    level: 'note',
    column: 'Pattern',
    says: 'IF([Pattern] = "offset"; OFFSETWHY([Bed length used]; [In-row spacing]; [Rows]))',
  },
  {
    name: 'Dates in order',
    level: 'error',
    column: 'Planted out',
    says: 'IF([Planted out] < [Sown]; "Planted out before it was sown: look at both dates.")',
  },
  {
    name: 'Seed not reckoned',
    level: 'warning',
    column: 'Seeds needed',
    says: 'IF(AND([From seed]; ISBLANK([Seeds needed])); "No seed is ordered for this planting yet: it lacks a germination, a spacing, rows or a bed length.")',
  },
  {
    name: 'No date',
    level: 'note',
    column: 'Sown',
    says: 'IF(AND([From seed]; ISBLANK([Sown])); "Enter the sowing date: harvest, bench and bed wait for it.")',
  },
];
