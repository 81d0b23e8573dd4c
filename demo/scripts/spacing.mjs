// A script on a workbook, run as `node spacing.mjs season.json`: closer onions, asked about and saved.
import { openWorkbook } from 'dibble';

const season = await openWorkbook(process.argv[2]);
const before = season.ask('SUM(Plantings[Margin])');
season.set('Plantings', 'Keeper singles', 'In-row spacing', '5 in');
const after = season.ask('SUM(Plantings[Margin])');
console.log(`Margin: ${before.shown} before, ${after.shown} with closer onions.`);
console.log(`${season.findings().filter(({ level }) => level === 'error').length} errors to look at.`);
season.save();
