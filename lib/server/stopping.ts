import 'server-only'
import { getSettings, log } from '@/lib/config'

/** Then the process ends whatever is still open: below the ten seconds after which service managers lose patience. */
const LONGEST_STOP_MS = 8_000

/** One per process, however often a bundle holds this module. */
const PLACE = Symbol.for('bendworthy.stopping')
const process_ = globalThis as { [PLACE]?: AbortController }

function getController(): AbortController {
  process_[PLACE] ??= new AbortController()
  return process_[PLACE]
}

/** Aborted when the process was told to stop: what would stay open for long ends by itself. */
export function getStopSignal(): AbortSignal {
  return getController().signal
}

let isWatching = false

/**
 * Lets the process end in good order. The framework stops taking requests and waits for those under way; streams would keep it
 * waiting for minutes, so they end at once, and after some seconds the process ends all the same. Nothing acknowledged is lost by
 * that: an act is committed before its answer goes out, and jobs and mail are taken up again.
 */
export function stopInGoodOrder(): void {
  if (isWatching) return
  isWatching = true
  const stop = (why: string): void => {
    if (getStopSignal().aborted) return
    log.info('stopping', { why })
    getController().abort()
    setTimeout(() => {
      log.warn('stopped with requests still open', { afterMs: LONGEST_STOP_MS })
      process.exit(0)
    }, LONGEST_STOP_MS).unref()
  }
  process.prependListener('SIGTERM', () => stop('SIGTERM'))
  process.prependListener('SIGINT', () => stop('SIGINT'))
  endWithWrapper()
}

/** `npm start` holds the other end of this pipe: where it is killed without a word, its server ends too and is no orphan. */
function endWithWrapper(): void {
  if (!getSettings().isWrapped) return
  const end = (): void => {
    process.kill(process.pid, 'SIGTERM')
  }
  process.stdin.on('end', end).on('error', end).resume()
}
