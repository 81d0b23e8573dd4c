// The publications that several reference checks name, each with what a stranger needs to find it. A check adds the page or table.

import type { Publication } from './check.ts';

export const FAO56: Publication = {
  author: 'Allen, R. G., Pereira, L. S., Raes, D. & Smith, M.',
  year: 1998,
  title: 'Crop evapotranspiration: guidelines for computing crop water requirements (Irrigation and Drainage Paper 56)',
  publisher: 'FAO, Rome',
  url: 'https://www.fao.org/4/x0490e/x0490e00.htm',
};

export const FAO24: Publication = {
  author: 'Doorenbos, J. & Pruitt, W. O.',
  year: 1977,
  title: 'Guidelines for predicting crop water requirements (Irrigation and Drainage Paper 24, revised)',
  publisher: 'FAO, Rome',
};

export const NIST_HANDBOOK: Publication = {
  author: 'NIST/SEMATECH',
  year: 2012,
  title: 'e-Handbook of Statistical Methods',
  publisher: 'National Institute of Standards and Technology, Gaithersburg',
  url: 'https://www.itl.nist.gov/div898/handbook/',
};

export const RATKOWSKY: Publication = {
  author: 'Ratkowsky, D. A.',
  year: 1983,
  title: 'Nonlinear Regression Modeling: A Unified Practical Approach',
  publisher: 'Marcel Dekker, New York',
};

export const MEAD: Publication = {
  author: 'Mead, R.',
  year: 1970,
  title: 'Plant density and crop yield',
  publisher: 'Applied Statistics 19: 64-81',
};

export const NUTRIENT_DATABASE: Publication = {
  author: 'U.S. Department of Agriculture, Agricultural Research Service, Nutrient Data Laboratory',
  year: 2016,
  title: 'USDA National Nutrient Database for Standard Reference, Release 28',
  publisher: 'Agricultural Research Service, Beltsville',
};

export const HARRINGTON_MINGES: Publication = {
  author: 'Harrington, J. F. & Minges, P. A.',
  year: 1954,
  title: 'Vegetable Seed Germination',
  publisher: 'University of California Agricultural Extension Service leaflet, Davis',
};

export const VIABILITY_MANUAL: Publication = {
  author: 'Aravind, J., Vimala Devi, S., Radhamani, J., Jacob, S. R. & Srinivasan, K.',
  year: 'undated, the manual of the R package as it stands on its site',
  title: 'viabilitymetrics: Seed Viability Calculations and Curve Fitting, reference manual',
  publisher: 'ICAR-National Bureau of Plant Genetic Resources, New Delhi',
  url: 'https://aravind-j.github.io/viabilitymetrics/reference/',
};

export const SEATTLE: Publication = {
  author: 'NOAA National Centers for Environmental Information',
  year: 2016,
  title: 'Daily weather of Seattle, 2012 to 2015 (seattle-weather.csv)',
  publisher: 'Vega project, vega-datasets 3.2',
  url: 'https://github.com/vega/vega-datasets/blob/main/data/seattle-weather.csv',
};

export const FREEZE_NORMALS: Publication = {
  author: 'NOAA National Centers for Environmental Information',
  year: 2011,
  title: 'U.S. Climate Normals 1981-2010: freeze and frost probabilities',
  publisher: 'NOAA, Asheville',
  url: 'https://www.ncei.noaa.gov/products/land-based-station/us-climate-normals',
};
