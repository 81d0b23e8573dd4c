// Bunching onions and chives. Each figure of the library stands beside its source; one without a
// publication says memory (recalled) or common practice (usual). library.ts gathers the families.

import type { Crop } from './figure.ts';
import { crop, given, like, range, recalled, usual } from './figure.ts';
import { both } from './source.ts';
import {
  CANTWELL,
  CANTWELL_HERBS,
  FAO_56,
  FAO_56_SMALL_VEGETABLES,
  FAO_56_STAGES,
  NEW_ENGLAND_16,
  USDA_NUTRIENTS,
} from './sources-keeping.ts';
import { DAWLING_ALLIUMS, KNOTT_GROWTH } from './sources-season.ts';
import { FEDERAL_COUNTS, FEDERAL_STANDARDS, KEW_SEEDS, MERCHANTS } from './sources-seeds.ts';
import { CORNELL_FAMILIES, NORTH_DAKOTA } from './sources-space.ts';

export const BUNCHING_ALLIUMS: readonly Crop[] = [
  crop(
    'onion-bunching',
    'Onion, bunching',
    {
      ...usual({
        'Also called': 'scallions, green onions, spring onions, bunching onions, salad onions',
        'Start methods': 'blocks, cells, direct seed',
        'Usual start': 'blocks',
        Overwinters: 'either',
      }),
      ...given(CORNELL_FAMILIES, { Family: 'Amaryllidaceae' }),
      ...given(both(FEDERAL_COUNTS, KEW_SEEDS, MERCHANTS), { 'Seeds per gram': range('250', '282', '301') }),
      ...given(FEDERAL_STANDARDS, { 'Germination standard': '70%' }),
      ...like('onion', { 'Seed life': '1' }),
      ...recalled({ 'Seed oil': '24%' }),
      ...like('onion', {
        'Germination minimum': '35 degF',
        'Germination best from': '50 degF',
        'Germination best to': '95 degF',
        'Germination maximum': '95 degF',
        'Emergence base': '0.89 degC',
        'Emergence thermal time': '98.2 degC day',
      }),
      ...recalled({ 'Seeding depth': range('6 mm', '10 mm', '13 mm') }),
      ...recalled({
        'Weeks in propagation': range('6 weeks', '8 weeks', '10 weeks'),
        'Transplant height': '15 cm',
        'Usual seeds per block': range('8', '10', '12'),
      }),
      ...given(DAWLING_ALLIUMS, { 'Frost limit': '0 degF' }),
      ...recalled({ 'Plant out from last frost': '-4 weeks', 'Sow outdoors from last frost': '-6 weeks' }),
      ...given(KNOTT_GROWTH, {
        'Growth minimum': '45 degF',
        'Growth best from': '55 degF',
        'Growth best to': '75 degF',
        'Growth maximum': '85 degF',
      }),
      ...like('onion', { 'Degree-day base': '6 degC', 'Degree-day ceiling': '20 degC' }),
      ...recalled({
        'In-row spacing': range('1.5 cm', '2.5 cm', '5 cm'),
        'Rows per bed': '5',
        'Clump in-row spacing': range('15 cm', '18 cm', '20 cm'),
      }),
      ...recalled({
        'Days to maturity': range('45 days', '55 days', '65 days'),
        'Days to maturity direct': range('60 days', '70 days', '80 days'),
        'Harvest window': range('14 days', '18 days', '21 days'),
      }),
      ...recalled({ 'Bolting trigger': 'cold' }),
      ...like('onion', {
        'Bolting size warmth': '600 degC day',
        'Bolting size warmth base': '6 degC',
        'Bolting cold base': '0 degC',
        'Bolting cold best from': '5 degC',
        'Bolting cold best to': '13 degC',
        'Bolting cold': '15 degC',
        'Bolting cold days': '14 days',
        'Bolting cold days most': '60 days',
      }),
      ...usual({ 'Harvest unit': 'bunch', 'Plants per harvest unit': '8' }),
      ...recalled({
        'Unit mass': '115 g',
        Yield: range('2 kg/m2', '3.25 kg/m2', '4.5 kg/m2'),
        'Days between pickings': '7 days',
        'Harvest curve middle': '50%',
        'Harvest curve spread': '30%',
      }),
      ...usual({
        Picking: 'Bunching onions',
        Packing: 'Peeling and trimming bunching onions',
        Weeding: 'Weeding bunching onions',
      }),
      ...given(both(CANTWELL, NEW_ENGLAND_16), {
        'Storage temperature': '0 degC',
        'Storage humidity': range('95%', '97.5%', '100%'),
        'Storage life': range('7 days', '14 days', '21 days'),
      }),
      ...usual({ 'Rotation years': range('3', '4', '4') }),
      ...given(USDA_NUTRIENTS, {
        'Nitrogen removal': '2.93 kg/t',
        'Phosphorus removal': '0.37 kg/t',
        'Potassium removal': '2.76 kg/t',
      }),
      ...given(FAO_56, { 'Crop coefficient initial': '0.7', 'Crop coefficient mid': '1', 'Crop coefficient end': '1' }),
      ...given(FAO_56_STAGES, {
        'Initial stage': '25 days',
        'Development stage': '30 days',
        'Mid-season stage': '10 days',
        'Late stage': '5 days',
      }),
    },
    'A plant weighs 15.6 g (5 to 26 g) (USDA SR28 household weights).',
  ),
  crop(
    'chives',
    'Chives',
    {
      ...usual({ 'Also called': 'chive', 'Start methods': 'blocks, cells, plants', 'Usual start': 'blocks' }),
      ...given(CORNELL_FAMILIES, { Family: 'Amaryllidaceae' }),
      ...given(KEW_SEEDS, { 'Seeds per gram': '1010' }),
      ...given(FEDERAL_STANDARDS, { 'Germination standard': '50%' }),
      ...recalled({ 'Seed life': '2' }),
      ...recalled({
        'Germination minimum': '41 degF',
        'Germination best from': '59 degF',
        'Germination best to': '77 degF',
        'Germination maximum': '86 degF',
        'Emergence base': '1.7 degC',
        'Emergence thermal time': '222 degC day',
        'Seeding depth': '6 mm',
      }),
      ...recalled({ 'Weeks in propagation': '8 weeks' }),
      ...recalled({
        'Frost limit': '-25 degC',
        'Plant out from last frost': '-4 weeks',
        'Sow outdoors from last frost': '-4 weeks',
      }),
      ...given(KNOTT_GROWTH, {
        'Growth minimum': '45 degF',
        'Growth best from': '55 degF',
        'Growth best to': '75 degF',
        'Growth maximum': '85 degF',
      }),
      ...like('leek', { 'Degree-day base': '4 degC' }),
      ...usual({ 'Warmth counts from': 'spring growth' }),
      ...recalled({ 'In-row spacing': '20 cm', 'Rows per bed': '3' }),
      ...recalled({ 'Days to maturity': '60 days', 'Harvest window': '120 days' }),
      ...given(NORTH_DAKOTA, { 'Days to maturity direct': '90 days' }),
      ...usual({ 'Harvest unit': 'bunch' }),
      ...recalled({
        'Unit mass': '30 g',
        Yield: range('1 kg/m2', '1.8 kg/m2', '2.5 kg/m2'),
        'Days between pickings': '21 days',
        'Harvest curve middle': '50%',
        'Harvest curve spread': '40%',
      }),
      ...usual({
        Picking: 'Bunching herbs',
        Packing: 'Dunking bunches of herbs',
        Weeding: 'Hoeing and pulling among herbs',
      }),
      ...given(CANTWELL_HERBS, {
        'Storage temperature': '0 degC',
        'Storage humidity': '97%',
        'Storage life': '18 days',
      }),
      ...given(USDA_NUTRIENTS, {
        'Nitrogen removal': '5.23 kg/t',
        'Phosphorus removal': '0.58 kg/t',
        'Potassium removal': '2.96 kg/t',
      }),
      ...given(FAO_56_SMALL_VEGETABLES, {
        'Crop coefficient initial': '0.7',
        'Crop coefficient mid': '1.05',
        'Crop coefficient end': '0.95',
      }),
    },
    'A perennial; 8 to 12 seeds go in one block (memory).',
  ),
];
