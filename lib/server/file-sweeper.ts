import 'server-only'
import { log } from '@/lib/config'
import { forgetOldAccess, sweepFiles } from '@/lib/data'

/** Once the start is over, and then daily. */
const FIRST_PAUSE_MS = 60_000
const DAY_MS = 86_400_000

/** One per process, however often the module that starts it is loaded. */
const PLACE = Symbol.for('bendworthy.file-sweeper')
const process_ = globalThis as { [PLACE]?: true }

/** Takes kept files away that nothing refers to, and what of the list of who opened what is past its time, for as long as the process lives. What goes wrong in it ends nothing else. */
export function startFileSweeper(): void {
  if (process_[PLACE] === true) return
  process_[PLACE] = true
  const sweep = async (): Promise<void> => {
    try {
      await sweepFiles()
      await forgetOldAccess()
    } catch (error) {
      log.error('unexpected error', { doing: 'sweeping files', error })
    }
    setTimeout(sweep, DAY_MS).unref()
  }
  setTimeout(sweep, FIRST_PAUSE_MS).unref()
}
