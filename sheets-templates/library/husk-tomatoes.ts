// Tomatillo and ground cherry. Each figure of the library stands beside its source; one without a
// publication says memory (recalled) or common practice (usual). library.ts gathers the families.

import type { Crop } from './figure.ts';
import { crop, given, range, recalled, usual } from './figure.ts';
import { both } from './source.ts';
import { CONNECTICUT_ROTATION, FAO_56, HANDBOOK_66_2002, USDA_NUTRIENTS } from './sources-keeping.ts';
import { GARDEN_SOCIETY } from './sources-season.ts';
import { FEDERAL_COUNTS, FEDERAL_STANDARDS, KEW_SEEDS } from './sources-seeds.ts';
import { CORNELL_FAMILIES, USDA_WEIGHTS } from './sources-space.ts';

export const HUSK_TOMATOES: readonly Crop[] = [
  crop(
    'tomatillo',
    'Tomatillo',
    {
      ...usual({
        'Also called': 'tomatillos, husk tomatoes',
        'Start methods': 'blocks, cells, plants',
        'Usual start': 'cells',
      }),
      ...given(CORNELL_FAMILIES, { Family: 'Solanaceae' }),
      ...given(KEW_SEEDS, { 'Seeds per gram': '600' }),
      ...given(FEDERAL_STANDARDS, { 'Germination standard': '50%' }),
      ...recalled({ 'Seed life': '4' }),
      ...recalled({
        'Germination minimum': '15 degC',
        'Germination best from': '20 degC',
        'Germination best to': '27 degC',
        'Germination maximum': '35 degC',
        'Emergence base': '8 degC',
        'Emergence thermal time': '100 degC day',
        'Seeding depth': '6 mm',
      }),
      ...recalled({ 'Weeks in propagation': '5 weeks' }),
      ...recalled({ 'Frost limit': '0 degC', 'Plant out from last frost': '2 weeks' }),
      ...given(GARDEN_SOCIETY, { 'Setting out minimum': '55 degF' }),
      ...recalled({
        'Growth minimum': '60 degF',
        'Growth best from': '65 degF',
        'Growth best to': '80 degF',
        'Growth maximum': '90 degF',
        'Degree-day base': '10 degC',
      }),
      ...recalled({ 'In-row spacing': '75 cm', 'Rows per bed': '1' }),
      ...recalled({ 'Days to maturity': '70 days', 'Harvest window': '50 days' }),
      ...usual({ 'Harvest unit': 'weight' }),
      ...given(USDA_WEIGHTS, { 'Unit mass': '34 g' }),
      ...recalled({
        Yield: range('1.5 kg/m2', '2.5 kg/m2', '4 kg/m2'),
        'Days between pickings': range('4 days', '5 days', '7 days'),
        'Harvest curve middle': '50%',
        'Harvest curve spread': '18%',
      }),
      ...usual({
        Picking: 'Picking tomatillos and jalapenos',
        Packing: 'Wiping and sorting peppers',
        Weeding: 'Weeding fruit crops on fabric',
        Trellising: 'Staking tomatillos',
      }),
      ...given(HANDBOOK_66_2002, {
        'Storage temperature': '7.5 degC',
        'Storage humidity': '85%',
        'Storage life': '21 days',
      }),
      ...given(CONNECTICUT_ROTATION, { 'Rotation years': '4' }),
      ...given(USDA_NUTRIENTS, {
        'Nitrogen removal': '1.54 kg/t',
        'Phosphorus removal': '0.39 kg/t',
        'Potassium removal': '2.68 kg/t',
      }),
      ...given(FAO_56, {
        'Crop coefficient initial': '0.6',
        'Crop coefficient mid': '1.15',
        'Crop coefficient end': '0.8',
      }),
    },
    'Two plants at least: it does not set fruit to its own pollen.',
  ),
  crop('ground-cherry', 'Ground cherry', {
    ...usual({
      'Also called': 'ground cherries, Cape gooseberries, physalis',
      'Start methods': 'blocks, cells, plants',
      'Usual start': 'cells',
    }),
    ...given(CORNELL_FAMILIES, { Family: 'Solanaceae' }),
    ...given(both(FEDERAL_COUNTS, KEW_SEEDS), { 'Seeds per gram': '1220' }),
    ...given(FEDERAL_STANDARDS, { 'Germination standard': '50%' }),
    ...recalled({ 'Seed life': '4' }),
    ...recalled({
      'Germination minimum': '59 degF',
      'Germination best from': '70 degF',
      'Germination best to': '85 degF',
      'Germination maximum': '95 degF',
      'Emergence base': '8 degC',
      'Emergence thermal time': '105 degC day',
      'Seeding depth': '6 mm',
    }),
    ...recalled({ 'Weeks in propagation': '8 weeks' }),
    ...recalled({ 'Frost limit': '0 degC', 'Plant out from last frost': '1 weeks' }),
    ...recalled({
      'Growth minimum': '60 degF',
      'Growth best from': '65 degF',
      'Growth best to': '80 degF',
      'Growth maximum': '90 degF',
      'Degree-day base': '10 degC',
    }),
    ...recalled({ 'In-row spacing': '75 cm', 'Rows per bed': '1' }),
    ...recalled({ 'Days to maturity': '70 days', 'Harvest window': '60 days' }),
    ...usual({ 'Harvest unit': 'weight' }),
    ...recalled({
      'Unit mass': '2 g',
      Yield: range('0.4 kg/m2', '0.8 kg/m2', '1.2 kg/m2'),
      'Days between pickings': range('4 days', '5 days', '7 days'),
      'Harvest curve middle': '50%',
      'Harvest curve spread': '20%',
    }),
    ...usual({
      Picking: 'Picking cherry tomatoes',
      Packing: 'Boxing small fruit',
      Weeding: 'Weeding fruit crops on fabric',
    }),
    ...recalled({ 'Storage temperature': '10 degC', 'Storage humidity': '85%', 'Storage life': '30 days' }),
    ...given(CONNECTICUT_ROTATION, { 'Rotation years': '4' }),
    ...given(USDA_NUTRIENTS, { 'Nitrogen removal': '3.04 kg/t', 'Phosphorus removal': '0.4 kg/t' }),
    ...given(FAO_56, {
      'Crop coefficient initial': '0.6',
      'Crop coefficient mid': '1.15',
      'Crop coefficient end': '0.8',
    }),
  }),
];
