// The beds on paper, drawn: through the season, and in a week with a list that can be written on. A page holds so many beds as can be read.

import type { ComponentChildren } from 'preact';
import { type Book, mondayOf, settings } from '../../../engine/index.ts';
import { bedMap, standsWords } from '../pictures/bed-map/bed-map.ts';
import { MAP_LEGEND, mapOnPaper } from '../pictures/bed-map/bed-map-picture.tsx';
import { Legend, type LegendItem } from '../pictures/kit/frame.tsx';
import { ACROSS } from '../pictures/kit/paper-size.ts';
import { dayOfWeek } from '../pictures/kit/weeks.ts';
import { CALENDAR_LEGEND, calendarOnPaper } from '../pictures/season-calendar/calendar-picture.tsx';
import { NO_BEDS, seasonCalendar } from '../pictures/season-calendar/season-calendar.ts';
import { farmName, toWrite, unbroken, words } from './paper.ts';
import { PaperTables } from './paper-tables.tsx';

/** Every bed through the season. */
export function Calendar({ book }: { readonly book: Book }) {
  const calendar = seasonCalendar(book, settings(book).today);
  if (calendar === undefined) return <p class="no-picture">{NO_BEDS}</p>;
  return (
    <Drawings
      title="The beds through the season"
      farm={farmName(book)}
      says={calendar.says}
      legend={CALENDAR_LEGEND}
      drawings={calendarOnPaper(book, calendar, ACROSS)}
    />
  );
}

const LIST_COLUMNS = [...words('Bed', 'Stands'), ...toWrite({ Notes: 40 })];

/** The beds of a week: drawn, and in a list, which can be written on. */
export function Beds({ book, day }: { readonly book: Book; readonly day: number }) {
  const calendar = seasonCalendar(book, settings(book).today);
  if (calendar === undefined) return <p class="no-picture">{NO_BEDS}</p>;
  const map = bedMap(book, calendar, dayOfWeek({ from: mondayOf(day) }, calendar.season));
  const rows = map.fields.flatMap(({ beds }) => beds.map((bed) => [unbroken(bed.name), standsWords(book, bed), '']));
  return (
    <>
      <Drawings
        title="The beds"
        farm={farmName(book)}
        says={map.says}
        legend={MAP_LEGEND}
        drawings={mapOnPaper(map, ACROSS)}
      />
      <PaperTables
        paper={{
          title: 'The beds, in a list',
          farm: farmName(book),
          says: map.says,
          tables: [{ heading: 'Beds', columns: LIST_COLUMNS, rows, boxes: false }],
        }}
      />
    </>
  );
}

interface DrawingsProps {
  readonly title: string;
  readonly farm: string;
  readonly says: string;
  readonly legend: readonly LegendItem[];
  readonly drawings: readonly ComponentChildren[];
}

/** A page a drawing, each with its title and what its marks mean. */
function Drawings({ title, farm, says, legend, drawings }: DrawingsProps) {
  return (
    <>
      {drawings.map((drawing, index) => (
        <div key={index} class="paper paper-drawing chart">
          <h2>{drawings.length === 1 ? title : `${title}, ${index + 1} of ${drawings.length}`}</h2>
          <p class="paper-farm">{farm}</p>
          {index === 0 ? <p class="paper-says">{says}</p> : null}
          <div class="chart-picture one-drawing">{drawing}</div>
          <Legend legend={legend} />
        </div>
      ))}
    </>
  );
}
