import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { Folder, runWith } from './terminal.ts';

let folder: Folder;
beforeEach(() => {
  folder = new Folder();
});
afterEach(() => folder.remove());

async function farmWithBranch(): Promise<string> {
  const file = folder.farm();
  await folder.run(['branch', file, 'Shorter']);
  await folder.run(['set', file, 'Beds', 'North 1', 'Length', '40 ft', '--branch', 'Shorter']);
  await folder.run(['set', file, 'Beds', 'North 2', 'Length', '20 ft', '--branch', 'Shorter']);
  return file;
}

describe('branch', () => {
  test('is made, worked in and listed, and the plan stays as it was', async () => {
    const file = await farmWithBranch();
    expect((await folder.run(['branch', file])).out).toBe(
      'Shorter\n  1  Length: 40 ft (North 1)\n  2  Length: 20 ft (North 2)\n',
    );
    expect((await folder.run(['eval', 'SUM(Beds[Length])', '--in', file])).out).toBe('89.37 ft\n');
    expect(JSON.parse((await folder.run(['branch', file, '--json'])).out)).toEqual([
      { name: 'Shorter', changes: ['Length: 40 ft (North 1)', 'Length: 20 ft (North 2)'] },
    ]);
  });

  test('are listed and compared in the order in which they were made', async () => {
    const file = folder.farm();
    const names = ['Alpha', 'Beta', 'Gamma', 'Delta'];
    for (const name of names) await folder.run(['branch', file, name]);
    const listed = async (...words: string[]) => JSON.parse((await folder.run([...words, '--json'])).out);
    const namesOf = (branches: readonly { readonly name: string }[]) => branches.map(({ name }) => name);
    expect(namesOf(await listed('branch', file))).toEqual(names);
    expect(namesOf((await listed('compare', file)).branches)).toEqual(names);
    await folder.run(['branch', file, 'Beta', '--throw-away']);
    await folder.run(['branch', file, 'Eps']);
    expect(namesOf(await listed('branch', file))).toEqual(['Alpha', 'Gamma', 'Delta', 'Eps']);
  });

  test('gives single changes over, and is kept or thrown away', async () => {
    const file = await farmWithBranch();
    expect((await folder.run(['branch', file, 'shorter', '--take', '2'])).out).toBe(
      'Taken over: Length: 20 ft (North 2)\n',
    );
    expect((await folder.run(['eval', 'SUM(Beds[Length])', '--in', file])).out).toBe('70 ft\n');
    expect((await folder.run(['branch', file, 'Shorter', '--keep'])).out).toBe('The plan is as in Shorter now.\n');
    expect((await folder.run(['eval', 'SUM(Beds[Length])', '--in', file])).out).toBe('60 ft\n');
    expect((await folder.run(['branch', file])).out).toBe('No branches yet.\n');
    await folder.run(['branch', file, 'Other']);
    expect((await folder.run(['branch', file, 'Other', '--rename', 'Third'])).out).toBe('Other is called Third now.\n');
    expect((await folder.run(['branch', file, 'Third', '--throw-away'])).out).toBe('Third is thrown away.\n');
  });

  test('tells changes of rows that the plan has taken out since, and keeps the branch without them', async () => {
    const file = await farmWithBranch();
    const whole = JSON.parse(folder.text('farm.json'));
    const { rows } = whole.rows.beds;
    whole.rows.beds.rows = rows.filter((row: readonly unknown[]) => !row.includes('North 2'));
    expect(whole.rows.beds.rows.length).toBe(rows.length - 1);
    folder.put('farm.json', JSON.stringify(whole));
    const { out } = await folder.run(['branch', file]);
    expect(out).toMatch(
      / 1 {2}Length: 40 ft \(North 1\)\n {2}2 .* – the plan has taken its row or sheet out since\.\n$/,
    );
    expect((await folder.run(['branch', file, 'Shorter', '--take', '2'])).err).toContain(
      'The plan has taken out since',
    );
    expect((await folder.run(['branch', file, 'Shorter', '--keep'])).out).toBe(
      'The plan is as in Shorter now. One change of it was left out where the plan has taken the row or sheet out since.\n',
    );
  });

  test('is refused in one sentence where it can’t be', async () => {
    const file = await farmWithBranch();
    const refused = async (...words: string[]) => (await folder.run(words)).err;
    expect(await refused('branch', file, 'Shorter')).toBe(
      'farm.json: There is a branch called “Shorter” already: choose another name.\n',
    );
    expect(await refused('branch', file, 'Shorter', '--take', '7')).toBe(
      'farm.json: Shorter has no change 7: “branch farm.json” lists them with their numbers.\n',
    );
    expect(await refused('branch', file, 'Shortr', '--keep')).toBe(
      'farm.json: there is no branch called “Shortr”: did you mean “Shorter”?\n',
    );
    expect(await refused('branch', file, 'Shorter', '--keep', '--throw-away')).toBe(
      'Choose one of --keep and --throw-away.\n',
    );
    expect(await refused('set', file, 'Beds', 'North 1', 'Length', '40 ft', '--branch', 'Wide')).toContain(
      'there is no branch called “Wide”',
    );
  });
});

