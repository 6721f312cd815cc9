/** Runs until warm, then long enough that a median means something on a busy machine. */
const WARM_UP_MS = 800
const MEASURE_MS = 1500
const LEAST_RUNS = 15

export interface Timing {
  readonly medianMs: number
  /** The tenth percentile: nearer to what the machine does when nothing else wants it. */
  readonly undisturbedMs: number
  /** Median of processor time, which waiting for a busy machine is not in; NaN in a browser, which does not tell. */
  readonly processorMs: number
}

export function measure(run: () => unknown): Timing {
  const warmUntil = performance.now() + WARM_UP_MS
  while (performance.now() < warmUntil) run()
  const times: number[] = []
  const processorTimes: number[] = []
  const until = performance.now() + MEASURE_MS
  while (performance.now() < until || times.length < LEAST_RUNS) {
    const processorStart = readProcessorMs()
    const start = performance.now()
    run()
    times.push(performance.now() - start)
    processorTimes.push(readProcessorMs() - processorStart)
  }
  const at = (list: number[], fraction: number): number =>
    list.sort((a, b) => a - b)[Math.floor(fraction * list.length)] ?? Number.NaN
  return { medianMs: at(times, 0.5), undisturbedMs: at(times, 0.1), processorMs: at(processorTimes, 0.5) }
}

function readProcessorMs(): number {
  if (typeof process === 'undefined') return Number.NaN
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}
