// Garlic and leek. Each figure of the library stands beside its source; one without a
// publication says memory (recalled) or common practice (usual). library.ts gathers the families.

import type { Crop } from './figure.ts';
import { crop, given, range, recalled, usual } from './figure.ts';
import { both } from './source.ts';
import {
  CANTWELL,
  FAO_56,
  FAO_56_SMALL_VEGETABLES,
  HANDBOOK_66_2002,
  NEW_ENGLAND_16,
  UMASS_STORE,
  USDA_NUTRIENTS,
} from './sources-keeping.ts';
import {
  DAWLING_ALLIUMS,
  DEL_POZO,
  ILLINOIS_FROST,
  KNOTT_GROWTH,
  LEAF_PACE,
  UC_TRANSPLANTS,
  WIEBE,
  WURR_LEEK,
  WURR_PLANTS,
} from './sources-season.ts';
import {
  CALIFORNIA_HANDBOOK,
  FEDERAL_COUNTS,
  FEDERAL_STANDARDS,
  KEW_SEEDS,
  KNOTT_LIFE,
  MERCHANTS,
} from './sources-seeds.ts';
import { BED_SHARE_NE, BREWSTER_LEEK, CORNELL_FAMILIES, NEW_ENGLAND_15 } from './sources-space.ts';