describe('compare', () => {
  test('says what was changed to get there', async () => {
    const file = await farmWithBranch();
    const { out } = await folder.run(['compare', file]);
    expect(out).toContain('Beds / North 1 / Length: 50 ft → 40 ft');
    const data = JSON.parse((await folder.run(['compare', file, 'Shorter', '--json'])).out) as {
      branches: { name: string; cells: unknown[] }[];
    };
    expect(data.branches[0]).toMatchObject({
      name: 'Shorter',
      changes: ['Length: 40 ft (North 1)', 'Length: 20 ft (North 2)'],
    });
    expect(data.branches[0]?.cells.length).toBe(1);
  });

  test('needs a branch', async () => {
    expect((await folder.run(['compare', folder.farm()])).err).toBe(
      'farm.json: it has no branches to compare: “branch farm.json NAME” makes one.\n',
    );
  });

  test('shows the totals of a season side by side', async () => {
    const file = folder.file('demo.json');
    await folder.run(['new', 'demo', '--out', file]);
    await folder.run(['branch', file, 'Shorter']);
    await folder.run(['set', file, 'Plantings', 'Keeper clumps', 'Bed length used', '25 ft', '--branch', 'Shorter']);
    const data = JSON.parse((await folder.run(['compare', file, '--json'])).out) as {
      totals: { name: string; base: string; branches: { shown: string; difference: string }[] }[];
      weeks: { name: string; weeks: unknown[][] }[];
    };
    const names = data.totals.map(({ name }) => name);
    for (const name of ['Yield to sell', 'Seeds', 'Costs', 'Margin', 'Findings: errors']) expect(names).toContain(name);
    expect(data.totals.find(({ name }) => name === 'Yield to sell')?.branches[0]?.difference).toMatch(/^−\d.* lb$/);
    expect(data.weeks.find(({ name }) => name === 'Harvest')?.weeks.some(([, a, b]) => a !== b)).toBe(true);
  });
});

