// Mini heads and baby leaf. Each figure of the library stands beside its source; one without a
// publication says memory (recalled) or common practice (usual). library.ts gathers the families.

import type { Crop } from './figure.ts';
import { crop, given, range, recalled, usual } from './figure.ts';
import { both } from './source.ts';
import { CONNECTICUT_ROTATION, FAO_56, FAO_56_STAGES, NEW_ENGLAND_16, USDA_NUTRIENTS } from './sources-keeping.ts';
import {
  DELAWARE_BOLTING,
  DELAWARE_DEGREE_DAYS,
  GEORGIA_SOIL,
  KNOTT_GROWTH,
  MID_ATLANTIC,
  SUKPRAKARN,
  WINTER_KILL,
} from './sources-season.ts';
import {
  CALIFORNIA_HANDBOOK,
  EMERGENCE_FIT,
  FEDERAL_COUNTS,
  FEDERAL_STANDARDS,
  HARRINGTON,
  HARRINGTON_AND_CALIFORNIA,
  KEW_SEEDS,
  KNOTT_LIFE,
  KRAAK_VOS,
  MERCHANTS,
} from './sources-seeds.ts';
import { CORNELL_FAMILIES, USDA_WEIGHTS } from './sources-space.ts';

export const SMALL_LETTUCES: readonly Crop[] = [
  crop('lettuce-mini-head', 'Lettuce, mini head', {
    ...usual({
      'Also called': 'mini lettuce, little heads',
      'Start methods': 'blocks, cells, plants',
      'Usual start': 'blocks',
    }),
    ...given(CORNELL_FAMILIES, { Family: 'Asteraceae' }),
    ...given(FEDERAL_COUNTS, { 'Seeds per gram': '890' }),
    ...given(FEDERAL_STANDARDS, { 'Germination standard': '80%' }),
    ...given(KNOTT_LIFE, { 'Seed life': '6' }),
    ...recalled({ 'Seed oil': '37%' }),
    ...given(KRAAK_VOS, { KE: '6.895', CW: '4.2', CH: '0.0329', CQ: '0.000478' }),
    ...given(both(HARRINGTON, CALIFORNIA_HANDBOOK), {
      'Germination minimum': '1.7 degC',
      'Germination best from': '4.4 degC',
      'Germination best to': '26.7 degC',
      'Germination maximum': '29.4 degC',
    }),
    ...given(EMERGENCE_FIT, { 'Emergence base': '0.91 degC', 'Emergence thermal time': '52.9 degC day' }),
    ...recalled({ 'Seeding depth': '5 mm' }),
    ...recalled({ 'Weeks in propagation': '4 weeks' }),
    ...given(MID_ATLANTIC, { 'Raising temperature': '62.5 degF' }),
    ...given(WINTER_KILL, { 'Frost limit': '-5.6 degC' }),
    ...recalled({ 'Plant out from last frost': '-4 weeks' }),
    ...given(KNOTT_GROWTH, {
      'Growth minimum': '45 degF',
      'Growth best from': '60 degF',
      'Growth best to': '65 degF',
      'Growth maximum': '75 degF',
    }),
    ...given(DELAWARE_DEGREE_DAYS, { 'Degree-day base': '4.4 degC' }),
    ...recalled({ 'In-row spacing': '15 cm', 'Rows per bed': '4' }),
    ...recalled({ 'Days to maturity': '30 days', 'Harvest window': '10 days' }),
    ...recalled({ 'Bolting trigger': 'heat and long days', 'Bolting heat days': '10 days' }),
    ...given(SUKPRAKARN, { 'Bolting day length': '14 h', 'Bolting heat': '25 degC' }),
    ...usual({ 'Harvest unit': 'head' }),
    ...given(USDA_WEIGHTS, { 'Unit mass': '163 g' }),
    ...recalled({ Yield: range('2.5 kg/m2', '3.8 kg/m2', '5 kg/m2') }),
    ...usual({ Picking: 'Cutting mini lettuce', Packing: 'Dunking lettuce', Weeding: 'Hoeing quick heads' }),
    ...given(NEW_ENGLAND_16, { 'Storage temperature': '1 degC', 'Storage humidity': '95%', 'Storage life': '7 days' }),
    ...given(CONNECTICUT_ROTATION, { 'Rotation years': '3' }),
    ...given(USDA_NUTRIENTS, {
      'Nitrogen removal': '2.16 kg/t',
      'Phosphorus removal': '0.33 kg/t',
      'Potassium removal': '2.38 kg/t',
    }),
    ...given(FAO_56, {
      'Crop coefficient initial': '0.7',
      'Crop coefficient mid': '1',
      'Crop coefficient end': '0.95',
    }),
    ...given(FAO_56_STAGES, {
      'Initial stage': '20 days',
      'Development stage': '30 days',
      'Mid-season stage': '15 days',
      'Late stage': '10 days',
    }),
  }),
  crop(
    'salad-mix-baby-leaf',
    'Salad mix, baby leaf',
    {
      ...usual({
        'Also called': 'salad mix, baby lettuce, mesclun, cut lettuce, salad leaves, spring mix',
        'Start methods': 'blocks, cells, direct seed',
        'Usual start': 'direct seed',
      }),
      ...given(CORNELL_FAMILIES, { Family: 'Asteraceae' }),
      ...given(both(FEDERAL_COUNTS, KEW_SEEDS, MERCHANTS), { 'Seeds per gram': range('882', '890', '1000') }),
      ...given(FEDERAL_STANDARDS, { 'Germination standard': '80%' }),
      ...given(KNOTT_LIFE, { 'Seed life': '6' }),
      ...recalled({ 'Seed oil': '37%' }),
      ...given(KRAAK_VOS, { KE: '6.895', CW: '4.2', CH: '0.0329', CQ: '0.000478' }),
      ...given(HARRINGTON_AND_CALIFORNIA, {
        'Germination minimum': '35 degF',
        'Germination best from': '40 degF',
        'Germination best to': '80 degF',
        'Germination maximum': '85 degF',
      }),
      ...given(EMERGENCE_FIT, { 'Emergence base': '0.91 degC', 'Emergence thermal time': '52.9 degC day' }),
      ...recalled({ 'Seeding depth': range('3 mm', '5 mm', '6 mm') }),
      ...given(GEORGIA_SOIL, { 'Sowing soil minimum': '45 degF' }),
      ...recalled({
        'Weeks in propagation': range('3 weeks', '4 weeks', '4 weeks'),
        'Transplant height': '5 cm',
        'Usual seeds per block': range('5', '7', '8'),
      }),
      ...recalled({
        'Frost limit': '20 degF',
        'Frost limit young': '-2 degC',
        'Plant out from last frost': '-4 weeks',
        'Sow outdoors from last frost': '-6 weeks',
      }),
      ...given(KNOTT_GROWTH, {
        'Growth minimum': '45 degF',
        'Growth best from': '60 degF',
        'Growth best to': '65 degF',
        'Growth maximum': '75 degF',
      }),
      ...given(DELAWARE_DEGREE_DAYS, { 'Degree-day base': '40 degF' }),
      ...recalled({
        'In-row spacing': range('0.7 cm', '1 cm', '3 cm'),
        'Rows per bed': '10',
        'Clump in-row spacing': range('10 cm', '13 cm', '15 cm'),
      }),
      ...recalled({
        'Days to maturity': range('20 days', '25 days', '30 days'),
        'Days to maturity direct': range('25 days', '35 days', '45 days'),
        'Harvest window': range('21 days', '28 days', '35 days'),
      }),
      ...given(DELAWARE_BOLTING, { 'Bolting trigger': 'heat and long days' }),
      ...given(SUKPRAKARN, { 'Bolting day length': '14 h', 'Bolting heat': '25 degC' }),
      ...recalled({ 'Bolting heat days': '10 days' }),
      ...usual({ 'Harvest unit': 'weight' }),
      ...recalled({
        'Unit mass': '2 g',
        Yield: range('1.2 kg/m2', '2.35 kg/m2', '3.5 kg/m2'),
        Pickings: '3',
        'Days between pickings': range('12 days', '15 days', '18 days'),
        'Second cut share': '75%',
        'Third cut share': '45%',
      }),
      ...usual({
        Picking: 'Cutting baby leaf with a knife',
        Packing: 'Washing and bagging leaves',
        Weeding: 'Weeding close-sown leaves',
        Cover: 'Putting on row cover',
      }),
      ...given(NEW_ENGLAND_16, {
        'Storage temperature': range('32 degF', '34 degF', '36 degF'),
        'Storage humidity': '95%',
        'Storage life': '7 days',
      }),
      ...given(CONNECTICUT_ROTATION, { 'Rotation years': '3' }),
      ...given(USDA_NUTRIENTS, {
        'Nitrogen removal': '2.18 kg/t',
        'Phosphorus removal': '0.29 kg/t',
        'Potassium removal': '1.94 kg/t',
      }),
      ...given(FAO_56, {
        'Crop coefficient initial': '0.7',
        'Crop coefficient mid': '1',
        'Crop coefficient end': '0.95',
      }),
    },
    'The warmest soil is 95 F in one source and 85 F in another; 85 F stands here. Editions give a seed life of 5 or 6 years, others 3 to 4.',
    'Two sets of seed viability constants are published; the shorter-lived stands here.',
    'A cut gives 1.1 kg/m2 (0.6 to 2.1), by light (Gagne & Mattson 2019).',
  ),
];
