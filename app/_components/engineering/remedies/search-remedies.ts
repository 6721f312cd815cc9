import { z } from 'zod'
import { paths } from '@/lib/addresses'
import type { Design, RemedyReport } from '@/lib/engine'
import type { WayOut } from '@/lib/engine/remedies'

export interface RemedySearch {
  readonly revisionId: string
  /** The draft, which need not be saved. */
  readonly design: Design
  readonly bendId: string
  /** The assembly fixes the radius: changes of it are not tried. */
  readonly isRadiusFixed: boolean
  /** Whose panels, rates and shelf count; null for nobody's. */
  readonly companyId: string | null
}

export type Answer<Report> =
  | { readonly kind: 'found'; readonly report: Report }
  /** Stopped by hand before there was anything to report. */
  | { readonly kind: 'stopped' }
  | { readonly kind: 'failed'; readonly message: string }

/** A line of what the server tells while it searches. */
const lineSchema = z.object({
  jobId: z.string(),
  state: z.enum(['waiting', 'running', 'done', 'failed', 'stopped']),
  progress: z.number(),
  failure: z.string().nullable(),
  result: z.custom<object>((report) => typeof report === 'object' && report !== null).optional(),
})
type Line = z.infer<typeof lineSchema>

const NO_ANSWER = 'The server did not answer. Try again.'
/** A search that another page of the same person stopped is asked for again. */
const MOST_ATTEMPTS = 3

interface Following {
  /** Leaves the search, which the server then stops: nobody wants what it found. */
  readonly leaving: AbortSignal
  /** Ends the search early: what was found so far is its answer. */
  readonly stopping: AbortSignal
  /** Told what is done so far, 0 to 1. */
  readonly onProgress: (fraction: number) => void
  /** Told what is certain before the search is done: the report of what leads, alone. */
  readonly onFirst?: (report: object) => void
}

/** Remedies of one bend. */
export function searchRemedies(
  { revisionId, ...order }: RemedySearch,
  following: Following,
): Promise<Answer<RemedyReport> | null> {
  return search(paths.remedies(revisionId), order, following)
}

/** A way out of all that fails in the design. */
export function searchWayOut(
  { revisionId, ...order }: Omit<RemedySearch, 'bendId'>,
  following: Following,
): Promise<Answer<WayOut> | null> {
  return search(paths.wayOut(revisionId), order, following)
}

/**
 * Has the server search, and follows it. The report is the server's own, of this very version.
 *
 * @returns null where it was left
 */
async function search<Report>(address: string, order: object, following: Following): Promise<Answer<Report> | null> {
  const { leaving, stopping } = following
  try {
    for (let attempt = 1; attempt <= MOST_ATTEMPTS; attempt += 1) {
      const answer = await follow<Report>(address, order, following)
      if (leaving.aborted) return null
      if (answer === 'stopped' && stopping.aborted) return { kind: 'stopped' }
      if (answer !== 'stopped') return answer
    }
    return { kind: 'failed', message: 'The search was stopped.' }
  } catch {
    if (stopping.aborted && !leaving.aborted) return { kind: 'stopped' }
    return leaving.aborted ? null : { kind: 'failed', message: NO_ANSWER }
  }
}

async function follow<Report>(
  address: string,
  order: object,
  { leaving, stopping, onProgress, onFirst }: Following,
): Promise<Answer<Report> | 'stopped'> {
  // Before the server has told anything there is nothing to keep: the request itself ends.
  const unheard = new AbortController()
  let last: Line | null = null
  let hasFirst = false
  const askToStop = () => {
    if (last === null) unheard.abort()
    // Where this request fails the search goes on, and so does its progress.
    else fetch(paths.stopJob(last.jobId), { method: 'POST', signal: leaving }).catch(() => {})
  }
  stopping.addEventListener('abort', askToStop)
  try {
    const response = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(order),
      signal: AbortSignal.any([leaving, unheard.signal]),
    })
    if (!response.ok || response.body === null) return { kind: 'failed', message: await readRefusal(response) }
    for await (const line of readLines(response.body)) {
      last = lineSchema.parse(JSON.parse(line))
      onProgress(last.progress)
      if (last.state !== 'running' || last.result === undefined || hasFirst) continue
      hasFirst = true
      onFirst?.(last.result)
    }
  } finally {
    stopping.removeEventListener('abort', askToStop)
  }
  // What another page of the same person stopped is no answer to this one.
  if (last?.state === 'stopped' && (last.result === undefined || !stopping.aborted)) return 'stopped'
  if (last?.state === 'stopped' && last.result !== undefined) return { kind: 'found', report: last.result as Report }
  if (last?.state === 'done' && last.result !== undefined) return { kind: 'found', report: last.result as Report }
  return { kind: 'failed', message: last?.failure ?? NO_ANSWER }
}

async function readRefusal(response: Response): Promise<string> {
  const { error } = (await response.json()) as { readonly error?: { readonly message?: string } }
  return error?.message ?? NO_ANSWER
}

async function* readLines(body: ReadableStream<Uint8Array>): AsyncGenerator<string> {
  const reader = body.getReader()
  const decoder = new TextDecoder()
  let rest = ''
  for (;;) {
    const { done, value } = await reader.read()
    if (done) break
    const pieces = (rest + decoder.decode(value, { stream: true })).split('\n')
    rest = pieces.pop() ?? ''
    yield* pieces
  }
  if (rest !== '') yield rest
}
