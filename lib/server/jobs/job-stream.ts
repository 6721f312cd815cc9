import 'server-only'
import { log } from '@/lib/config'
import { type Actor, type ActResult, isSessionOpen, type JobView, readJob, stopJob } from '@/lib/data'
import { getPlaces } from '../places'
import { getRefusalHeaders, STATUS } from '../route'
import { getStopSignal } from '../stopping'
import { announceJob } from './start-jobs'

const POLL_MS = 250

/**
 * Asks for a job and tells how it goes on, a line of JSON at a time, until it is over. Anyone who goes away, or aborts the request,
 * stops the job.
 *
 * @throws NoTurnError  where the person, or everybody together, listens to too much at once
 */
export async function askAndFollow(
  actor: Actor,
  ask: () => Promise<ActResult<{ readonly jobId: string }>>,
  signal: AbortSignal,
): Promise<Response> {
  const leave = getPlaces('streams').take(actor.userId)
  try {
    const asked = await ask()
    if (asked.ok) {
      await announceJob(asked.value.jobId)
      return followJob(actor, asked.value.jobId, signal, leave)
    }
    leave()
    const { refusal } = asked
    return Response.json({ error: refusal }, { status: STATUS[refusal.kind], headers: getRefusalHeaders(refusal) })
  } catch (error) {
    leave()
    throw error
  }
}

function followJob(actor: Actor, jobId: string, signal: AbortSignal, leave: () => void): Response {
  let isOver = false
  let timer: NodeJS.Timeout | undefined
  const end = (): void => {
    isOver = true
    clearTimeout(timer)
    leave()
  }
  const giveUp = (): void => {
    if (isOver) return
    end()
    stopJob(actor, jobId).catch((error) => log.error('unexpected error', { doing: 'stopping a job', jobId, error }))
  }
  const body = new ReadableStream<Uint8Array>({
    start(controller) {
      const encoder = new TextEncoder()
      let last = ''
      const tell = (view: JobView): void => {
        const line = toLine(jobId, view)
        if (line !== last) controller.enqueue(encoder.encode(line))
        last = line
      }
      const finish = (): void => {
        getStopSignal().removeEventListener('abort', finish)
        if (isOver) return
        end()
        controller.close()
      }
      const tick = async (): Promise<void> => {
        try {
          const view = (await isSessionOpen(actor)) ? await readJob(actor, jobId) : null
          if (isOver) return
          if (view !== null) tell(view)
          if (view !== null && !isFinal(view)) {
            timer = setTimeout(tick, POLL_MS)
            return
          }
        } catch (error) {
          log.error('unexpected error', { doing: 'following a job', jobId, error })
        }
        finish()
      }
      signal.addEventListener('abort', giveUp)
      // The job itself is taken up by the next process; the page asks again.
      getStopSignal().addEventListener('abort', finish)
      if (signal.aborted) giveUp()
      else void tick()
    },
    cancel: giveUp,
  })
  return new Response(body, {
    headers: {
      'content-type': 'application/x-ndjson; charset=utf-8',
      'cache-control': 'private, no-store, no-transform',
      'x-accel-buffering': 'no',
    },
  })
}

const isFinal = ({ state }: JobView): boolean => state !== 'waiting' && state !== 'running'

/** The result is JSON already, and stands in the line as it is. */
function toLine(jobId: string, { state, progress, failure, resultJson }: JobView): string {
  const facts = JSON.stringify({ jobId, state, progress, failure })
  return resultJson !== null ? `${facts.slice(0, -1)},"result":${resultJson}}\n` : `${facts}\n`
}
