import 'server-only'
import { log } from '@/lib/config'
import { type Actor, type LiveEvent, type LiveEvents, listLiveEvents, NotAllowedError, NotFoundError } from '@/lib/data'
import { getLivePoll } from './live-poll'
import { getPlaces } from './places'
import { getStopSignal } from './stopping'

/** Soon enough to talk, seldom enough that a hundred open pages cost nothing. */
const POLL_MS = 1_000
/** Below the half minute after which common proxies end a silent connection. */
const SIGN_OF_LIFE_MS = 15_000
/** Then the page reconnects: a connection whose other end is gone without a word is not kept for ever. */
const LONGEST_MS = 10 * 60_000
const RETRY_MS = 2_000

interface FeedOptions {
  readonly pollMs?: number
  readonly longestMs?: number
}

/**
 * What happens to threads of a revision, as server-sent events (WHATWG HTML, 9.2). The id of each is its number in the
 * trail; a page that lost its connection sends the last one, and goes on right after it.
 *
 * @param request  `Last-Event-ID` counts before `?after=`, which is where the page began
 * @throws NotFoundError  for somebody who does not see the revision
 * @throws NoTurnError  where the person, or everybody together, listens on too many pages
 */
export async function openLiveFeed(
  actor: Actor,
  revisionId: string,
  request: Request,
  { pollMs = POLL_MS, longestMs = LONGEST_MS }: FeedOptions = {},
): Promise<Response> {
  const first = await listLiveEvents(actor, revisionId, readStart(request))
  const leave = getPlaces('streams').take(actor.userId)
  const stop = getStopSignal()
  let isOver = false
  let stopListening = (): void => {}
  let longest: NodeJS.Timeout | undefined
  const end = (): void => {
    isOver = true
    clearTimeout(longest)
    stopListening()
    leave()
  }
  const body = new ReadableStream<Uint8Array>({
    start(controller) {
      const encoder = new TextEncoder()
      const send = (text: string): void => controller.enqueue(encoder.encode(text))
      const finish = (): void => {
        stop.removeEventListener('abort', finish)
        if (isOver) return
        end()
        controller.close()
      }
      request.signal.addEventListener('abort', finish)
      stop.addEventListener('abort', finish)
      if (request.signal.aborted || stop.aborted) {
        finish()
        return
      }
      send(`retry: ${RETRY_MS}\n\n`)
      let spokeAt = performance.now()
      let place = first.lookedUpTo
      const giveSignOfLife = (): void => {
        if (performance.now() - spokeAt <= SIGN_OF_LIFE_MS) return
        send(': still here\n\n')
        spokeAt = performance.now()
      }
      const tell = ({ events, lookedUpTo }: LiveEvents): void => {
        for (const event of events) send(toMessage(event))
        place = lookedUpTo
        if (events.length > 0) spokeAt = performance.now()
        else giveSignOfLife()
      }
      const ask = async (): Promise<void> => {
        try {
          const next = await listLiveEvents(actor, revisionId, place)
          if (!isOver) tell(next)
        } catch (error) {
          const isExpected = error instanceof NotFoundError || error instanceof NotAllowedError
          if (!isExpected) log.error('unexpected error', { doing: 'live events', error })
          finish()
        }
      }
      tell(first)
      longest = setTimeout(finish, longestMs)
      stopListening = getLivePoll(pollMs).add(
        // A session that was ended hears nothing of what came after: that is looked at first, in the same question.
        { actor, revisionId, onNews: ask, onQuiet: giveSignOfLife, onSessionEnded: finish },
        place,
      )
    },
    cancel: end,
  })
  return new Response(body, {
    headers: {
      'content-type': 'text/event-stream; charset=utf-8',
      // Compression or a proxy that collects would hold events back.
      'cache-control': 'no-cache, no-transform',
      'x-accel-buffering': 'no',
    },
  })
}

function readStart(request: Request): number {
  const said = request.headers.get('last-event-id') ?? new URL(request.url).searchParams.get('after') ?? ''
  return /^\d{1,15}$/.test(said) ? Number(said) : 0
}

function toMessage({ sequence, ...rest }: LiveEvent): string {
  return `id: ${sequence}\nevent: thread\ndata: ${JSON.stringify(rest)}\n\n`
}
