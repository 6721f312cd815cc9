/** Scales of ISO 5455 (from memory), largest first, as paper over part. */
export const SCALES: readonly (readonly [name: string, factor: number])[] = [
  ['10:1', 10],
  ['5:1', 5],
  ['2:1', 2],
  ['1:1', 1],
  ['1:2', 1 / 2],
  ['1:5', 1 / 5],
  ['1:10', 1 / 10],
  ['1:20', 1 / 20],
  ['1:50', 1 / 50],
  ['1:100', 1 / 100],
]

export function chooseScale(extentMm: readonly [number, number], roomMm: readonly [number, number]) {
  const fits = ([, factor]: (typeof SCALES)[number]) =>
    extentMm[0] * factor <= roomMm[0] && extentMm[1] * factor <= roomMm[1]
  return SCALES.find(fits) ?? (['1:100', 1 / 100] as const)
}
