import { useEffect, useRef, useState } from 'react'
import type { Design } from '@/lib/engine'
import type { WayOut } from '@/lib/engine/remedies'
import { searchWayOut } from '../remedies'

interface FoundWayOut {
  /** The state of the design that it was sought for. */
  readonly design: Design
  readonly wayOut: WayOut
}

/** The search for a way out: one at a time, on the server; it begins with the page, and leaving the page ends it. */
export function useWayOut(revisionId: string, first: Design | null) {
  const [found, setFound] = useState<FoundWayOut | null>(null)
  const [wanted, setWanted] = useState<{ readonly design: Design; readonly isRadiusFixed: boolean } | null>(
    first === null ? null : { design: first, isRadiusFixed: false },
  )
  const [progress, setProgress] = useState(0)
  const [failure, setFailure] = useState<string | null>(null)
  const stopping = useRef(new AbortController())
  useEffect(() => {
    if (wanted === null) return
    const leaving = new AbortController()
    stopping.current = new AbortController()
    setProgress(0)
    setFailure(null)
    const following = { leaving: leaving.signal, stopping: stopping.current.signal, onProgress: setProgress }
    searchWayOut({ revisionId, ...wanted, companyId: null }, following).then((answer) => {
      if (answer === null || leaving.signal.aborted) return
      if (answer.kind === 'found') setFound({ design: wanted.design, wayOut: answer.report })
      else setFailure(answer.kind === 'failed' ? answer.message : 'The search was stopped before anything was tried.')
      setWanted(null)
    })
    return () => leaving.abort()
  }, [wanted, revisionId])
  return {
    found,
    isSearching: wanted !== null,
    /** 0 to 1 */
    progress,
    failure,
    search: (design: Design, isRadiusFixed: boolean) => setWanted({ design, isRadiusFixed }),
    stop: () => stopping.current.abort(),
  }
}
