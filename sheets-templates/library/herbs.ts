// Basil and dill. Each figure of the library stands beside its source; one without a
// publication says memory (recalled) or common practice (usual). library.ts gathers the families.

import type { Crop } from './figure.ts';
import { crop, given, range, recalled, usual } from './figure.ts';
import { both } from './source.ts';
import {
  CANTWELL,
  CANTWELL_HERBS,
  DAVIS_STORE,
  FAO_56_SMALL_VEGETABLES,
  LANG_CAMERON,
  NEW_ENGLAND_16,
  USDA_NUTRIENTS,
} from './sources-keeping.ts';
import { CURREY, DAWLING_2012, WINTER_KILL } from './sources-season.ts';
import { FEDERAL_COUNTS, FEDERAL_STANDARDS, KEW_SEEDS, NEW_HAMPSHIRE } from './sources-seeds.ts';
import { BED_SHARE_NE, BIRJAND, CORNELL_FAMILIES, LENDWAY } from './sources-space.ts';

export const HERBS: readonly Crop[] = [
  crop(
    'basil',
    'Basil',
    {
      ...usual({ 'Also called': 'sweet basil', 'Start methods': 'blocks, cells, direct seed', 'Usual start': 'cells' }),
      ...given(CORNELL_FAMILIES, { Family: 'Lamiaceae' }),
      ...given(KEW_SEEDS, { 'Seeds per gram': range('600', '700', '909') }),
      ...given(NEW_HAMPSHIRE, { 'Germination standard': '70%' }),
      ...recalled({ 'Seed life': '5' }),
      ...recalled({
        'Germination minimum': '50 degF',
        'Germination best from': '70 degF',
        'Germination best to': '85 degF',
        'Germination maximum': '95 degF',
        'Emergence thermal time': '110 degC day',
        'Seeding depth': range('3 mm', '5 mm', '6 mm'),
      }),
      ...given(BIRJAND, { 'Emergence base': '6.1 degC' }),
      ...recalled({
        'Weeks in propagation': range('5 weeks', '6 weeks', '7 weeks'),
        'Transplant height': '10 cm',
        'Usual seeds per block': range('2', '4', '5'),
      }),
      ...given(WINTER_KILL, { 'Frost limit': '35 degF' }),
      ...recalled({
        'Chilling limit': '10 degC',
        'Plant out from last frost': '1 week',
        'Sow outdoors from last frost': '2 weeks',
        'Setting out minimum': '15 degC',
      }),
      ...recalled({
        'Growth minimum': '55 degF',
        'Growth best from': '70 degF',
        'Growth best to': '85 degF',
        'Growth maximum': '95 degF',
        'Degree-day base': '10.9 degC',
      }),
      ...given(CURREY, { 'Degree-day ceiling': '28 degC' }),
      ...recalled({
        'In-row spacing': range('15 cm', '20 cm', '30 cm'),
        'Rows per bed': '3',
        'Clump in-row spacing': range('20 cm', '25 cm', '30 cm'),
      }),
      ...recalled({
        'Days to maturity': range('30 days', '38 days', '45 days'),
        'Days to maturity direct': range('55 days', '65 days', '75 days'),
        'Harvest window low': '56 days',
      }),
      ...given(LENDWAY, { 'Harvest window': '67 days', 'Harvest window high': '147 days' }),
      ...usual({ 'Harvest unit': 'bunch' }),
      ...recalled({ 'Unit mass': '60 g', 'Days between pickings': range('3 days', '7 days', '14 days') }),
      ...given(BED_SHARE_NE, { Yield: range('0.5 kg/m2', '0.7 kg/m2', '1 kg/m2') }),
      ...given(LENDWAY, { 'Harvest curve middle': '46%', 'Harvest curve spread': '25%' }),
      ...usual({
        Picking: 'Bunching herbs',
        Packing: 'Dunking bunches of herbs',
        Weeding: 'Hoeing and pulling among herbs',
      }),
      ...given(both(DAVIS_STORE, LANG_CAMERON), { 'Storage temperature': range('10 degC', '12 degC', '15 degC') }),
      ...given(NEW_ENGLAND_16, { 'Storage humidity': range('90%', '92.5%', '95%') }),
      ...given(DAVIS_STORE, { 'Storage life': range('7 days', '10 days', '14 days') }),
      ...recalled({ 'Rotation years': '2' }),
      ...given(USDA_NUTRIENTS, {
        'Nitrogen removal': '5.04 kg/t',
        'Phosphorus removal': '0.56 kg/t',
        'Potassium removal': '2.95 kg/t',
      }),
      ...given(FAO_56_SMALL_VEGETABLES, {
        'Crop coefficient initial': '0.7',
        'Crop coefficient mid': '1.05',
        'Crop coefficient end': '0.95',
      }),
    },
    'Water use is that of the FAO-56 group of small vegetables.',
    'Not in the federal list of 1994; the revision of 2020 was not read.',
    'Wholesale bunches weigh 227 g.',
    'Published field yield, paths included: 0.3 to 0.7 kg/m2 (New England Vegetable Management Guide).',
  ),
  crop(
    'dill',
    'Dill',
    {
      ...usual({
        'Also called': 'dill weed',
        'Start methods': 'blocks, cells, direct seed',
        'Usual start': 'direct seed',
      }),
      ...given(CORNELL_FAMILIES, { Family: 'Apiaceae' }),
      ...given(both(FEDERAL_COUNTS, KEW_SEEDS), { 'Seeds per gram': range('556', '800', '800') }),
      ...given(FEDERAL_STANDARDS, { 'Germination standard': '60%' }),
      ...recalled({ 'Seed life': '3' }),
      ...recalled({
        'Germination minimum': '50 degF',
        'Germination best from': '60 degF',
        'Germination best to': '75 degF',
        'Germination maximum': '85 degF',
        'Emergence base': '3 degC',
        'Emergence thermal time': '135 degC day',
        'Seeding depth': '6 mm',
      }),
      ...recalled({
        'Weeks in propagation': range('4 weeks', '5 weeks', '6 weeks'),
        'Transplant height': '8 cm',
        'Usual seeds per block': range('4', '6', '8'),
      }),
      ...given(DAWLING_2012, { 'Frost limit': '25 degF' }),
      ...recalled({
        'Frost limit young': '-2 degC',
        'Plant out from last frost': '-2 weeks',
        'Sow outdoors from last frost': '-2 weeks',
      }),
      ...recalled({
        'Growth minimum': '45 degF',
        'Growth best from': '60 degF',
        'Growth best to': '70 degF',
        'Growth maximum': '80 degF',
        'Degree-day base': '40 degF',
      }),
      ...recalled({
        'In-row spacing': range('2.5 cm', '5 cm', '15 cm'),
        'Rows per bed': '4',
        'Clump in-row spacing': range('15 cm', '18 cm', '20 cm'),
      }),
      ...recalled({
        'Days to maturity': range('35 days', '40 days', '45 days'),
        'Days to maturity direct': range('40 days', '50 days', '60 days'),
        'Harvest window': range('14 days', '18 days', '21 days'),
      }),
      ...recalled({
        'Bolting trigger': 'heat and long days',
        'Bolting day length': '13.5 h',
        'Bolting heat': '20 degC',
        'Bolting heat days': '45 days',
      }),
      ...usual({ 'Harvest unit': 'bunch' }),
      ...recalled({
        'Unit mass': '60 g',
        Yield: range('0.6 kg/m2', '1.2 kg/m2', '1.8 kg/m2'),
        Pickings: '2',
        'Days between pickings': '14 days',
        'Second cut share': '43%',
      }),
      ...usual({
        Picking: 'Bunching herbs',
        Packing: 'Dunking bunches of herbs',
        Weeding: 'Weeding close-sown leaves',
      }),
      ...given(both(DAVIS_STORE, CANTWELL_HERBS), {
        'Storage temperature': range('0 degC', '0 degC', '5 degC'),
        'Storage life': range('14 days', '18 days', '21 days'),
      }),
      ...given(CANTWELL, { 'Storage humidity': range('95%', '97.5%', '100%') }),
      ...recalled({ 'Rotation years': '3' }),
      ...given(USDA_NUTRIENTS, {
        'Nitrogen removal': '5.54 kg/t',
        'Phosphorus removal': '0.66 kg/t',
        'Potassium removal': '7.38 kg/t',
      }),
      ...given(FAO_56_SMALL_VEGETABLES, {
        'Crop coefficient initial': '0.7',
        'Crop coefficient mid': '1.05',
        'Crop coefficient end': '0.95',
      }),
    },
    'Published rotation says a few years without a number.',
    'Water use is that of the FAO-56 group of small vegetables.',
  ),
];
