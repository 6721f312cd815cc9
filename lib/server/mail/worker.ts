import 'server-only'
import { getSettings, log } from '@/lib/config'
import { answerResetRequests, queueDigests } from '@/lib/data'
import { deliverBySmtp, deliverToFolder } from './deliver'
import { sendDueMail } from './send-due'

const TICK_MS = 3_000
/** Whether the day's digests are due is asked this often. */
const DIGEST_TICK_MS = 60_000

/** One worker per process, however often the module that starts it is loaded. */
const PLACE = Symbol.for('bendworthy.mail-worker')
const process_ = globalThis as { [PLACE]?: true }

/** Sends the outbox for as long as the process lives. Nothing that goes wrong in it ends the server. */
export function startMailWorker(): void {
  if (process_[PLACE] === true) return
  process_[PLACE] = true
  const { smtpUrl } = getSettings()
  const folder = deliverToFolder()
  const deliveries = { folder, smtp: smtpUrl === null ? folder : deliverBySmtp(smtpUrl) }
  const way = smtpUrl === null ? 'folder' : 'smtp'
  repeat('answering requests for a new password', TICK_MS, answerResetRequests)
  repeat('sending mail', TICK_MS, () => sendDueMail(way, deliveries))
  repeat('queueing digests', DIGEST_TICK_MS, queueDigests)
}

function repeat(doing: string, pauseMs: number, run: () => Promise<unknown>): void {
  const tick = async (): Promise<void> => {
    try {
      await run()
    } catch (error) {
      log.error('unexpected error', { doing, error })
    }
    // The timer alone must not keep a process alive that has nothing else to do.
    setTimeout(tick, pauseMs).unref()
  }
  setTimeout(tick, pauseMs).unref()
}
