// Arugula and sorrel. Each figure of the library stands beside its source; one without a
// publication says memory (recalled) or common practice (usual). library.ts gathers the families.

import type { Crop } from './figure.ts';
import { crop, given, like, range, recalled, usual } from './figure.ts';
import { both } from './source.ts';
import { CANTWELL, CONNECTICUT_ROTATION, FAO_56_SMALL_VEGETABLES, USDA_NUTRIENTS } from './sources-keeping.ts';
import { DAWLING_2012, KNOTT_GROWTH } from './sources-season.ts';
import { FEDERAL_COUNTS, FEDERAL_STANDARDS, KEW_SEEDS, NEW_HAMPSHIRE } from './sources-seeds.ts';
import { CORNELL_FAMILIES } from './sources-space.ts';

export const ARUGULA_AND_SORREL: readonly Crop[] = [
  crop(
    'arugula',
    'Arugula',
    {
      ...usual({
        'Also called': 'rocket, roquette, rucola',
        'Start methods': 'blocks, cells, direct seed',
        'Usual start': 'direct seed',
      }),
      ...recalled({ Family: 'Brassicaceae' }),
      ...given(KEW_SEEDS, { 'Seeds per gram': range('500', '526', '1000') }),
      ...given(NEW_HAMPSHIRE, { 'Germination standard': '60%' }),
      ...recalled({ 'Seed life': '3' }),
      ...recalled({
        'Germination minimum': '40 degF',
        'Germination best from': '45 degF',
        'Germination best to': '75 degF',
        'Germination maximum': '85 degF',
        'Emergence base': '1.4 degC',
        'Emergence thermal time': '70 degC day',
        'Seeding depth': '6 mm',
      }),
      ...recalled({
        'Weeks in propagation': range('3 weeks', '4 weeks', '4 weeks'),
        'Transplant height': '6 cm',
        'Usual seeds per block': range('4', '6', '8'),
      }),
      ...given(DAWLING_2012, { 'Frost limit': '22 degF' }),
      ...recalled({
        'Frost limit young': '-3 degC',
        'Plant out from last frost': '-5 weeks',
        'Sow outdoors from last frost': '-6 weeks',
      }),
      ...recalled({
        'Growth minimum': '40 degF',
        'Growth best from': '60 degF',
        'Growth best to': '65 degF',
        'Growth maximum': '75 degF',
        'Degree-day base': '40 degF',
      }),
      ...recalled({
        'In-row spacing': range('1 cm', '2 cm', '5 cm'),
        'Rows per bed': '6',
        'Clump in-row spacing': range('8 cm', '10 cm', '12 cm'),
      }),
      ...recalled({
        'Days to maturity': range('20 days', '28 days', '35 days'),
        'Days to maturity direct': range('21 days', '33 days', '45 days'),
        'Harvest window': range('14 days', '21 days', '28 days'),
      }),
      ...recalled({
        'Bolting trigger': 'heat and long days',
        'Bolting day length': '13.5 h',
        'Bolting heat': '20 degC',
        'Bolting heat days': '45 days',
      }),
      ...usual({ 'Harvest unit': 'weight' }),
      ...recalled({
        'Unit mass': '5 g',
        Yield: range('0.8 kg/m2', '1.5 kg/m2', '2.2 kg/m2'),
        Pickings: '2',
        'Days between pickings': range('10 days', '12 days', '14 days'),
        'Second cut share': '67%',
      }),
      ...usual({
        Picking: 'Cutting baby leaf with a knife',
        Packing: 'Washing and bagging leaves',
        Weeding: 'Weeding close-sown leaves',
        Cover: 'Putting on row cover',
      }),
      ...given(CANTWELL, {
        'Storage temperature': '0 degC',
        'Storage humidity': range('95%', '97.5%', '100%'),
        'Storage life': range('7 days', '9 days', '10 days'),
      }),
      ...given(CONNECTICUT_ROTATION, { 'Rotation years': range('3', '4', '7') }),
      ...given(USDA_NUTRIENTS, {
        'Nitrogen removal': '4.13 kg/t',
        'Phosphorus removal': '0.52 kg/t',
        'Potassium removal': '3.69 kg/t',
      }),
      ...like('lettuce', {
        'Crop coefficient initial': '0.7',
        'Crop coefficient mid': '1',
        'Crop coefficient end': '0.95',
      }),
    },
    'The published seed viability constants hardly answer to moisture and are left out.',
    'Not in the federal list of 1994; the revision of 2020 was not read.',
    'A cut gives 0.8 kg/m2 (0.4 to 1.8; memory).',
  ),
  crop(
    'sorrel',
    'Sorrel',
    {
      ...usual({
        'Also called': 'garden sorrel, French sorrel',
        'Start methods': 'blocks, cells, direct seed, plants',
        'Usual start': 'cells',
      }),
      ...given(CORNELL_FAMILIES, { Family: 'Polygonaceae' }),
      ...given(both(FEDERAL_COUNTS, KEW_SEEDS), { 'Seeds per gram': '1080' }),
      ...given(FEDERAL_STANDARDS, { 'Germination standard': '65%' }),
      ...recalled({ 'Seed life': '4' }),
      ...recalled({
        'Germination minimum': '41 degF',
        'Germination best from': '59 degF',
        'Germination best to': '77 degF',
        'Germination maximum': '86 degF',
        'Emergence base': '3 degC',
        'Emergence thermal time': '110 degC day',
        'Seeding depth': '5 mm',
      }),
      ...recalled({ 'Weeks in propagation': '5 weeks' }),
      ...recalled({
        'Frost limit': '-20 degC',
        'Plant out from last frost': '-4 weeks',
        'Sow outdoors from last frost': '-4 weeks',
      }),
      ...given(KNOTT_GROWTH, {
        'Growth minimum': '40 degF',
        'Growth best from': '60 degF',
        'Growth best to': '65 degF',
        'Growth maximum': '75 degF',
      }),
      ...recalled({ 'Degree-day base': '4.4 degC' }),
      ...usual({ 'Warmth counts from': 'spring growth' }),
      ...recalled({ 'In-row spacing': '30 cm', 'Rows per bed': '2' }),
      ...recalled({
        'Days to maturity': '45 days',
        'Days to maturity direct': '65 days',
        'Harvest window': '120 days',
      }),
      ...recalled({
        'Bolting trigger': 'long days',
        'Bolting day length': '14 h',
        'Bolting heat': '18 degC',
        'Bolting heat days': '14 days',
      }),
      ...usual({ 'Harvest unit': 'bunch' }),
      ...recalled({
        'Unit mass': '60 g',
        Yield: range('1.5 kg/m2', '2.5 kg/m2', '3.5 kg/m2'),
        'Days between pickings': '14 days',
        'Harvest curve middle': '50%',
        'Harvest curve spread': '40%',
      }),
      ...usual({
        Picking: 'Bunching leaves',
        Packing: 'Dunking bunches of leaves',
        Weeding: 'Hoeing and pulling among herbs',
      }),
      ...recalled({ 'Storage temperature': '0 degC', 'Storage humidity': '95%', 'Storage life': '10 days' }),
      ...given(USDA_NUTRIENTS, {
        'Nitrogen removal': '3.2 kg/t',
        'Phosphorus removal': '0.63 kg/t',
        'Potassium removal': '3.9 kg/t',
      }),
      ...given(FAO_56_SMALL_VEGETABLES, {
        'Crop coefficient initial': '0.7',
        'Crop coefficient mid': '1.05',
        'Crop coefficient end': '0.95',
      }),
    },
    'A perennial: days are of the first year.',
  ),
];