describe('seek and grid', () => {
  test('seek answers with a value, or says that there is none', async () => {
    const file = folder.farm();
    const words = ['seek', file, 'Beds', 'North 1', 'Length', 'SUM(Beds[Length])', '100 ft'];
    expect(await folder.run([...words, '--from', '10 ft', '--to', '90 ft'])).toEqual({
      status: 0,
      out: 'SUM(Beds[Length]) is 100 ft at 60.63 ft.\n',
      err: '',
    });
    const none = await folder.run([...words, '--from', '10 ft', '--to', '20 ft', '--json']);
    expect(none.status).toBe(1);
    expect(JSON.parse(none.out)).toMatchObject({ answer: 'none', places: [] });
    expect((await folder.run(words)).err).toBe('Say between which values to look: --from VALUE --to VALUE.\n');
    expect((await folder.run([...words, '--from', '1 kg', '--to', '2 ft'])).status).toBe(2);
  });

  test.each([
    ['us', '60 ft', '70'],
    ['si', '20 m', '25'],
  ])('in %s a bare goal is in the unit of the figure, and another kind of unit is refused', async (units, to, bare) => {
    const file = folder.file('beds.json');
    const unit = units === 'us' ? 'ft' : 'm';
    await folder.run(['new', 'season', '--units', units, '--out', file]);
    const beds = folder.put('beds.csv', `Bed,Length\nA,10 ${unit}\nB,20 ${unit}\n`);
    expect((await folder.run(['import', file, 'Beds', beds])).status).toBe(0);
    const words = ['seek', file, 'Beds', 'A', 'Length', 'SUM(Beds[Length])'];
    const ends = ['--from', `1 ${unit}`, '--to', to];
    expect((await folder.run([...words, bare, ...ends])).out).toBe(
      units === 'us' ? 'SUM(Beds[Length]) is 70 ft at 50 ft.\n' : 'SUM(Beds[Length]) is 25 m at 5 m.\n',
    );
    expect(await folder.run([...words, '100 USD', ...ends])).toEqual({
      status: 2,
      out: '',
      err: `beds.json: 100 USD is an amount of money; this figure wants a length, such as 8 ${unit}.\n`,
    });
  });

  test('a goal of dates is a date', async () => {
    const file = folder.farm();
    const seek = (goal: string, formula = 'MAX(Days[Day])') => {
      const words = ['seek', file, 'Farm', 'x', 'First day', formula, goal];
      return folder.run([...words, '--from', '2027-11-01', '--to', '2027-12-31']);
    };
    // The third day of three.
    for (const goal of ['2 Dec 2027', '2027-12-02', '12/2/2027']) {
      expect((await seek(goal)).out).toBe('MAX(Days[Day]) is 2 Dec 2027 at 30 Nov 2027.\n');
    }
    expect((await seek('1', 'MAX(Days[Day]) > DATE(2027; 1; 1)')).err).toBe(
      'farm.json: This figure is yes or no, which reaches no goal: ask for a number, an amount or a date.\n',
    );
  });

  test('grid prints a table of one cell against another', async () => {
    const file = folder.farm();
    const words = ['grid', file, 'SUM(Beds[Length])', '--down', 'Beds / North 1 / Length = 40 ft; 60 ft'];
    const across = ['--across', 'Beds / North 2 / Length = 10..30 ft by 10 ft'];
    expect((await folder.run([...words, ...across])).out).toBe(
      [
        'North 1 / Length \\ North 2 / Length  10 ft  20 ft  30 ft',
        '40 ft                                50 ft  60 ft  70 ft',
        '60 ft                                70 ft  80 ft  90 ft',
        '',
      ].join('\n'),
    );
    expect(JSON.parse((await folder.run([...words, ...across, '--json'])).out)).toMatchObject({
      unit: 'ft',
      cells: [
        [50, 60, 70],
        [70, 80, 90],
      ],
    });
    expect((await folder.run(['grid', file, '1'])).err).toContain('Say what to try');
    expect((await folder.run(['grid', file, '1', '--down', 'Beds'])).err).toContain('--down reads');
  });
});

describe('what is asked of a branch', () => {
  test('is answered for it: sought, in a table and drawn', async () => {
    const file = await farmWithBranch();
    const of = async (...words: string[]) => (await folder.run([...words, '--branch', 'shorter'])).out;
    const seek = ['seek', file, 'Beds', 'North 1', 'Length', 'SUM(Beds[Length])', '100 ft'];
    // North 2 is 20 ft long there.
    expect(await of(...seek, '--from', '10 ft', '--to', '90 ft')).toBe('SUM(Beds[Length]) is 100 ft at 80 ft.\n');
    const grid = ['grid', file, 'SUM(Beds[Length])', '--down', 'Beds / North 1 / Length = 40 ft; 60 ft', '--json'];
    expect(JSON.parse(await of(...grid)).cells).toEqual([[60], [80]]);
    await of('set', file, 'Beds', 'North 1', 'Length', '70..80 ft');
    const draws = ['draws', file, 'SUM(Beds[Length])', '--count', '50', '--json'];
    const { p10, p90 } = JSON.parse(await of(...draws)).figures[0];
    expect(p10).toBeGreaterThan(90);
    expect(p90).toBeLessThan(100);
    expect((await folder.run(draws)).err).toContain('every figure is known for sure');
    for (const words of [[...seek, '--from', '1 ft', '--to', '2 ft'], grid, draws]) {
      expect((await folder.run([...words, '--branch', 'Shortr'])).err).toBe(
        'farm.json: there is no branch called “Shortr”: did you mean “Shorter”?\n',
      );
    }
  });
});

