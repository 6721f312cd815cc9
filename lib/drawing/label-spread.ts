/**
 * Moves label positions apart so that none lies closer than `spacingPx` to the next, as near to the wanted places as
 * that allows (pool-adjacent-violators on the wanted positions), inside [topPx, bottomPx].
 *
 * @param wantedPx  ascending positions
 * @returns positions in the same order; they run past bottomPx only if the labels do not fit at all
 */
export function spreadLabels(
  wantedPx: readonly number[],
  spacingPx: number,
  topPx: number,
  bottomPx: number,
): number[] {
  interface Pool {
    sum: number
    count: number
  }
  const pools: Pool[] = []
  const start = (pool: Pool) => pool.sum / pool.count
  wantedPx.forEach((wanted, index) => {
    pools.push({ sum: wanted - index * spacingPx, count: 1 })
    for (;;) {
      const last = pools.at(-1)
      const before = pools.at(-2)
      if (last === undefined || before === undefined || start(before) <= start(last)) break
      before.sum += last.sum
      before.count += last.count
      pools.pop()
    }
  })
  const room = Math.max(topPx, bottomPx - (wantedPx.length - 1) * spacingPx)
  const result: number[] = []
  for (const pool of pools) {
    const at = Math.min(Math.max(start(pool), topPx), room)
    for (let step = 0; step < pool.count; step += 1) result.push(at + result.length * spacingPx)
  }
  return result
}
