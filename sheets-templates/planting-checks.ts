// Plantings, what to watch: each check is a sentence that appears where it applies. plantings.ts puts the parts together.

import { type CheckDeclaration, LEAF_GROWTH_LIMITS, LEAF_GROWTH_TOO_SMALL } from '../engine/index.ts';

export const PLANTING_CHECKS: readonly CheckDeclaration[] = [
  {
    id: 'wrong-lot',
    name: 'Wrong lot',
    level: 'error',
    column: 'seed-lot',
    says: 'IF([Seed lot].[Variety].[Variety] <> [Variety].[Variety]; "This seed lot is of another variety: choose one of this variety, or leave it blank for new seed.")',
  },
  {
    id: 'lot-to-replace',
    name: 'Lot to replace',
    level: 'warning',
    column: 'seed-lot',
    says: 'IF([Seed lot].[Advice] = "replace"; "This lot is to be replaced: leave it blank for new seed, or test it first.")',
  },
  {
    id: 'too-cool-or-warm-to-come-up',
    name: 'Too cool or warm to come up',
    level: 'warning',
    column: 'emergence',
    says: `IF([Raised]; IF([Germination temperature] < [Variety].[Crop].[Germination minimum];
      "It is cooler than the seed of this crop comes up in: germinate it warmer.";
      IF([Germination temperature] > [Variety].[Crop].[Germination maximum];
        "It is warmer than the seed of this crop comes up in: germinate it cooler.")))`,
  },
  {
    id: 'raised-cool-or-warm',
    name: 'Raised cool or warm',
    level: 'note',
    column: 'raising-temperature',
    says: `IF(AND([Raised]; NOT(ISBLANK([Variety].[Crop].[Raising temperature]))); IF([Raising temperature] < [Variety].[Crop].[Raising temperature] - 6 Cdeg;
      "It grows on cooler than this crop likes: it takes longer, and may stand still."; IF([Raising temperature] > [Variety].[Crop].[Raising temperature] + 6 Cdeg;
        "It grows on warmer than this crop likes: it gets long and soft.")))`,
  },
  {
    id: 'no-places',
    name: 'No places',
    level: 'warning',
    column: 'stations',
    says: 'IF([Stations] = 0; "The spacing is longer than the bed: nothing can be planted.")',
  },
  {
    id: 'longer-than-the-bed',
    name: 'Longer than the bed',
    level: 'error',
    column: 'bed-length-used',
    says: 'IF([Bed length used] > [Bed].[Length]; "Longer than the bed: shorten it, or split the planting over two beds.")',
  },
  {
    id: 'beds-overlap',
    name: 'Beds overlap',
    level: 'warning',
    column: 'bed',
    says: 'IF(AND([Bed in use] > [Bed].[Length]; [Bed length used] <= [Bed].[Length]); "More stands on this bed on that day than it holds: move a planting, or plant after the bed is free.")',
  },
  {
    id: 'spreads-over-the-path',
    name: 'Spreads over the path',
    level: 'note',
    column: 'spreads-over',
    says: `IF(AND([Variety].[Crop].[Beds across] > 1; ISBLANK([Spreads over])); "It covers " & TEXT([Variety].[Crop].[Beds across]; "0") & " beds in the end: name the bed beside it, or leave that ground free.")`,
  },
  {
    id: 'rotation',
    name: 'Rotation',
    level: 'warning',
    column: 'bed',
    says: 'IF([Back too soon]; [Family] & " stood on this bed " & IF([Years since the family] = 1; "last year"; TEXT([Years since the family]; "0") & " years ago") & "; " & TEXT([Variety].[Crop].[Rotation years]; "0") & " years are wanted. Choose another bed.")',
  },
  {
    id: 'after-its-own-family',
    name: 'After its own family',
    level: 'note',
    column: 'family-before-it',
    says: 'IF(NOT(ISBLANK([Family before it])); [Family] & " stood on this ground until " & TEXT([Family before it]; "d mmm") & ": another family between breaks the round of pests.")',
  },
  {
    id: 'too-early-without-cover',
    name: 'Too early without cover',
    level: 'warning',
    column: 'planted-out',
    says: 'IF(AND([Planted out] < [Earliest in the bed]; [Planted out] >= Farm[Season starts]; [Cover] = "none"); "Earlier than this crop stands without cover here: cover it, or wait until the date under Earliest in the bed.")',
  },
  {
    id: 'cold-soil',
    name: 'Cold soil',
    level: 'note',
    column: 'mean-when-it-goes-in',
    says: `IF([Mean when it goes in] < IF([Start] = "direct seed"; [Variety].[Crop].[Sowing soil minimum]; [Variety].[Crop].[Setting out minimum]) - 4 Cdeg;
      "The soil is much cooler then than this crop wants: it comes up or takes hold slowly, and some of it rots.")`,
  },
  {
    id: 'cold-nights',
    name: 'Cold nights',
    level: 'note',
    column: 'low-when-it-goes-in',
    says: `IF([Low when it goes in] < [Variety].[Crop].[Chilling limit] - 5 Cdeg; "Nights are colder then than this crop stands without harm, frost or none: cover it, or wait.")`,
  },
  {
    id: 'too-little-cold',
    name: 'Too little cold',
    level: 'warning',
    column: 'cold-days-had',
    says: `IF([Cold days had] < [Variety].[Crop].[Chill days]; "Only " & TEXT([Cold days had] / 1 day; "0") & " of the " & TEXT([Variety].[Crop].[Chill days] / 1 day; "0")
      & " days of cold that it needs: cool the cloves or plants first and type the days here, or it makes single rounds or no crop.")`,
  },
  {
    id: 'no-harvest',
    name: 'No harvest',
    level: 'warning',
    column: 'no-harvest-because',
    says: `IF(NOT(ISBLANK([No harvest because])); "Nothing to harvest: " & [No harvest because] & ".")`,
  },
  {
    id: 'harvested-later',
    name: 'Harvested later',
    level: 'note',
    column: 'harvest',
    says: `IF([Harvested later]; "Harvested from " & TEXT([Harvest]; "d mmm yyyy") & " to " & TEXT([Harvest ends]; "d mmm yyyy") & ", which ends more than a year after the season: its harvest, money and hours of picking are not counted yet.")`,
  },
  {
    id: 'part-of-it-only',
    name: 'Part of it only',
    level: 'note',
    column: 'finishes',
    says: `IF(AND([Finishes] > 0; [Finishes] < 1); "Only an early variety or a warm year ripens it before the cold: " & TEXT([Finishes]; "0%") & " of the yield is counted.")`,
  },
  {
    id: 'harvest-cut-short',
    name: 'Harvest cut short',
    level: 'note',
    column: 'window-lost',
    says: `IF([Window lost] > 5%; "Cold ends the harvest about " & TEXT([Cold ends it]; "d mmm") & ": " & TEXT([Window lost]; "0%") & " of it is lost and taken off the yield.")`,
  },
  {
    id: 'winter-size',
    name: 'Winter size',
    level: 'warning',
    column: 'winter-size',
    says: `IF([Winter size] = "too small"; "Small when winter sets in: it may die in a hard one, and yields little after a mild one, so less is counted. Sow earlier.";
      IF([Winter size] = "too large"; "Large when winter sets in: it may bolt in spring. Sow later."))`,
  },
  {
    id: 'ripe-in-the-heat',
    name: 'Ripe in the heat',
    level: 'note',
    column: 'ripe',
    says: 'IF(AND([Ripe] > [Ripe before the heat]; [Ripe] < [Too hot until]); "It ripens while the mean is above what this crop grows well in: look for quick and heat-hardy varieties, plant earlier, or wait for the autumn crop.")',
  },
  {
    id: 'through-the-winter',
    name: 'Through the winter',
    level: 'note',
    column: 'planted-out',
    says: 'IF(AND([Planted out] < Farm[Season starts]; [Variety].[Crop].[Hardiness] <> "very hardy"; OR(ISBLANK(Farm[Middle of summer]); NOT(ISBLANK(Farm[Average last frost])))); "Stands in the bed through the winter: this crop is seldom hardy enough without a tunnel.")',
  },
  {
    id: 'planted-late',
    name: 'Planted late',
    level: 'note',
    column: 'planted-out',
    says: 'IF([Planted out] > [Latest in the bed]; "Later than this crop should go in here: it may not be ripe before the heat or the cold. See Latest in the bed.")',
  },
  {
    id: 'off-latitude',
    name: 'Off latitude',
    level: 'warning',
    column: 'variety',
    says: 'IF([Variety].[Suits this farm] <> "yes"; [Variety].[Why])',
  },
  {
    id: 'small-at-bulbing',
    name: 'Small at bulbing',
    level: 'warning',
    column: 'leaf-growth-in-the-bed',
    says: `IF([Leaf growth in the bed] < ${LEAF_GROWTH_TOO_SMALL} degC day; "Bulbing starts almost as soon as it is planted out: plants that are not well grown or root slowly make small bulbs. Plant earlier, or choose one that needs longer days.")`,
  },
  {
    id: 'past-the-leaf-equation',
    name: 'Past the leaf equation',
    level: 'note',
    column: 'leaf-area-at-bulbing',
    says: `IF([Leaf growth at bulbing] > ${LEAF_GROWTH_LIMITS.degreeDays.max} degC day; "Large at bulbing: past ${LEAF_GROWTH_LIMITS.degreeDays.max} degC days of leaf growth plants shade one another, and no leaf area is given.")`,
  },
  {
    id: 'bolting',
    name: 'Bolting',
    level: 'warning',
    column: 'bolting-risk',
    says: 'IF([Bolting risk] = "high"; [Bolting why])',
  },
  {
    id: 'bolting-raised',
    name: 'Bolting raised',
    level: 'note',
    column: 'bolting-risk',
    says: 'IF([Bolting risk] = "raised"; [Bolting why])',
  },
  {
    id: 'outside-the-trials',
    name: 'Outside the trials',
    level: 'note',
    column: 'plant-density',
    says: 'IF(OR([Plant density] < [Least known density]; [Plant density] > [Most known density]); "Closer or wider than is known for this crop: the yield is a guess here.")',
  },
  {
    id: 'offset-gains-nothing',
    name: 'Offset gains nothing',
    level: 'note',
    column: 'pattern',
    says: 'IF([Pattern] = "offset"; OFFSETWHY([Bed length used]; [In-row spacing]; [Rows]))',
  },
  {
    id: 'dates-in-order',
    name: 'Dates in order',
    level: 'error',
    column: 'planted-out',
    says: 'IF([Planted out] < [Sown]; "Planted out before it was sown: look at both dates.")',
  },
  {
    id: 'seed-not-reckoned',
    name: 'Seed not reckoned',
    level: 'warning',
    column: 'seeds-needed',
    says: 'IF(AND([From seed]; ISBLANK([Seeds needed])); "No seed is ordered for this planting yet: it lacks a germination, a spacing, rows or a bed length.")',
  },
  {
    id: 'wanted-too-early',
    name: 'Wanted too early',
    level: 'warning',
    column: 'wanted-from',
    says: `IF([Ripe by] < [Harvest]; "Not for sale by " & TEXT([Wanted from]; "d mmm") & ": ripe on " & TEXT([Harvest]; "d mmm")
      & IF(ISBLANK([Date typed]); ", planted as early as makes sense. Want it later, cover it, or choose a quicker variety."; " from the date typed. Plant earlier, or want it later."))`,
  },
  {
    id: 'wanted-too-late',
    name: 'Wanted too late',
    level: 'warning',
    column: 'wanted-from',
    says: `IF([Harvest ends] + IF(ISBLANK([Variety].[Storage life]); 0 days; [Variety].[Storage life]) < [Wanted from]; "Over by " & TEXT([Harvest ends]; "d mmm")
      & ", and it does not keep until " & TEXT([Wanted from]; "d mmm") & ": want it earlier, or plant later under cover.")`,
  },
  {
    id: 'wanted-never-ripe',
    name: 'Wanted never ripe',
    level: 'warning',
    column: 'wanted-from',
    says: `IF(AND(NOT(ISBLANK([Wanted from])); [Ripe can be known]; ISBLANK([Harvest])); "Nothing is ripe by then: " & [No harvest because] & ". Want it at another time of year, or choose a quicker variety.")`,
  },
  {
    id: 'less-than-wanted',
    name: 'Less than wanted',
    level: 'note',
    column: 'expected',
    says: `IF(ISBLANK([Wanted pieces]); IF([Expected] < [Wanted] * 97%; TEXT([Expected] / [Wanted]; "0%") & " of what is wanted: lengthen it, or add a planting.");
      IF([Expected pieces] < [Wanted pieces] * 97%; TEXT([Expected pieces] / [Wanted pieces]; "0%") & " of what is wanted: lengthen it, or add a planting."))`,
  },
  {
    id: 'not-placed',
    name: 'Not placed',
    level: 'warning',
    column: 'bed',
    says: 'IF(ISBLANK([Bed]); [Not placed])',
  },
  {
    id: 'no-date',
    name: 'No date',
    level: 'note',
    column: 'sown',
    says: `IF(ISBLANK([Planted out]); "Enter a date, sown, planted out or wanted from: harvest, bench and bed wait for it. " & IF(ISBLANK(Farm[Latitude]); "Farm needs a latitude, and the frosts or a climate, to propose one.";
      IF(AND(ISBLANK(Farm[Middle of summer]); ISBLANK(Farm[Average last frost])); "None is proposed, for Monthly climate is empty and Farm has no frost dates."; "None is proposed: no day here suits this crop as it is started.")))`,
  },
];