describe('--json', () => {
  test('gives what was sought and the figure there in the units beside them', async () => {
    const file = folder.farm();
    const words = ['seek', file, 'Beds', 'North 1', 'Length', 'SUM(Beds[Length])', '100 ft', '--json'];
    const sought = async (from: string, to: string) =>
      JSON.parse((await folder.run([...words, '--from', from, '--to', to])).out);
    // The other bed is 12 m long, 39.37 ft, so that 60.63 ft are left.
    const [place] = (await sought('10 ft', '90 ft')).places;
    expect(await sought('10 ft', '90 ft')).toMatchObject({ answer: 'one', inputUnit: 'ft', unit: 'ft' });
    expect(place).toMatchObject({ stepsOver: false, figureFrom: expect.closeTo(100, 6) });
    expect(place.from).toBeCloseTo(100 - 12 / 0.3048, 6);
    expect(await sought('3 m', '30 m')).toMatchObject({
      inputUnit: 'm',
      unit: 'ft',
      places: [{ from: expect.closeTo(30.48 - 12, 6), figureTo: expect.closeTo(100, 6) }],
    });
  });

  test('gives days by the calendar', async () => {
    const file = folder.farm();
    const ends = ['--from', '2027-11-01', '--to', '2027-12-31', '--json'];
    const seek = ['seek', file, 'Farm', 'x', 'First day', 'MAX(Days[Day])', '2 Dec 2027'];
    const [day, last] = ['2027-11-30', '2027-12-02'];
    expect(JSON.parse((await folder.run([...seek, ...ends])).out)).toMatchObject({
      inputUnit: null,
      unit: null,
      places: [{ from: day, to: day, figureFrom: last, figureTo: last, stepsOver: false }],
    });
    await folder.run(['set', file, 'Farm', 'x', 'First day', '1 Nov 2027..20 Nov 2027']);
    const draws = ['draws', file, 'MAX(Days[Day])', '--count', '50', '--json'];
    const { unit, p10, p90 } = JSON.parse((await folder.run(draws)).out).figures[0];
    expect([unit, p10 < p90]).toEqual([null, true]);
    for (const drawn of [p10, p90]) expect(drawn).toMatch(/^2027-11-\d\d$/);
  });
});

