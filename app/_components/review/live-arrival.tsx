'use client'

import Link from 'next/link'
import { usePathname, useRouter } from 'next/navigation'
import { useEffect, useRef, useState } from 'react'
import { z } from 'zod'
import { paths } from '@/lib/addresses'

interface LiveArrivalProps {
  projectId: string
  revisionId: string
  ownUserId: string
  /** Number of the last act that the page shows. */
  start: number
}

const arrivedSchema = z.object({
  threadId: z.string(),
  proposalId: z.string().nullable(),
  byUserId: z.string().nullable(),
  sentence: z.string(),
})

type Arrived = z.infer<typeof arrivedSchema>

/**
 * Screens that show threads or proposals are reloaded; on the others a draft may be in the making, and only the line
 * appears.
 */
const SHOWS_THREADS = /\/(threads|checklist|proposals(\/[^/]+)?)$/

/**
 * Listens for what others do to threads. A connection that is lost goes on after the last act that arrived; one of a
 * hidden page is closed, since a browser keeps few of them, and taken up when the page is looked at again.
 */
export function LiveArrival({ projectId, revisionId, ownUserId, start }: LiveArrivalProps) {
  const router = useRouter()
  const isShown = SHOWS_THREADS.test(usePathname())
  const isShownNow = useRef(isShown)
  isShownNow.current = isShown
  const place = useRef(start)
  const [last, setLast] = useState<Arrived | null>(null)

  useEffect(() => {
    let source: EventSource | null = null
    const arrive = (event: MessageEvent<string>) => {
      const sequence = Number(event.lastEventId)
      if (!(sequence > place.current)) return
      place.current = sequence
      const arrived = arrivedSchema.parse(JSON.parse(event.data))
      if (arrived.byUserId === ownUserId) return
      setLast(arrived)
      if (isShownNow.current) router.refresh()
    }
    const listen = () => {
      source?.close()
      source = null
      if (document.visibilityState === 'hidden') return
      source = new EventSource(paths.liveEvents(revisionId, place.current))
      source.addEventListener('thread', arrive)
    }
    listen()
    document.addEventListener('visibilitychange', listen)
    return () => {
      document.removeEventListener('visibilitychange', listen)
      source?.close()
    }
  }, [revisionId, ownUserId, router])

  return (
    <p role="status" className="live-line no-print">
      {last !== null && (
        <>
          {last.sentence}.{' '}
          {last.proposalId === null ? (
            <Link href={paths.thread(projectId, revisionId, last.threadId)} onClick={() => setLast(null)}>
              Show the thread
            </Link>
          ) : (
            <Link href={paths.proposal(projectId, revisionId, last.proposalId)} onClick={() => setLast(null)}>
              Show the proposal
            </Link>
          )}
        </>
      )}
    </p>
  )
}
