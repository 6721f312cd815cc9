import 'server-only'
import { log } from '@/lib/config'
import { workOutOutdated } from '@/lib/data'
import { getStopSignal } from './stopping'

/** Soon enough that a page mostly finds them worked out, seldom enough that an act after an act is one piece of work. */
const PAUSE_MS = 2_000

/** One per process, however often the module that starts it is loaded. */
const PLACE = Symbol.for('bendworthy.standings')
const process_ = globalThis as { [PLACE]?: true }

/** Works out where revisions stand after acts, and all of them after an upgrade, so that no page has to. */
export function startStandings(): void {
  if (process_[PLACE] === true) return
  process_[PLACE] = true
  const tick = async (): Promise<void> => {
    try {
      while (!getStopSignal().aborted && (await workOutOutdated()) > 0);
    } catch (error) {
      log.error('unexpected error', { doing: 'working out where revisions stand', error })
    }
    setTimeout(tick, PAUSE_MS).unref()
  }
  setTimeout(tick, PAUSE_MS).unref()
}
