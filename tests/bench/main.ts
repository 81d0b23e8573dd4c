// npm run bench: what Dibble costs, as ratios to hand-written loops (the floor) and to hyperformula (the peer), checked against
// each other first. No word after it: a small season of its own. `-- season`: the season template with the demo's plantings
// copied. `-- formulas`: the formulas that cost a whole sheet when one row changes. `-- own`: columns of a grower's own that look at all
// plantings. `-- browser`: the page in Chromium.
// `-- beds`: proposed beds beside an integer solver's optimum.
// `--sizes 100,2000` chooses sizes; `--without-peer` leaves the peer out; `--dearest 15` tells of so many columns.

export {};

const args = process.argv.slice(2);
const option = (name: string): string | undefined => {
  const at = args.indexOf(name);
  return at < 0 ? undefined : args[at + 1];
};
const sizes = (otherwise: string): readonly number[] => (option('--sizes') ?? otherwise).split(',').map(Number);
const withPeer = !args.includes('--without-peer');
const what = args[0]?.startsWith('--') === true ? undefined : args[0];

switch (what) {
  case undefined: {
    const { benchSmallSeason } = await import('./small/bench.ts');
    benchSmallSeason(sizes('1000,10000,100000'), withPeer);
    break;
  }
  case 'season': {
    const { benchSeason } = await import('./season/bench.ts');
    benchSeason(sizes('100,500,2000,10000'), Number(option('--dearest') ?? 8), withPeer);
    break;
  }
  case 'formulas': {
    const { listFormulas } = await import('./season/formulas.ts');
    for (const size of sizes('100')) listFormulas(size);
    break;
  }
  case 'own': {
    const { benchOwnColumns } = await import('./season/own-columns.ts');
    benchOwnColumns(sizes('500,2000,10000'));
    break;
  }
  case 'browser': {
    const { benchBrowser } = await import('./browser/bench.ts');
    for (const size of sizes('2000')) await benchBrowser(size);
    break;
  }
  case 'beds': {
    const { benchBeds } = await import('./beds/bench.ts');
    await benchBeds(Number(option('--seconds') ?? 30));
    break;
  }
  default:
    console.log(
      `Say season, formulas, own, browser or beds, or nothing for a small season of the benchmark's own: “${what}” is not known.`,
    );
    process.exitCode = 1;
}
