// What looks through the workbook for what needs a look. Nothing on the screen waits for it, so it is fetched once the figures on
// screen stand. Called by findings.ts alone.

export { Findings } from '../../../engine/index.ts';
