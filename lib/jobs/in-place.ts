import { JobStoppedError } from './errors'
import type { JobOptions, JobRunner, JobTable } from './kind'

/**
 * Runs jobs on the thread that asks, one call at a time, with no limits: for programs that serve nobody else, such as tests.
 * A stop is noticed where the job tells its progress.
 */
export function makeInPlaceRunner<T extends JobTable>(table: T): JobRunner<T> {
  return async (name, input, options: JobOptions = {}) => {
    const requireWanted = (): void => {
      if (options.signal?.aborted === true) throw new JobStoppedError(name)
    }
    const kind = table[name]
    if (kind === undefined) throw new RangeError(`no kind of job "${name}"`)
    const run = await kind.load()
    requireWanted()
    const output = await run(input as never, {
      onProgress: (fraction) => {
        requireWanted()
        options.onProgress?.(fraction)
      },
      onFirst: (found) => options.onFirst?.(found),
      isFinishAsked: () => options.finishing?.aborted === true,
    })
    requireWanted()
    // The table's type says which output goes with which name; the lookup by name loses it.
    return output as never
  }
}
