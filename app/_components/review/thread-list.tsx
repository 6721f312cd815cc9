'use client'

import { useEffect, useState } from 'react'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { EmptyState } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import type { CompanyView, ProjectRole, ThreadView } from '@/lib/data'
import { ThreadCard } from './thread-card'
import { type AnchorOption, ThreadForm } from './thread-form'

const FILTERS = [
  { value: 'open', label: 'Not closed' },
  { value: 'holding', label: 'Blocking' },
  { value: 'all', label: 'All' },
] as const

type Filter = (typeof FILTERS)[number]['value']

interface ThreadListProps {
  projectId: string
  revisionId: string
  threads: readonly ThreadView[]
  anchors: readonly AnchorOption[]
  fabricators: readonly CompanyView[]
  role: ProjectRole | null
  mayComment: boolean
  mayRaiseQuery: boolean
  initialFilter: string
  /** Place that somebody came to ask about, as `kind:id`: the form comes first then. */
  about: string | null
  /** Of an artwork file that somebody came to ask about, in mm of the file. */
  aboutPlace: { readonly xMm: number; readonly yMm: number } | null
  maxFileBytes: number
}

/** All threads of a revision; those that hold the review come first. */
export function ThreadList(props: ThreadListProps) {
  const {
    projectId,
    revisionId,
    threads,
    anchors,
    fabricators,
    role,
    mayComment,
    mayRaiseQuery,
    initialFilter,
    about,
    aboutPlace,
    maxFileBytes,
  } = props
  const [filter, setFilter] = useState<Filter>(
    () => FILTERS.find((known) => known.value === initialFilter)?.value ?? 'open',
  )
  // A link to one thread must reach it whatever the filter hides.
  useEffect(() => {
    const showLinked = () => {
      const { hash } = window.location
      if (!hash.startsWith('#thread-')) return
      setFilter('all')
      requestAnimationFrame(() => document.getElementById(decodeURIComponent(hash.slice(1)))?.scrollIntoView())
    }
    showLinked()
    window.addEventListener('hashchange', showLinked)
    return () => window.removeEventListener('hashchange', showLinked)
  }, [])
  const changeFilter = (next: Filter) => {
    setFilter(next)
    const address = new URL(window.location.href)
    address.searchParams.set('show', next)
    address.hash = ''
    window.history.replaceState(null, '', address)
  }
  const shown = threads.filter((thread) => {
    if (filter === 'all') return true
    if (filter === 'holding') return isHolding(thread)
    return thread.state !== 'closed'
  })
  const ordered = [...shown].sort((a, b) => Number(isHolding(b)) - Number(isHolding(a)) || compareTimes(a, b))
  const askedFor = about === null ? undefined : anchors.find(({ kind, id }) => `${kind}:${id}` === about)
  const form = mayComment && (
    <PageSection title={askedFor === undefined ? 'Open a thread' : 'Ask or comment'} id="ask">
      <ThreadForm
        revisionId={revisionId}
        anchors={
          askedFor === undefined
            ? anchors
            : [
                { ...askedFor, ...(aboutPlace === null ? {} : { place: aboutPlace }) },
                ...anchors.filter((anchor) => anchor !== askedFor),
              ]
        }
        fabricators={fabricators}
        role={role}
        mayRaiseQuery={mayRaiseQuery}
      />
    </PageSection>
  )
  return (
    <>
      {askedFor !== undefined && form}
      <div className="row filters no-print">
        <ChoiceGroup label="Which threads" options={FILTERS} value={filter} onChange={changeFilter} />
      </div>
      {ordered.length === 0 && (
        <EmptyState>{threads.length === 0 ? 'No comments yet.' : 'No thread matches this filter.'}</EmptyState>
      )}
      {ordered.map((thread) => (
        <ThreadCard key={thread.id} projectId={projectId} thread={thread} maxFileBytes={maxFileBytes} />
      ))}
      {askedFor === undefined && form}
    </>
  )
}

/** Must-change threads and engineering queries hold fabricator review until they are settled. */
function isHolding(thread: ThreadView): boolean {
  return thread.state === 'open' && (thread.kind === 'must-change' || thread.kind === 'engineering-query')
}

function compareTimes(a: ThreadView, b: ThreadView): number {
  return a.openedAt < b.openedAt ? -1 : a.openedAt > b.openedAt ? 1 : 0
}
