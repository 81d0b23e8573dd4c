// Dry bean, edamame and fava bean. Each figure of the library stands beside its source; one without a
// publication says memory (recalled) or common practice (usual). library.ts gathers the families.

import type { Crop } from './figure.ts';
import { crop, given, like, range, recalled, usual } from './figure.ts';
import { both } from './source.ts';
import { FAO_56, FAO_56_STAGES, STORAGE_SHEET, USDA_NUTRIENTS } from './sources-keeping.ts';
import { KNOTT_GROWTH } from './sources-season.ts';
import {
  ELLIS_1982,
  ELLIS_1990,
  FEDERAL_COUNTS,
  FEDERAL_STANDARDS,
  HARRINGTON,
  KEW_SEEDS,
  KNOTT_LIFE,
} from './sources-seeds.ts';
import { CORNELL_FAMILIES, LENDWAY, MAINE_CHART } from './sources-space.ts';

export const PULSES: readonly Crop[] = [
  crop('dry-bean', 'Dry bean', {
    ...usual({
      'Also called': 'dry beans, shelling beans, pulses, kidney beans, haricots',
      'Start methods': 'direct seed',
      'Usual start': 'direct seed',
    }),
    ...given(CORNELL_FAMILIES, { Family: 'Fabaceae' }),
    ...given(both(FEDERAL_COUNTS, KEW_SEEDS), { 'Seeds per gram': '3.5' }),
    ...given(FEDERAL_STANDARDS, { 'Germination standard': '70%' }),
    ...given(KNOTT_LIFE, { 'Seed life': '3' }),
    ...recalled({ 'Seed oil': '2%' }),
    ...given(ELLIS_1990, { KE: '9.09', CW: '4.761', CH: '0.0329', CQ: '0.000478' }),
    ...given(HARRINGTON, {
      'Germination minimum': '15.6 degC',
      'Germination best from': '15.6 degC',
      'Germination best to': '29.4 degC',
      'Germination maximum': '35 degC',
    }),
    ...recalled({ 'Emergence base': '7.7 degC', 'Emergence thermal time': '130 degC day' }),
    ...given(MAINE_CHART, { 'Seeding depth': '25 mm' }),
    ...recalled({ 'Frost limit': '0 degC', 'Sow outdoors from last frost': '1 weeks' }),
    ...recalled({
      'Growth minimum': '50 degF',
      'Growth best from': '60 degF',
      'Growth best to': '70 degF',
      'Growth maximum': '80 degF',
    }),
    ...like('bush bean', { 'Degree-day base': '10 degC' }),
    ...recalled({ 'In-row spacing': '8 cm', 'Rows per bed': '2' }),
    ...given(FAO_56_STAGES, { 'Days to maturity direct': range('95 days', '95 days', '110 days') }),
    ...recalled({ 'Harvest window': '14 days' }),
    ...usual({ 'Harvest unit': 'weight' }),
    ...recalled({ 'Unit mass': '0.4 g', Yield: range('0.15 kg/m2', '0.25 kg/m2', '0.35 kg/m2') }),
    ...usual({
      Picking: 'Pulling and threshing dry beans',
      Packing: 'Sorting beans and sprouts',
      Weeding: 'Hoeing and hilling rows',
    }),
    ...given(STORAGE_SHEET, { 'Storage temperature': '7 degC', 'Storage humidity': '40%', 'Storage life': '365 days' }),
    ...recalled({ 'Rotation years': '3' }),
    ...given(USDA_NUTRIENTS, {
      'Nitrogen removal': '37.73 kg/t',
      'Phosphorus removal': '4.07 kg/t',
      'Potassium removal': '14.06 kg/t',
    }),
    ...given(FAO_56, {
      'Crop coefficient initial': '0.4',
      'Crop coefficient mid': '1.15',
      'Crop coefficient end': '0.35',
    }),
    ...given(FAO_56_STAGES, {
      'Initial stage': '20 days',
      'Development stage': '30 days',
      'Mid-season stage': '40 days',
      'Late stage': '20 days',
    }),
  }),
  crop(
    'edamame',
    'Edamame',
    {
      ...usual({
        'Also called': 'vegetable soybeans, green soybeans, soya beans',
        'Start methods': 'blocks, cells, direct seed',
        'Usual start': 'direct seed',
      }),
      ...recalled({ Family: 'Fabaceae' }),
      ...given(both(FEDERAL_COUNTS, KEW_SEEDS), { 'Seeds per gram': '5.4' }),
      ...given(FEDERAL_STANDARDS, { 'Germination standard': '75%' }),
      ...recalled({ 'Seed life': '2', 'Seed oil': '19%' }),
      ...given(ELLIS_1982, { KE: '7.525', CW: '4.086', CH: '0.0329', CQ: '0.000478' }),
      ...recalled({
        'Germination minimum': '50 degF',
        'Germination best from': '65 degF',
        'Germination best to': '85 degF',
        'Germination maximum': '95 degF',
        'Emergence base': '9 degC',
        'Emergence thermal time': '90 degC day',
        'Seeding depth': '25 mm',
      }),
      ...recalled({ 'Weeks in propagation': '3 weeks' }),
      ...recalled({
        'Frost limit': '0 degC',
        'Plant out from last frost': '1 weeks',
        'Sow outdoors from last frost': '1 weeks',
      }),
      ...recalled({
        'Growth minimum': '55 degF',
        'Growth best from': '65 degF',
        'Growth best to': '80 degF',
        'Growth maximum': '90 degF',
        'Degree-day base': '10 degC',
      }),
      ...recalled({ 'In-row spacing': '10 cm', 'Rows per bed': '2' }),
      ...recalled({
        'Days to maturity': '65 days',
        'Days to maturity direct': '85 days',
        'Harvest window low': '7 days',
        'Harvest window': '10 days',
      }),
      ...given(LENDWAY, { 'Harvest window high': '19 days' }),
      ...usual({ 'Harvest unit': 'weight' }),
      ...recalled({ 'Unit mass': '2.5 g', Yield: range('0.6 kg/m2', '1 kg/m2', '1.5 kg/m2') }),
      ...given(LENDWAY, { 'Days between pickings': range('4 days', '5 days', '7 days') }),
      ...usual({
        Picking: 'Stripping edamame',
        Packing: 'Sorting beans and sprouts',
        Weeding: 'Hoeing and hilling rows',
      }),
      ...recalled({ 'Storage temperature': '0 degC', 'Storage humidity': '95%', 'Storage life': '10 days' }),
      ...recalled({ 'Rotation years': '3', 'Crop coefficient end': '0.9' }),
      ...given(USDA_NUTRIENTS, {
        'Nitrogen removal': '10.98 kg/t',
        'Phosphorus removal': '1.03 kg/t',
        'Potassium removal': '3.29 kg/t',
      }),
      ...given(FAO_56, { 'Crop coefficient initial': '0.5', 'Crop coefficient mid': '1.15' }),
    },
    'Nutrients are of pods as picked, shells not counted.',
  ),
  crop(
    'fava-bean',
    'Fava bean',
    {
      ...usual({
        'Also called': 'broad beans, faba beans',
        'Start methods': 'blocks, cells, direct seed',
        'Usual start': 'direct seed',
        Overwinters: 'either',
      }),
      ...recalled({ Family: 'Fabaceae' }),
      ...given(KEW_SEEDS, { 'Seeds per gram': '1.1' }),
      ...given(FEDERAL_STANDARDS, { 'Germination standard': '75%' }),
      ...recalled({ 'Seed life': '3' }),
      ...recalled({
        'Germination minimum': '36 degF',
        'Germination best from': '45 degF',
        'Germination best to': '68 degF',
        'Germination maximum': '77 degF',
        'Emergence base': '0.4 degC',
        'Emergence thermal time': '148 degC day',
        'Seeding depth': '50 mm',
      }),
      ...recalled({ 'Weeks in propagation': '3 weeks' }),
      ...recalled({
        'Frost limit': '-6 degC',
        'Frost limit young': '-4 degC',
        'Plant out from last frost': '-4 weeks',
        'Sow outdoors from last frost': '-6 weeks',
      }),
      ...given(KNOTT_GROWTH, {
        'Growth minimum': '40 degF',
        'Growth best from': '60 degF',
        'Growth best to': '65 degF',
        'Growth maximum': '75 degF',
      }),
      ...recalled({ 'Degree-day base': '2 degC', 'Degree-day ceiling': '22 degC' }),
      ...recalled({ 'In-row spacing': '15 cm', 'Rows per bed': '2' }),
      ...recalled({ 'Days to maturity': '60 days', 'Days to maturity direct': '85 days', 'Harvest window': '21 days' }),
      ...usual({ 'Harvest unit': 'weight' }),
      ...recalled({ 'Unit mass': '20 g', Yield: range('0.8 kg/m2', '1.5 kg/m2', '2.2 kg/m2') }),
      ...usual({ Picking: 'Picking shelling peas', Packing: 'Sorting peas', Weeding: 'Hoeing and hilling rows' }),
      ...recalled({ 'Storage temperature': '0 degC', 'Storage humidity': '95%', 'Storage life': '10 days' }),
      ...recalled({ 'Rotation years': '3' }),
      ...given(USDA_NUTRIENTS, {
        'Nitrogen removal': '8.96 kg/t',
        'Phosphorus removal': '0.95 kg/t',
        'Potassium removal': '2.5 kg/t',
      }),
      ...given(FAO_56, {
        'Crop coefficient initial': '0.5',
        'Crop coefficient mid': '1.15',
        'Crop coefficient end': '1.1',
      }),
      ...given(FAO_56_STAGES, {
        'Initial stage': '15 days',
        'Development stage': '25 days',
        'Mid-season stage': '35 days',
        'Late stage': '15 days',
      }),
    },
    'Spring sown; overwintered crops take 200 days and more. Sown late it fails in heat.',
  ),
];
