// Parsley and cilantro. Each figure of the library stands beside its source; one without a
// publication says memory (recalled) or common practice (usual). library.ts gathers the families.

import type { Crop } from './figure.ts';
import { crop, given, range, recalled, usual } from './figure.ts';
import { both } from './source.ts';
import {
  CANTWELL_HERBS,
  DAVIS_STORE,
  FAO_56_SMALL_VEGETABLES,
  NEW_ENGLAND_16,
  USDA_NUTRIENTS,
} from './sources-keeping.ts';
import { GEORGIA_SOIL, KNOTT_GROWTH } from './sources-season.ts';
import {
  EMERGENCE_FIT,
  FEDERAL_COUNTS,
  FEDERAL_STANDARDS,
  HARRINGTON,
  KEW_SEEDS,
  KNOTT_LIFE,
  MERCHANTS,
  NEW_HAMPSHIRE,
} from './sources-seeds.ts';
import { CORNELL_FAMILIES, KANSAS_ROWS, NORTH_DAKOTA } from './sources-space.ts';

export const LEAF_HERBS: readonly Crop[] = [
  crop(
    'parsley',
    'Parsley',
    {
      ...usual({
        'Also called': 'flat parsley, curled parsley',
        'Start methods': 'blocks, cells, direct seed',
        'Usual start': 'blocks',
        Overwinters: 'either',
      }),
      ...given(CORNELL_FAMILIES, { Family: 'Apiaceae' }),
      ...given(both(FEDERAL_COUNTS, KEW_SEEDS, MERCHANTS), { 'Seeds per gram': range('529', '640', '650') }),
      ...given(FEDERAL_STANDARDS, { 'Germination standard': '60%' }),
      ...given(KNOTT_LIFE, { 'Seed life': '1' }),
      ...recalled({ 'Seed oil': '22%' }),
      ...given(HARRINGTON, {
        'Germination minimum': '40 degF',
        'Germination best from': '50 degF',
        'Germination best to': '85 degF',
        'Germination maximum': '90 degF',
      }),
      ...given(EMERGENCE_FIT, { 'Emergence base': '0.14 degC', 'Emergence thermal time': '270.7 degC day' }),
      ...recalled({ 'Seeding depth': '6 mm' }),
      ...given(GEORGIA_SOIL, { 'Sowing soil minimum': '45 degF' }),
      ...recalled({
        'Weeks in propagation': range('7 weeks', '9 weeks', '10 weeks'),
        'Transplant height': '8 cm',
        'Usual seeds per block': range('2', '3', '4'),
      }),
      ...recalled({
        'Frost limit': '14 degF',
        'Frost limit young': '-6 degC',
        'Plant out from last frost': '-4 weeks',
        'Sow outdoors from last frost': '-4 weeks',
      }),
      ...given(KNOTT_GROWTH, {
        'Growth minimum': '45 degF',
        'Growth best from': '60 degF',
        'Growth best to': '65 degF',
        'Growth maximum': '75 degF',
      }),
      ...recalled({ 'Degree-day base': '40 degF' }),
      ...recalled({
        'In-row spacing': range('10 cm', '15 cm', '25 cm'),
        'Rows per bed': '3',
        'Clump in-row spacing': range('20 cm', '25 cm', '30 cm'),
      }),
      ...recalled({
        'Days to maturity': range('45 days', '55 days', '65 days'),
        'Harvest window': range('84 days', '98 days', '112 days'),
      }),
      ...given(NORTH_DAKOTA, { 'Days to maturity direct': range('70 days', '78 days', '85 days') }),
      ...recalled({
        'Bolting trigger': 'cold',
        'Bolting size': 'a root as thick as a pencil',
        'Bolting size warmth': '700 degC day',
        'Bolting size warmth base': '0 degC',
        'Bolting cold base': '0 degC',
        'Bolting cold best from': '2 degC',
        'Bolting cold best to': '7 degC',
        'Bolting cold': '10 degC',
        'Bolting cold days': '56 days',
        'Bolting cold days most': '70 days',
      }),
      ...usual({ 'Harvest unit': 'bunch' }),
      ...recalled({
        'Unit mass': '70 g',
        'Yield low': '1.2 kg/m2',
        'Yield high': '3.5 kg/m2',
        'Days between pickings': range('14 days', '17 days', '21 days'),
        'Harvest curve middle': '50%',
        'Harvest curve spread': '40%',
      }),
      ...given(KANSAS_ROWS, { Yield: '1.8 kg/m2' }),
      ...usual({
        Picking: 'Bunching herbs',
        Packing: 'Dunking bunches of herbs',
        Weeding: 'Hoeing and pulling among herbs',
      }),
      ...given(NEW_ENGLAND_16, { 'Storage temperature': '32 degF', 'Storage humidity': '95%' }),
      ...given(both(DAVIS_STORE, CANTWELL_HERBS, NEW_ENGLAND_16), {
        'Storage life': range('21 days', '30 days', '60 days'),
      }),
      ...recalled({ 'Rotation years': '3' }),
      ...given(USDA_NUTRIENTS, {
        'Nitrogen removal': '4.75 kg/t',
        'Phosphorus removal': '0.58 kg/t',
        'Potassium removal': '5.54 kg/t',
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
  crop(
    'cilantro',
    'Cilantro',
    {
      ...usual({
        'Also called': 'coriander leaves',
        'Start methods': 'blocks, cells, direct seed',
        'Usual start': 'direct seed',
      }),
      ...recalled({ Family: 'Apiaceae' }),
      ...given(KEW_SEEDS, { 'Seeds per gram': range('90', '97', '97') }),
      ...given(NEW_HAMPSHIRE, { 'Germination standard': '70%' }),
      ...recalled({ 'Seed life': '2' }),
      ...recalled({
        'Germination minimum': '50 degF',
        'Germination best from': '55 degF',
        'Germination best to': '70 degF',
        'Germination maximum': '85 degF',
        'Emergence base': '3.5 degC',
        'Emergence thermal time': '160 degC day',
        'Seeding depth': range('6 mm', '10 mm', '13 mm'),
      }),
      ...recalled({
        'Weeks in propagation': range('3 weeks', '4 weeks', '5 weeks'),
        'Transplant height': '8 cm',
        'Usual seeds per block': range('4', '6', '8'),
      }),
      ...recalled({
        'Frost limit': '16 degF',
        'Frost limit young': '-5 degC',
        'Plant out from last frost': '-3 weeks',
        'Sow outdoors from last frost': '-3 weeks',
      }),
      ...recalled({
        'Growth minimum': '45 degF',
        'Growth best from': '60 degF',
        'Growth best to': '70 degF',
        'Growth maximum': '80 degF',
        'Degree-day base': '40 degF',
      }),
      ...recalled({
        'In-row spacing': range('2.5 cm', '3 cm', '5 cm'),
        'Rows per bed': '5',
        'Clump in-row spacing': range('15 cm', '18 cm', '20 cm'),
      }),
      ...recalled({
        'Days to maturity': range('30 days', '35 days', '40 days'),
        'Days to maturity direct': range('40 days', '48 days', '55 days'),
        'Harvest window': range('14 days', '21 days', '28 days'),
      }),
      ...recalled({
        'Bolting trigger': 'heat and long days',
        'Bolting day length': '13.5 h',
        'Bolting heat': '20 degC',
        'Bolting heat days': '45 days',
      }),
      ...usual({ 'Harvest unit': 'bunch' }),
      ...recalled({
        'Unit mass': '70 g',
        Yield: range('0.9 kg/m2', '1.55 kg/m2', '2.2 kg/m2'),
        Pickings: '2',
        'Days between pickings': range('14 days', '16 days', '18 days'),
        'Second cut share': '54%',
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
      ...recalled({ 'Storage humidity': range('95%', '97.5%', '100%') }),
      ...recalled({ 'Rotation years': '3' }),
      ...given(USDA_NUTRIENTS, {
        'Nitrogen removal': '3.41 kg/t',
        'Phosphorus removal': '0.48 kg/t',
        'Potassium removal': '5.21 kg/t',
      }),
      ...given(FAO_56_SMALL_VEGETABLES, {
        'Crop coefficient initial': '0.7',
        'Crop coefficient mid': '1.05',
        'Crop coefficient end': '0.95',
      }),
    },
    'Published rotation says a few years without a number.',
    'Water use is that of the FAO-56 group of small vegetables.',
    'Not in the federal list of 1994; the revision of 2020 was not read.',
  ),
];
