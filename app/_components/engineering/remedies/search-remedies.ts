import { z } from 'zod'
import { paths } from '@/app/_components/shell/paths'
import type { Design, RemedyReport } from '@/lib/engine'

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

export type RemedyAnswer =
  | { readonly kind: 'found'; readonly report: RemedyReport }
  | { readonly kind: 'failed'; readonly message: string }

/** A line of what the server tells while it searches. The report is the server's own, of this very version. */
const lineSchema = z.object({
  state: z.enum(['waiting', 'running', 'done', 'failed', 'stopped']),
  progress: z.number(),
  failure: z.string().nullable(),
  result: z.custom<RemedyReport>((report) => typeof report === 'object' && report !== null).optional(),
})
type Line = z.infer<typeof lineSchema>

const NO_ANSWER = 'The server did not answer. Try again.'
/** A search that another page of the same person stopped is asked for again. */
const MOST_ATTEMPTS = 3

/**
 * Has the server search, and follows it. An abort stops the search there too.
 *
 * @param onProgress  told what is done so far, 0 to 1
 * @returns null where it was aborted
 */
export async function searchRemedies(
  search: RemedySearch,
  signal: AbortSignal,
  onProgress: (fraction: number) => void,
): Promise<RemedyAnswer | null> {
  try {
    for (let attempt = 1; attempt <= MOST_ATTEMPTS; attempt += 1) {
      const answer = await follow(search, signal, onProgress)
      if (signal.aborted) return null
      if (answer !== 'stopped') return answer
    }
    return { kind: 'failed', message: 'The search was stopped.' }
  } catch {
    return signal.aborted ? null : { kind: 'failed', message: NO_ANSWER }
  }
}

async function follow(
  { revisionId, ...order }: RemedySearch,
  signal: AbortSignal,
  onProgress: (fraction: number) => void,
): Promise<RemedyAnswer | 'stopped'> {
  const response = await fetch(paths.remedies(revisionId), {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(order),
    signal,
  })
  if (!response.ok || response.body === null) return { kind: 'failed', message: await readRefusal(response) }
  let last: Line | null = null
  for await (const line of readLines(response.body)) {
    last = lineSchema.parse(JSON.parse(line))
    onProgress(last.progress)
  }
  if (last?.state === 'stopped') return 'stopped'
  if (last?.state === 'done' && last.result !== undefined) return { kind: 'found', report: last.result }
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