describe('draws', () => {
  test('gives intervals, the chance of a goal and what a figure hangs on, the same again for the same seed', async () => {
    const file = folder.farm();
    const words = ['draws', file, 'SUM(Beds[Length])', '--count', '400'];
    expect((await folder.run(words)).err).toContain('every figure is known for sure');
    await folder.run(['set', file, 'Beds', 'North 1', 'Length', '40..60 ft']);
    const { out } = await folder.run([...words, '--goal', '89 ft']);
    expect(out).toMatch(/^400 seasons drawn from 1 uncertain figure, seed 1\n\nSUM\(Beds\[Length\]\)\n {2}10% {2}\d/);
    expect(out).toMatch(/at least 89 ft: \d+% of seasons, give or take \d+%/);
    // All of it, but for what lies within the eight classes of 50 seasons.
    expect(out).toMatch(/hangs on Beds \/ North 1 \/ Length: 9\d% of the spread/);
    expect(out).toMatch(/\n {2}less than \d+% is left out: 400 seasons can't tell it from chance\n$/);
    // A bare number is in feet, as the figure is; one season is one, and tells nothing of what it hangs on.
    expect((await folder.run([...words, '--goal', '89'])).out).toBe(out);
    expect((await folder.run([...words, '--goal', '89 lb'])).err).toContain(
      '89 lb is a mass; this figure wants a length',
    );
    expect((await folder.run(['draws', file, 'SUM(Beds[Length])', '--count', '1'])).out).toMatch(
      /^1 season drawn from/,
    );
    const json = async (seed: string) => (await folder.run([...words, '--seed', seed, '--json'])).out;
    expect(await json('3')).toBe(await json('3'));
    expect(await json('4')).not.toBe(await json('3'));
    expect((await folder.run([...words, '--seed', 'x'])).err).toContain('--seed takes a whole number');
  });

  test('says how far it is where a person reads along, and clears that before it answers', async () => {
    const file = folder.farm();
    await folder.run(['set', file, 'Beds', 'North 1', 'Length', '40..60 ft']);
    const words = ['draws', file, 'SUM(Beds[Length])', '--count', '100'];
    const said: (string | undefined)[] = [];
    const told = await runWith(words, [], undefined, (line) => said.push(line));
    const [first] = said;
    expect(first).toBe(`Reading ${file} ...`);
    const drawing = said.slice(said.findIndex((line) => line?.startsWith('Drawing') === true));
    expect(drawing).toEqual([...['0%', '25%', '50%', '75%'].map((share) => `Drawing seasons: ${share}`), undefined]);
    expect(told).toEqual(await runWith(words));
  });

  test('gives figures week by week with the chance of running out', async () => {
    const file = folder.file('demo-by-week.json');
    await folder.run(['new', 'demo', '--out', file]);
    const words = ['draws', file, '--count', '20', '--by-week', 'short of demand'];
    const { out } = await folder.run(words);
    expect(out).toMatch(/\nShort of demand\nWeek +10% +50% +90% +Runs short\n/);
    const { byWeek } = JSON.parse((await folder.run([...words, '--json'])).out) as {
      byWeek: { weeks: { week: string; p10: number; p90: number; count: number; chance: { chance: number } }[] }[];
    };
    const weeks = byWeek[0]?.weeks ?? [];
    expect(weeks.length).toBeGreaterThan(20);
    for (const { week, p10, p90, count, chance } of weeks) {
      expect(out).toContain(week);
      // Of the seasons that have the week, nine of ten run short where even the tenth does, and few where nine do not.
      expect(chance.chance).toBeGreaterThanOrEqual(p10 > 0.01 ? (0.9 * count - 1) / 20 : 0);
      expect(chance.chance).toBeLessThanOrEqual(p90 > 0.01 ? count / 20 : (0.1 * count + 1) / 20);
    }
    expect((await folder.run(['draws', file, '--by-week', 'fish'])).err).toContain('--by-week knows no “fish”');
    expect((await folder.run(['draws', file])).err).toContain('Say what to ask of the seasons');
  });
});

describe('choose', () => {
  test('makes a branch of the amounts that gain most within beds and hands', async () => {
    const file = folder.file('demo.json');
    await folder.run(['new', 'demo', '--out', file]);
    const { out } = await folder.run(['choose', file, 'Most margin', '--within', 'beds, hands']);
    expect(out).toMatch(
      /^\d+ of the plantings change their length and \d+ (is|are) left out, for a Margin of [\d,.]+ USD in the branch/,
    );
    const data = JSON.parse((await folder.run(['compare', file, '--json'])).out) as {
      totals: { name: string; branches: { shown: string; difference: string }[] }[];
    };
    const margin = data.totals.find(({ name }) => name === 'Margin')?.branches[0]?.shown;
    expect(/a Margin of ([\d,.]+ USD) in the branch/.exec(out)?.[1]).toBe(margin);
    const of = (name: string) => data.totals.find((total) => total.name === name)?.branches[0]?.difference;
    expect(of('Margin')).toMatch(/^\+/);
    expect(of('Hours above the hands there are')).toBe('');
    expect((await folder.run(['choose', file, 'Most margin'])).err).toContain('There is a branch called');
    const sold = JSON.parse((await folder.run(['choose', file, 'As it sells', '--json'])).out) as {
      gain: string;
      lengths: unknown[];
      heldBackBy: { name: string; worth: string }[];
    };
    expect(sold.gain).toMatch(/^Sales by outlets less Costs of [\d,.]+ USD in the branch, where the plan has /);
    expect(sold.lengths.length).toBeGreaterThan(0);
    expect(sold.heldBackBy[0]?.worth).toMatch(/USD$/);
    expect((await folder.run(['choose', file, 'Other', '--goal', 'most'])).err).toContain('--goal takes margin');
    expect((await folder.run(['choose', file, 'Other', '--within', 'sun'])).err).toContain('--within takes a list');
  });
});
