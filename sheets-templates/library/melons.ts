// Melons. Each figure of the library stands beside its source; one without a
// publication says memory (recalled) or common practice (usual). library.ts gathers the families.

import type { Crop } from './figure.ts';
import { crop, given, range, recalled, usual } from './figure.ts';
import { both } from './source.ts';
import { FAO_56, FAO_56_STAGES, HANDBOOK_66_1954, NEW_ENGLAND_16, USDA_NUTRIENTS } from './sources-keeping.ts';
import {
  ARIZONA_MELON,
  GEORGIA_SOIL,
  ILLINOIS_FROST,
  KNOTT_GROWTH,
  MID_ATLANTIC,
  SNYDER,
  WINTER_KILL,
} from './sources-season.ts';
import {
  DEMIR_2011,
  EMERGENCE_FIT,
  FEDERAL_COUNTS,
  FEDERAL_STANDARDS,
  HARRINGTON,
  KEW_SEEDS,
  KNOTT_LIFE,
  KUO_1991,
  MERCHANTS,
} from './sources-seeds.ts';
import { BED_SHARE_MW, BED_SHARE_NE, CORNELL_FAMILIES, NORTH_DAKOTA, OKLAHOMA, USDA_WEIGHTS } from './sources-space.ts';

export const MELONS: readonly Crop[] = [
  crop(
    'melon',
    'Melon',
    {
      ...usual({
        'Also called': 'melons, muskmelon, cantaloupe',
        'Start methods': 'blocks, cells, direct seed, plants',
        'Usual start': 'cells',
      }),
      ...given(CORNELL_FAMILIES, { Family: 'Cucurbitaceae' }),
      ...given(both(FEDERAL_COUNTS, KEW_SEEDS, MERCHANTS), { 'Seeds per gram': range('35', '40', '45') }),
      ...given(FEDERAL_STANDARDS, { 'Germination standard': '75%' }),
      ...given(KNOTT_LIFE, { 'Seed life': '5' }),
      ...recalled({ 'Seed oil': '34%' }),
      ...given(KUO_1991, { KE: '7.299', CW: '3.707', CH: '0.0367', CQ: '0.000473' }),
      ...given(HARRINGTON, {
        'Germination minimum': '60 degF',
        'Germination best from': '75 degF',
        'Germination best to': '95 degF',
        'Germination maximum': '100 degF',
      }),
      ...given(EMERGENCE_FIT, {
        'Emergence base': range('12.2 degC', '13.7 degC', '13.7 degC'),
        'Emergence thermal time': range('48 degC day', '48 degC day', '108 degC day'),
      }),
      ...recalled({ 'Seeding depth': range('25 mm', '38 mm', '50 mm') }),
      ...given(GEORGIA_SOIL, { 'Sowing soil minimum': '68 degF' }),
      ...given(MID_ATLANTIC, {
        'Weeks in propagation': range('2 weeks', '3 weeks', '4 weeks'),
        'Raising temperature': '72.5 degF',
      }),
      ...recalled({ 'Transplant height': '10 cm' }),
      ...given(WINTER_KILL, { 'Frost limit': '32 degF' }),
      ...given(SNYDER, { 'Chilling limit': '12.5 degC' }),
      ...given(ILLINOIS_FROST, { 'Plant out from last frost': '1 week', 'Sow outdoors from last frost': '1 week' }),
      ...given(GEORGIA_SOIL, { 'Setting out minimum': '60 degF' }),
      ...given(KNOTT_GROWTH, {
        'Growth minimum': '60 degF',
        'Growth best from': '65 degF',
        'Growth best to': '75 degF',
        'Growth maximum': '90 degF',
      }),
      ...given(ARIZONA_MELON, {
        'Degree-day base': '12.8 degC',
        'Degree-day ceiling': '30 degC',
        'Warmth to harvest': range('649 degC day', '721 degC day', '792 degC day'),
      }),
      ...recalled({ 'In-row spacing': range('30 cm', '50 cm', '91 cm'), 'Rows per bed': '1', 'Beds across': '2' }),
      ...recalled({ 'Days to maturity': range('60 days', '70 days', '80 days'), 'Harvest window': '21 days' }),
      ...given(both(NORTH_DAKOTA, OKLAHOMA), { 'Days to maturity direct': range('75 days', '88 days', '100 days') }),
      ...usual({ 'Harvest unit': 'each', 'Plants per harvest unit': '0.5' }),
      ...given(USDA_WEIGHTS, { 'Unit mass': range('865 g', '1082 g', '1596 g') }),
      ...given(both(BED_SHARE_NE, BED_SHARE_MW), { Yield: range('1.4 kg/m2', '4 kg/m2', '6.6 kg/m2') }),
      ...recalled({ 'Days between pickings': '3 days', 'Harvest curve middle': '45%', 'Harvest curve spread': '20%' }),
      ...usual({
        Picking: 'Picking melons',
        Packing: 'Wiping winter squash',
        Weeding: 'Hoeing until squash vines run',
      }),
      ...given(NEW_ENGLAND_16, {
        'Storage temperature': range('36 degF', '38 degF', '40 degF'),
        'Storage humidity': range('85%', '87.5%', '90%'),
        'Storage life': range('7 days', '11 days', '14 days'),
      }),
      ...recalled({ 'Rotation years': '3' }),
      ...given(USDA_NUTRIENTS, {
        'Nitrogen removal': '1.34 kg/t',
        'Phosphorus removal': '0.15 kg/t',
        'Potassium removal': '2.67 kg/t',
      }),
      ...given(FAO_56, {
        'Crop coefficient initial': '0.5',
        'Crop coefficient mid': '1.05',
        'Crop coefficient end': '0.75',
      }),
      ...given(FAO_56_STAGES, {
        'Initial stage': '25 days',
        'Development stage': '35 days',
        'Mid-season stage': '40 days',
        'Late stage': '20 days',
      }),
    },
    'Published rotation says two years or more.',
    'FAO-56 lists cantaloupe apart, with mid and end coefficients of 0.85 and 0.6.',
    'Bed yields may be low: field yields of 1.8 to 5.6 kg/m2 are published.',
    'Published field yield, paths included: 0.9 to 2.2 kg/m2 (New England Vegetable Management Guide).',
  ),
  crop(
    'watermelon',
    'Watermelon',
    {
      ...usual({
        'Also called': 'watermelons',
        'Start methods': 'blocks, cells, direct seed, plants',
        'Usual start': 'cells',
      }),
      ...given(CORNELL_FAMILIES, { Family: 'Cucurbitaceae' }),
      ...given(both(FEDERAL_COUNTS, KEW_SEEDS, MERCHANTS), { 'Seeds per gram': range('10.6', '11', '11.9') }),
      ...given(FEDERAL_STANDARDS, { 'Germination standard': '70%' }),
      ...given(KNOTT_LIFE, { 'Seed life': '4' }),
      ...recalled({ 'Seed oil': '30%' }),
      ...given(DEMIR_2011, { KE: '4.86', CW: '1.59', CH: '0.0329', CQ: '0.000478' }),
      ...given(HARRINGTON, {
        'Germination minimum': '60 degF',
        'Germination best from': '70 degF',
        'Germination best to': '95 degF',
        'Germination maximum': '105 degF',
      }),
      ...given(EMERGENCE_FIT, {
        'Emergence base': range('13.96 degC', '14 degC', '14.3 degC'),
        'Emergence thermal time': range('60 degC day', '62.5 degC day', '62.5 degC day'),
      }),
      ...recalled({ 'Seeding depth': range('25 mm', '38 mm', '50 mm') }),
      ...given(GEORGIA_SOIL, { 'Sowing soil minimum': '72 degF' }),
      ...given(MID_ATLANTIC, {
        'Weeks in propagation': range('3 weeks', '4 weeks', '4 weeks'),
        'Raising temperature': '72.5 degF',
      }),
      ...recalled({ 'Transplant height': '10 cm' }),
      ...given(WINTER_KILL, { 'Frost limit': '32 degF' }),
      ...given(SNYDER, { 'Chilling limit': '12.5 degC' }),
      ...given(ILLINOIS_FROST, { 'Plant out from last frost': '1 week', 'Sow outdoors from last frost': '1 week' }),
      ...given(GEORGIA_SOIL, { 'Setting out minimum': '60 degF' }),
      ...given(KNOTT_GROWTH, {
        'Growth minimum': '65 degF',
        'Growth best from': '70 degF',
        'Growth best to': '85 degF',
        'Growth maximum': '95 degF',
      }),
      ...recalled({ 'Degree-day base': '12.8 degC' }),
      ...recalled({ 'In-row spacing': range('60 cm', '90 cm', '91 cm'), 'Rows per bed': '1', 'Beds across': '2' }),
      ...recalled({ 'Days to maturity': range('55 days', '70 days', '85 days'), 'Harvest window': '21 days' }),
      ...given(both(NORTH_DAKOTA, OKLAHOMA), { 'Days to maturity direct': range('65 days', '93 days', '120 days') }),
      ...usual({ 'Harvest unit': 'each', 'Plants per harvest unit': '0.6' }),
      ...given(USDA_WEIGHTS, { 'Unit mass': '8688 g' }),
      ...given(BED_SHARE_MW, { Yield: range('5.2 kg/m2', '6.9 kg/m2', '8.6 kg/m2') }),
      ...recalled({ 'Days between pickings': '7 days', 'Harvest curve middle': '45%', 'Harvest curve spread': '25%' }),
      ...usual({
        Picking: 'Picking watermelons',
        Packing: 'Wiping winter squash',
        Weeding: 'Hoeing until squash vines run',
      }),
      ...given(HANDBOOK_66_1954, {
        'Storage temperature': range('10 degC', '11.5 degC', '13 degC'),
        'Storage humidity': range('85%', '87.5%', '90%'),
        'Storage life': range('7 days', '18 days', '28 days'),
      }),
      ...recalled({ 'Rotation years': '3' }),
      ...given(USDA_NUTRIENTS, {
        'Nitrogen removal': '0.98 kg/t',
        'Phosphorus removal': '0.11 kg/t',
        'Potassium removal': '1.12 kg/t',
      }),
      ...given(FAO_56, {
        'Crop coefficient initial': '0.4',
        'Crop coefficient mid': '1',
        'Crop coefficient end': '0.75',
      }),
      ...given(FAO_56_STAGES, {
        'Initial stage': '20 days',
        'Development stage': '30 days',
        'Mid-season stage': '30 days',
        'Late stage': '30 days',
      }),
    },
    'Published rotation says two years or more.',
    'Bed yields may be low: field yields of 1.8 to 5.6 kg/m2 are published.',
    'The degree-day base of 55 F comes from one recalled list; others are lower.',
    'The seed viability constants answer weakly to moisture: take care far from ordinary storage.',
    'Published field yield, paths included: 3.4 to 5.6 kg/m2 (Midwest Vegetable Production Guide 2022).',
    'Small kinds weigh about 4 kg (memory).',
  ),
];