export const GARLIC_AND_LEEK: readonly Crop[] = [
  crop(
    'garlic',
    'Garlic',
    {
      ...usual({
        'Also called': 'hardneck, softneck',
        'Start methods': 'sets (cloves)',
        'Usual start': 'sets',
        'Planted piece': 'clove',
        Overwinters: 'autumn planted',
      }),
      ...given(CORNELL_FAMILIES, { Family: 'Amaryllidaceae' }),
      ...recalled({ 'Planted piece mass': '5 g' }),
      ...given(CALIFORNIA_HANDBOOK, {
        'Germination minimum': '32 degF',
        'Germination best from': '65 degF',
        'Germination best to': '85 degF',
        'Germination maximum': '95 degF',
      }),
      ...recalled({ 'Seeding depth': range('50 mm', '63 mm', '75 mm') }),
      ...recalled({ 'Frost limit': '0 degF', 'Sow outdoors from last frost': '-6 weeks' }),
      ...given(DAWLING_ALLIUMS, { 'Autumn soil maximum': '10 degC' }),
      ...given(KNOTT_GROWTH, {
        'Growth minimum': '45 degF',
        'Growth best from': '55 degF',
        'Growth best to': '75 degF',
        'Growth maximum': '85 degF',
      }),
      ...recalled({
        'Degree-day base': '0 degC',
        'Warmth to harvest direct': range('1220 degC day', '1470 degC day', '1680 degC day'),
      }),
      ...usual({ 'Warmth counts from': '12-hour day in spring' }),
      ...given(DAWLING_ALLIUMS, { 'Chill below': '40 degF', 'Chill days': '40 days' }),
      ...recalled({
        'In-row spacing': range('10 cm', '15 cm', '20 cm'),
        'Rows per bed': '3',
        'Share of ceiling': '70%',
      }),
      ...recalled({
        'Days to maturity direct': range('240 days', '260 days', '280 days'),
        'Harvest window': '10 days',
      }),
      ...given(DEL_POZO, { 'Critical day length': range('12 h', '13 h', '14 h') }),
      ...usual({ 'Harvest unit': 'bulb' }),
      ...recalled({ 'Unit mass': '55 g', Yield: range('0.6 kg/m2', '1.2 kg/m2', '1.8 kg/m2') }),
      ...usual({ Picking: 'Forking garlic', Weeding: 'Weeding garlic under straw', Cleaning: 'Cleaning cured garlic' }),
      ...recalled({
        'Curing days': range('14 days', '21 days', '28 days'),
        'Curing loss': range('20%', '25%', '30%'),
        'Monthly storage loss': '2%',
      }),
      ...given(both(CANTWELL, HANDBOOK_66_2002), {
        'Storage temperature': range('-1 degC', '-0.5 degC', '0 degC'),
        'Storage humidity': range('60%', '65%', '70%'),
      }),
      ...given(UMASS_STORE, { 'Storage life': range('180 days', '195 days', '210 days') }),
      ...usual({ 'Rotation years': range('3', '4', '4') }),
      ...given(USDA_NUTRIENTS, {
        'Nitrogen removal': '10.18 kg/t',
        'Phosphorus removal': '1.53 kg/t',
        'Potassium removal': '4.01 kg/t',
      }),
      ...given(FAO_56, {
        'Crop coefficient initial': '0.7',
        'Crop coefficient mid': '1',
        'Crop coefficient end': '0.7',
      }),
    },
    'Normally set in autumn, 1 to 5 weeks after the first frost; the days to maturity count from there.',
    'The germination temperatures are as printed and mean little for cloves.',
    'Three rows a bed of bulbs of 55 g give about 1.2 kg/m2 (memory), so weigh your own. Published yields are of wide field stands, paths included: 0.2 to 0.7 kg/m2 (New England Vegetable Management Guide).',
    'The warmth of garlic counts from the spring day of 12 hours to harvest, fitted to recalled harvest dates of eight places: 12 days off at worst.',
  ),
  crop(
    'leek',
    'Leek',
    {
      ...usual({
        'Also called': 'leeks',
        'Start methods': 'blocks, cells, direct seed, plants',
        'Usual start': 'blocks',
        Overwinters: 'either',
      }),
      ...given(CORNELL_FAMILIES, { Family: 'Amaryllidaceae' }),
      ...given(both(FEDERAL_COUNTS, KEW_SEEDS, MERCHANTS), { 'Seeds per gram': range('278', '390', '395') }),
      ...given(FEDERAL_STANDARDS, { 'Germination standard': '60%' }),
      ...given(KNOTT_LIFE, { 'Seed life': '2' }),
      ...recalled({ 'Seed oil': '23%' }),
      ...given(CALIFORNIA_HANDBOOK, {
        'Germination minimum': '32 degF',
        'Germination best from': '65 degF',
        'Germination best to': '85 degF',
        'Germination maximum': '95 degF',
      }),
      ...recalled({
        'Emergence base': '1.7 degC',
        'Emergence thermal time': '222 degC day',
        'Seeding depth': range('6 mm', '10 mm', '13 mm'),
      }),
      ...given(UC_TRANSPLANTS, { 'Weeks in propagation': range('6 weeks', '8 weeks', '8 weeks') }),
      ...recalled({ 'Transplant height': '23 cm', 'Usual seeds per block': range('2', '4', '5') }),
      ...given(DAWLING_ALLIUMS, { 'Frost limit': '10 degF' }),
      ...given(ILLINOIS_FROST, { 'Plant out from last frost': '-4 weeks', 'Sow outdoors from last frost': '-4 weeks' }),
      ...given(KNOTT_GROWTH, {
        'Growth minimum': '45 degF',
        'Growth best from': '55 degF',
        'Growth best to': '75 degF',
        'Growth maximum': '85 degF',
      }),
      ...given(WURR_PLANTS, { 'Degree-day base': '4 degC', 'Degree-day ceiling': '23 degC' }),
      ...recalled({
        'In-row spacing': range('8 cm', '15 cm', '20 cm'),
        'Rows per bed': '3',
        'Clump in-row spacing': range('20 cm', '25 cm', '30 cm'),
      }),
      ...given(BREWSTER_LEEK, { 'Density least': '30 plants/m2', 'Density most': '60 plants/m2' }),
      ...recalled({
        'Days to maturity': range('75 days', '98 days', '120 days'),
        'Days to maturity direct': range('120 days', '135 days', '150 days'),
        'Harvest window': '60 days',
      }),
      ...given(WURR_LEEK, {
        'Bolting trigger': 'cold',
        'Bolting cold best from': '4 degC',
        'Bolting cold best to': '8 degC',
        'Bolting cold days most': '42 days',
      }),
      ...given(WIEBE, { 'Bolting size': '4 leaves', 'Bolting cold': '18 degC' }),
      ...given(LEAF_PACE, { 'Bolting size warmth': '280 degC day', 'Bolting size warmth base': '0 degC' }),
      ...recalled({ 'Bolting cold base': '0 degC', 'Bolting cold days': '21 days' }),
      ...usual({ 'Harvest unit': 'bunch', 'Plants per harvest unit': '3' }),
      ...given(NEW_ENGLAND_15, { 'Unit mass': '567 g' }),
      ...given(BED_SHARE_NE, { Yield: range('4.8 kg/m2', '5.5 kg/m2', '6.2 kg/m2') }),
      ...usual({
        Picking: 'Lifting and bunching leeks',
        Packing: 'Trimming leeks',
        Weeding: 'Weeding planted alliums',
      }),
      ...given(both(CANTWELL, NEW_ENGLAND_16), {
        'Storage temperature': '0 degC',
        'Storage humidity': range('95%', '97.5%', '100%'),
        'Storage life': range('30 days', '60 days', '90 days'),
      }),
      ...usual({ 'Rotation years': range('3', '4', '4') }),
      ...given(USDA_NUTRIENTS, {
        'Nitrogen removal': '2.4 kg/t',
        'Phosphorus removal': '0.35 kg/t',
        'Potassium removal': '1.8 kg/t',
      }),
      ...given(FAO_56_SMALL_VEGETABLES, {
        'Crop coefficient initial': '0.7',
        'Crop coefficient mid': '1.05',
        'Crop coefficient end': '0.95',
      }),
    },
    'Editions give a seed life of 2 or 3 years. Leek was read at 6 to 8 weeks in trays; 8 to 12 is common.',
    'Published field yield, paths included: 3.1 to 4 kg/m2 (New England Vegetable Management Guide).',
  ),
];
