import { useEffect, useRef, useState } from 'react'
import type { RemedyBasisView } from '@/lib/data'
import type { Design, RemedyReport } from '@/lib/engine'
import { searchRemedies } from './search-remedies'

export interface Found {
  /** The state of the design that remedies were sought for. */
  readonly design: Design
  readonly report: RemedyReport
  readonly isRadiusFixed: boolean
  /** The fabricator's panels, rates and shelf that were used; null where there are none. */
  readonly basis: RemedyBasisView | null
  /** What leads, alone: the search goes on for others. */
  readonly isFirst: boolean
}

interface Place {
  readonly revisionId: string
  readonly bendId: string
  readonly isRadiusFixed: boolean
  /** Null until it is known whose panels there are. */
  readonly basis: { readonly chosen: RemedyBasisView | null } | null
}

/**
 * The search for remedies of a bend: one at a time, on the server. Stopped by hand it keeps what it has found; another one, or leaving
 * the page, ends it.
 *
 * @param first  the state of the design that is sought for at once; null for none
 */
export function useRemedySearch({ revisionId, bendId, isRadiusFixed, basis }: Place, first: Design | null) {
  const [found, setFound] = useState<Found | null>(null)
  const [wanted, setWanted] = useState<Design | null>(first)
  const [progress, setProgress] = useState(0)
  const [failure, setFailure] = useState<string | null>(null)
  const [isStopping, setIsStopping] = useState(false)
  const stopping = useRef(new AbortController())
  const isKnown = basis !== null
  const chosen = basis?.chosen ?? null
  useEffect(() => {
    if (wanted === null || !isKnown) return
    const leaving = new AbortController()
    stopping.current = new AbortController()
    const search = { revisionId, design: wanted, bendId, isRadiusFixed, companyId: chosen?.company.id ?? null }
    setProgress(0)
    setFailure(null)
    setIsStopping(false)
    const show = (report: RemedyReport, isFirst: boolean) =>
      setFound({ design: wanted, report, isRadiusFixed, basis: chosen, isFirst })
    const following = {
      leaving: leaving.signal,
      stopping: stopping.current.signal,
      onProgress: setProgress,
      onFirst: (report: object) => {
        if (!leaving.signal.aborted) show(report as RemedyReport, true)
      },
    }
    searchRemedies(search, following).then((answer) => {
      if (answer === null || leaving.signal.aborted) return
      if (answer.kind === 'found') show(answer.report, false)
      else setFailure(answer.kind === 'failed' ? answer.message : 'The search was stopped before any set was tried.')
      setWanted(null)
    })
    return () => leaving.abort()
  }, [wanted, revisionId, bendId, isRadiusFixed, isKnown, chosen])
  return {
    found,
    isSearching: wanted !== null,
    /** 0 to 1 */
    progress,
    /** Stop was pressed: what was found so far is on its way. */
    isStopping,
    /** Why the last search found nothing; null where it did. */
    failure,
    search: setWanted,
    stop: () => {
      setIsStopping(true)
      stopping.current.abort()
    },
  }
}
