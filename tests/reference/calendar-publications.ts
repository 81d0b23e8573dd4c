// Where the dates of data/place-calendars.csv are printed, by the keys in its column `source`. Rows of the key 'unnamed' come from pages
// that nobody finds again: they stand in the shares over all calendars (calendars.test.ts) and make no published fact.

import type { Publication } from './check.ts';

export interface Calendar {
  readonly source: Publication;
  /** Where in it. */
  readonly at: string;
}

const DURHAM = 'N.C. Cooperative Extension, Durham County Extension Master Gardeners';

export const CALENDARS: Readonly<Record<string, Calendar>> = {
  'hil-8001': {
    source: {
      author: 'North Carolina State Extension',
      year: 'undated, as given by Durham County Extension Master Gardeners',
      title: 'Fall Vegetable Gardening (Horticulture Information Leaflet 8001)',
      publisher: 'N.C. Cooperative Extension, Raleigh',
    },
    at: 'table of suggested planting dates for the piedmont',
  },
  'durham-2013': {
    source: {
      author: DURHAM,
      year: 2013,
      title: 'Vegetable gardening class at Durham, The Herald-Sun of 17 February',
      publisher: 'The Herald-Sun, Durham, North Carolina',
    },
    at: 'dates of peas and lettuce',
  },
  'chatham-2015': {
    source: {
      author: 'N.C. Cooperative Extension, Chatham County Center',
      year: 2015,
      title: 'The autumn garden, news of 20 August',
      publisher: 'N.C. Cooperative Extension, Pittsboro',
    },
    at: 'dates of setting out broccoli, cabbage and kale',
  },
  'wisconsin-list': {
    source: {
      author: 'University of Wisconsin-Extension',
      year: 'undated, the text as a growers’ guide reprints it',
      title: 'Growing vegetables: planting dates for southern Wisconsin',
      publisher: 'reprinted at grovida.us',
      url: 'https://www.grovida.us/growing-vegetables/info-owz.html',
    },
    at: 'cool-weather and warm-weather crops, dates of seeding and setting out',
  },
  'delahaut-binning': {
    source: {
      author: 'Delahaut, K. A. & Binning, L. K.',
      year: 'undated, archived in December 2008',
      title: 'Fresh Market Vegetable Production: Planting and Harvest Dates',
      publisher: 'University of Wisconsin-Extension, Madison; University of North Texas web archive',
      url: 'https://webarchive.library.unt.edu/eot2008/20081204185409/http://www.uwex.edu/ces/wihort/fruitveggies/HarvestDates.htm',
    },
    at: 'the table: average planting dates, last planting date, average harvest dates',
  },
  schuyler: {
    source: {
      author: 'Cornell Cooperative Extension of Schuyler County',
      year: 'undated, the dates of the Ithaca list',
      title: 'Last Planting Dates (Last Seeding and Transplanting Dates)',
      publisher: 'Cornell Cooperative Extension, Montour Falls, New York',
    },
    at: 'the list by date',
  },
  'ontario-county': {
    source: {
      author: 'Cornell Cooperative Extension of Ontario County',
      year: 'undated, based on the Ithaca list',
      title: 'Last Planting Dates',
      publisher: 'Cornell Cooperative Extension, Canandaigua, New York',
    },
    at: 'first crop of each column',
  },
  chenango: {
    source: {
      author: 'Cornell Cooperative Extension of Chenango County',
      year: 'undated, for Norwich, New York',
      title: 'First Seeding and Transplanting Dates',
      publisher: 'Cornell Cooperative Extension, Norwich, New York',
    },
    at: 'the list by date',
  },
  cookham: {
    source: {
      author: 'Growers at Cookham, Berkshire',
      year: 'undated, a page of their journal',
      title: 'Planting Calendar',
      publisher: 'cookham-chillies.blogspot.com',
      url: 'https://cookham-chillies.blogspot.com/p/planting-calendar.html',
    },
    at: 'table of sowing time, plant out, harvest',
  },
  'gardening-data': {
    source: {
      author: 'Gardening Data',
      year: 'undated, a page for the United Kingdom',
      title: 'Vegetables: sowing and planting through the year',
      publisher: 'gardeningdata.co.uk',
      url: 'https://gardeningdata.co.uk/vegetables/vegetables-sowing-year.php',
    },
    at: 'the lists by month',
  },
  'southcentral-alaska': {
    source: {
      author: 'University of Alaska Fairbanks Cooperative Extension Service',
      year: 2018,
      title: 'Weeks to start seeds indoors before planting outside, as given by KTUU Anchorage',
      publisher: 'KTUU, Anchorage',
    },
    at: 'list by weeks before 1 June',
  },
  'fairbanks-column': {
    source: {
      author: 'University of Alaska Fairbanks Cooperative Extension Service',
      year: 2017,
      title: 'Starting seeds, column of 21 March',
      publisher: 'Delta News, Delta Junction, Alaska',
    },
    at: 'dates of setting out',
  },
  'sunday-news': {
    source: {
      author: 'Sunday News',
      year: 2022,
      title: 'Garden pages of 23 October',
      publisher: 'Stuff, Auckland',
    },
    at: 'date of setting out tomatoes at Christchurch',
  },
  'christchurch-south': {
    source: {
      author: 'Christchurch South Community Gardens Trust',
      year: 'undated, July 2019, August and September 2017, March 2018',
      title: 'Monthly news: what to sow and plant',
      publisher: 'Christchurch South Community Gardens, Christchurch',
    },
    at: 'lists of the month',
  },
  'uga-c963': {
    source: {
      author: 'University of Georgia Cooperative Extension',
      year: 'undated, middle Georgia',
      title: 'Vegetable Gardening in Georgia (Circular 963): Vegetable Planting Chart',
      publisher: 'University of Georgia, Athens',
    },
    at: 'spring and fall planting dates',
  },
  'ifas-sp103': {
    source: {
      author: 'Horticultural Sciences Department, University of Florida, Institute of Food and Agricultural Sciences',
      year: 'undated, the table of SP 103',
      title: 'Vegetable Planting Guide (Florida Vegetable Gardening Guide)',
      publisher: 'Florida Cooperative Extension Service, Gainesville; reprinted at growables.com',
      url: 'https://growables.com/informationVeg/VegPlantingGuide.htm',
    },
    at: 'planting dates in Florida, north',
  },
  'napa-seeds': {
    source: {
      author: 'von Rosenberg, S., UC Master Gardeners of Napa County',
      year: 2020,
      title: 'Starting vegetables from seed, column of March',
      publisher: 'University of California Agriculture and Natural Resources',
      url: 'https://ucanr.edu/blogs/napanewspaper/index.cfm?tagname=irrigation',
    },
    at: 'dates of planting out and of sowing beans, chard, cucumber, squash and melon',
  },
  'napa-winter': {
    source: {
      author: 'UC Master Gardeners of Napa County',
      year: 'undated, a column of July',
      title: 'Master Gardeners: Plan your winter garden now',
      publisher: 'Napa Valley Register, Napa, California',
      url: 'https://napavalleyregister.com/lifestyles/home-and-garden/columnists/master-gardener/master-gardeners-plan-your-winter-garden-now/article_eec27dac-9bc4-5884-b4b7-db1a6a9184f2.html',
    },
    at: 'broccoli set out in early September and cut by late October',
  },
  'napa-summer': {
    source: {
      author: 'UC Master Gardeners of Napa County, University of California Cooperative Extension',
      year: 'undated, a page of their site',
      title: 'Summer Harvest: plant in spring for a summer harvest',
      publisher: 'University of California Agriculture and Natural Resources',
      url: 'https://napamg.ucanr.edu/Summer_Harvest',
    },
    at: 'days to harvest, months of planting and of harvest by crop',
  },
};
