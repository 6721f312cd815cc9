'use client'

import { useMemo, useState } from 'react'
import type { ItemText } from '@/app/_components/review/item-text'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { EmptyState } from '@/app/_components/ui/notices'
import { QuantityText } from '@/app/_components/ui/quantity'
import { TextField } from '@/app/_components/ui/text-field'
import { DECIDED_WHEN_WORDS } from '@/lib/engine/catalogue'
import type { Unit } from '@/lib/engine/results'
import { ITEM_SECTION_WORDS, ITEM_SECTIONS } from '@/lib/engine/results'
import { countOf } from '@/lib/engine/units'

export interface CatalogueEntry extends ItemText {
  limits: readonly {
    key: string
    label: string
    unit: Unit
    sense: 'at-most' | 'at-least'
    value: number
    note: string
  }[]
  /** What the workspace made of it; empty for an item as delivered. */
  workspaceNote: string
}

const BASES = [
  { value: 'all', label: 'All' },
  { value: 'computed', label: 'By a check' },
  { value: 'judged', label: 'Judged by people' },
] as const

type Basis = (typeof BASES)[number]['value']

interface CatalogueListProps {
  entries: readonly CatalogueEntry[]
  severities: Readonly<Record<string, string>>
}

/** The whole catalogue, searchable: what is asked, why, how it is checked, and where each limit comes from. */
export function CatalogueList({ entries, severities }: CatalogueListProps) {
  const [words, setWords] = useState('')
  const [basis, setBasis] = useState<Basis>('all')
  const shown = useMemo(() => {
    const wanted = words.toLowerCase().split(/\s+/).filter(Boolean)
    return entries.filter((entry) => {
      if (basis !== 'all' && entry.isComputed !== (basis === 'computed')) return false
      const text =
        `${entry.id} ${entry.question} ${entry.why} ${entry.howToCheck} ${entry.sources.join(' ')}`.toLowerCase()
      return wanted.every((word) => text.includes(word))
    })
  }, [entries, words, basis])
  return (
    <>
      <div className="row filters no-print">
        <ChoiceGroup label="Which items" options={BASES} value={basis} onChange={setBasis} />
        <TextField label="Find in the catalogue" type="search" value={words} onChange={setWords} />
        <span role="status" className="muted small">
          {countOf(shown.length, 'item')}
        </span>
      </div>
      {shown.length === 0 && <EmptyState>No item contains all of these words.</EmptyState>}
      {ITEM_SECTIONS.map((section) => {
        const inSection = shown.filter((entry) => entry.section === section)
        if (inSection.length === 0) return null
        return (
          <section key={section} className="section" aria-labelledby={`catalogue-${section}`}>
            <div className="section-head">
              <h2 id={`catalogue-${section}`}>{ITEM_SECTION_WORDS[section]}</h2>
            </div>
            {inSection.map((entry) => (
              <Entry key={entry.id} entry={entry} severities={severities} />
            ))}
          </section>
        )
      })}
    </>
  )
}

function Entry({ entry, severities }: { entry: CatalogueEntry; severities: Readonly<Record<string, string>> }) {
  return (
    <article className="catalogue-entry" id={entry.id}>
      <div>
        <h3>{entry.question}</h3>
        <p className="small muted">
          <code>{entry.id}</code>
        </p>
        <p className="small muted">
          {entry.severity}: {severities[entry.severity]}
        </p>
        {entry.workspaceNote !== '' && <p className="small">{entry.workspaceNote}</p>}
      </div>
      <div className="stack">
        <p>{entry.why}</p>
        <dl className="terms">
          <dt>how to check</dt>
          <dd>{entry.howToCheck}</dd>
          {entry.evidence !== null && (
            <>
              <dt>evidence</dt>
              <dd>{entry.evidence}</dd>
            </>
          )}
          <dt>applies to</dt>
          <dd>{entry.appliesTo}</dd>
          <dt>decided by</dt>
          <dd>
            {entry.isComputed ? (entry.evidence === null ? 'calculation' : 'calculation and judgment') : 'judgment'}, in{' '}
            {DECIDED_WHEN_WORDS[entry.decidedWhen]}
          </dd>
          {entry.limits.length > 0 && (
            <>
              <dt>{entry.limits.length === 1 ? 'limit' : 'limits'}</dt>
              <dd>
                <ul className="plain-list">
                  {entry.limits.map((limit) => (
                    <li key={limit.key}>
                      {limit.label}: {limit.sense === 'at-most' ? 'at most' : 'at least'}{' '}
                      <QuantityText quantity={{ value: limit.value, unit: limit.unit }} />
                      {limit.note !== '' && <span className="muted small"> {limit.note}</span>}
                    </li>
                  ))}
                </ul>
              </dd>
            </>
          )}
          {entry.sources.length > 0 && (
            <>
              <dt>{entry.sources.length === 1 ? 'source' : 'sources'}</dt>
              <dd className="small">{entry.sources.join('; ')}</dd>
            </>
          )}
        </dl>
      </div>
    </article>
  )
}
