// The ways of looking of the sheets about the weeks of a season: successions, jobs and hours, lots and stores, selling, the
// ground. views.ts joins them to the others.

import type { ViewDeclaration } from '../engine/index.ts';
import { view } from './view.ts';

export const WEEK_VIEWS: Readonly<Record<string, readonly ViewDeclaration[]>> = {
  successions: [
    view('wanted', 'What is wanted?', 'variety from to a-week pieces-a-week bed-length-each every'),
    view('grown', 'How is it grown?', 'variety start cover in-row-spacing rows seeds-per-station every'),
    view(
      'laid',
      'What was laid?',
      `plantings first-sown last-sown first-harvest last-harvest expected expected-pieces bed-length as-it-stands laid-as
       not-laid`,
    ),
  ],
  lots: [
    view('lot', 'What is in it?', 'crop of-thinnings share-of-its-grade share mass store place'),
    view('keeping', 'How long does it keep?', 'store stored all-at-once first-in last-in until monthly-loss mass'),
    view('became', 'What became of it?', 'crop mass store sold lost left until'),
  ],
  'lots-by-week': [
    view('out', 'What goes out?', 'week-starts lot-name product from-before in sold left lost'),
    view('wanted', 'What is wanted?', 'week-starts lot-name product in wanted kept sold last-week'),
    view(
      'standing',
      'How does it stand?',
      'week-starts lot-name in-standing asked-for wanted-standing sold-standing share-taken keeps-until',
    ),
  ],
  products: [
    view('product', 'What is sold?', 'crop variety form grade sold-by weight-of-one price price-by-weight'),
    view('season', 'How does it sell?', 'harvest wanted sold short unsold weeks-short short-from sales'),
  ],
  outlets: [
    view('outlet', 'Where is it sold?', 'kind day from until weeks-between turn boxes promised-worth'),
    view('costs', 'What does it cost?', 'kept-by-the-outlet cost-each-time hours-each-time deliveries costs hours'),
    view('season', 'What does it bring?', 'deliveries wanted sales costs hours a-selling-hour'),
  ],
  demand: [
    view('much', 'How much?', 'outlet product from until in-each-box weight-in-each-box pieces weight weeks'),
    view('price', 'At what price?', 'outlet product price price-each price-by-weight note'),
  ],
  'supply-against-demand': [
    view('short', 'Is there enough?', 'week-starts product-name supply wanted sold short short-pieces met'),
    view('rest', 'What becomes of the rest?', 'week-starts product-name from-the-field from-store over left lost'),
  ],
  'demand-by-week': [
    view('asked', 'What is asked for?', 'week-starts outlet-name product-name on turn weight pieces worth-wanted'),
    view(
      'gets',
      'What does each get?',
      'week-starts outlet-name product-name weight there-is gets gets-pieces short money',
    ),
  ],
  tasks: [
    view('todo', 'What is to do?', 'what planting bed where kind on hours status'),
    view('done', 'What was done?', 'what planting on done done-on who-name hours hours-taken moved-to note'),
    view(
      'much',
      'How much is it?',
      'what crop bed pieces trays weight length hours-of-starting hours-of-harvest hours',
    ),
  ],
  labour: [
    view('hands', 'Are there hands enough?', 'monday name jobs hours taken available over busy late'),
    view('hours', 'On what?', 'monday raising ground planting care water picking packing storing selling'),
  ],
  'planting-jobs': [
    view('start', 'When does it start?', 'bed prepare-on sow-on harden-on sow-in-the-bed-on set-out-on up'),
    view(
      'weeding',
      'When to weed?',
      'weedings first-weeding-after weeks-between-weedings weed-1 weed-2 weed-3 weed-4 weed-hours',
    ),
    view(
      'care',
      'What care?',
      'cover-on cover-off thin-on trellis-on prune-on stop-watering-on watch-the-tops-on care-begins care-ends',
    ),
    view('harvest', 'What comes at the end?', 'lift-on check-necks-on store-on clear-on clear-hours store-hours'),
    view('hours', 'How many hours?', 'prepare-hours weed-hours cover-hours trellis-hours clear-hours store-hours'),
  ],
  'cover-crops': [
    view('stands', 'Where and when?', 'bed kind sown ended length stands-until area'),
    view('gives', 'What does it give?', 'bed kind area dry-mass nitrogen nitrogen-left cost hours-to-sow hours-to-end'),
  ],
  inputs: [
    view('given', 'What was given?', 'input bed given-on amount worked-in nitrogen hours cost note'),
    view(
      'wait',
      'When may it be picked?',
      `input bed given-on first-harvest-on-the-soil first-harvest-clear-of-it days-on-the-soil days-clear-of-it too-soon
       harvest-allowed-from`,
    ),
  ],
};
