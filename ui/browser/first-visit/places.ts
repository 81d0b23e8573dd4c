// Places to pick a latitude from without a network. Latitudes and longitudes are from memory, to the nearest tenth of a degree,
// which moves the length of a day by less than a minute; whoever knows better types it. South and west are below zero. In brackets
// what its own people call a place. Pure.

import { nearestName } from '../../../engine/index.ts';
import { withoutAccents } from './accents.ts';

export interface Place {
  readonly name: string;
  readonly latitude: number;
  readonly longitude: number;
}

const PLACES = `
Adelaide -34.9 138.6
Amsterdam 52.4 4.9
Anchorage 61.2 -149.9
Asheville 35.6 -82.6
Athens (Athina) 38.0 23.7
Atlanta 33.7 -84.4
Auckland -36.8 174.8
Austin 30.3 -97.7
Barcelona 41.4 2.2
Belfast 54.6 -5.9
Berlin 52.5 13.4
Boise 43.6 -116.2
Bordeaux 44.8 -0.6
Boston 42.4 -71.1
Buenos Aires -34.6 -58.4
Burlington, Vermont 44.5 -73.2
Cape Town -33.9 18.4
Chicago 41.9 -87.6
Christchurch -43.5 172.6
Copenhagen (København) 55.7 12.6
Cork 51.9 -8.5
Denver 39.7 -105.0
Des Moines 41.6 -93.6
Dublin 53.3 -6.3
Edinburgh 56.0 -3.2
Edmonton 53.5 -113.5
Eugene 44.1 -123.1
Fresno 36.7 -119.8
Halifax 44.6 -63.6
Hamburg 53.6 10.0
Helsinki 60.2 24.9
Hobart -42.9 147.3
Ithaca 42.4 -76.5
Kansas City 39.1 -94.6
Knoxville 36.0 -83.9
Lisbon (Lisboa) 38.7 -9.1
London 51.5 -0.1
Lyon 45.8 4.8
Madison 43.1 -89.4
Madrid 40.4 -3.7
Melbourne -37.8 145.0
Milan (Milano) 45.5 9.2
Minneapolis 45.0 -93.3
Montreal 45.5 -73.6
Munich (München) 48.1 11.6
Nashville 36.2 -86.8
New York 40.7 -74.0
Oslo 59.9 10.8
Ottawa 45.4 -75.7
Oxford 51.8 -1.3
Paris 48.9 2.4
Perth -31.9 115.9
Philadelphia 40.0 -75.2
Phoenix 33.4 -112.1
Portland, Maine 43.7 -70.3
Portland, Oregon 45.5 -122.7
Prague (Praha) 50.1 14.4
Raleigh 35.8 -78.6
Richmond, Virginia 37.5 -77.4
Rome (Roma) 41.9 12.5
Sacramento 38.6 -121.5
Saint Louis 38.6 -90.2
Salt Lake City 40.8 -111.9
San Diego 32.7 -117.2
Santiago -33.4 -70.7
Sapporo 43.1 141.4
Saskatoon 52.1 -106.7
Seattle 47.6 -122.3
Stockholm 59.3 18.1
Sydney -33.9 151.2
Tokyo 35.7 139.7
Toronto 43.7 -79.4
Vancouver 49.3 -123.1
Vienna (Wien) 48.2 16.4
Warsaw (Warszawa) 52.2 21.0
Wellington -41.3 174.8
Winnipeg 49.9 -97.1
York 54.0 -1.1
Zurich 47.4 8.5
`;

interface Listed extends Place {
  /** What it is called, folded: by its name, and by its own people. */
  readonly called: readonly string[];
}

const LISTED: readonly Listed[] = PLACES.trim()
  .split('\n')
  .flatMap((line) => {
    const match = /^(.+?)(?: \((.+)\))? (-?\d+\.\d) (-?\d+\.\d)$/.exec(line);
    if (match === null) return [];
    const [, name = '', own, latitude, longitude] = match;
    const called = [name, ...(own === undefined ? [] : [own])].map(folded);
    return [{ name, called, latitude: Number(latitude), longitude: Number(longitude) }];
  });

export const KNOWN_PLACES: readonly Place[] = LISTED;

/** The place that is called so, case, accents and points aside; undefined where the list has none, or not it alone. */
export function placeCalled(typed: string): Place | undefined {
  const wanted = folded(typed);
  return LISTED.find(({ called }) => called.includes(wanted));
}

const MOST_NEAR = 4;

/** The places of the list that a name which is none of theirs may mean: of several of the name, or misspelt; at most four. */
export function placesLike(typed: string): readonly Place[] {
  const wanted = folded(typed.split(',')[0] ?? '').split(' ');
  const within = (words: readonly string[], all: readonly string[]): boolean =>
    words.every((word) => word.length >= 3 && all.some((one) => one.startsWith(word)));
  const alike = LISTED.filter(({ called }) =>
    called.some((name) => within(wanted, name.split(' ')) || within(name.split(' '), wanted)),
  );
  if (alike.length > 0) return alike.slice(0, MOST_NEAR);
  const near = nearestName(
    wanted.join(' '),
    LISTED.flatMap(({ called }) => called),
  );
  return LISTED.filter(({ called }) => near !== undefined && called.includes(near));
}

/** Its words in small letters without accents, with 'saint' for 'St.'. */
function folded(text: string): string {
  return withoutAccents(text.replace(/\u00f8/gi, 'o'))
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== '')
    .map((word) => (word === 'st' ? 'saint' : word))
    .join(' ');
}
