// How often properties are tried: few times in `npm test`, many in `npm run test:long`.

export function runs(short: number, long: number): number {
  return process.env.DIBBLE_LONG_RUNS === '1' ? long : short;
}
