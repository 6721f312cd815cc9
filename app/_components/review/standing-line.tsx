import Link from 'next/link'
import { paths } from '@/lib/addresses'
import { BASIS_WORDS, ITEM_BASES, VERDICT_WORDS } from '@/lib/engine/results'
import { countOf } from '@/lib/engine/units'
import type { Standing } from '@/lib/review'

interface StandingLineProps {
  readonly standing: Standing
  readonly causeCount: number
  readonly blockerCount: number
  readonly projectId: string
  readonly revisionId: string
}

/** Where the revision stands, in one row of counts that add up to the items of the checklist. */
export function StandingLine({ standing, causeCount, blockerCount, projectId, revisionId }: StandingLineProps) {
  const failing = ITEM_BASES.reduce((sum, basis) => sum + standing.failing[basis], 0)
  const bases = ITEM_BASES.filter((basis) => standing.failing[basis] > 0).map(
    (basis) => `${standing.failing[basis]} ${BASIS_WORDS[basis]}`,
  )
  const show = (filter: string) => `${paths.revision(projectId, revisionId, 'checklist')}?show=${filter}`
  const facts = [
    { label: failing === 1 ? 'fails' : 'fail', count: failing, note: bases.join(', '), href: show('failing') },
    { label: 'input missing', count: standing.inputMissing, href: show('not-computed') },
    { label: VERDICT_WORDS['cannot-tell'].word, count: standing.cannotTell, href: show('cannot-tell') },
    { label: 'to judge', count: standing.toJudge, href: show('unanswered') },
    { label: VERDICT_WORDS['thin-margin'].word, count: standing.thin, href: show('failing') },
    { label: 'waived', count: standing.waived },
    { label: 'settled', count: standing.settled },
    { label: VERDICT_WORDS['not-applicable'].word, count: standing.notApplicable },
  ]
  return (
    <div className="stack">
      <p className="lede">
        {failing === 0
          ? 'Nothing fails.'
          : `${countOf(causeCount, 'cause')} ${causeCount === 1 ? 'makes' : 'make'} ${countOf(failing, 'item')} fail.`}{' '}
        {blockerCount > 0 &&
          `${countOf(blockerCount, 'item')} ${blockerCount === 1 ? 'blocks' : 'block'} the next stage.`}
      </p>
      <ul className="facts" aria-label={`All ${standing.items} items of the checklist`}>
        {facts
          .filter(({ count }) => count > 0)
          .map(({ label, count, note, href }) => (
            <li key={label}>
              <strong>{count}</strong> {href === undefined ? label : <Link href={href}>{label}</Link>}
              {note !== undefined && note !== '' && <span className="muted small"> ({note})</span>}
            </li>
          ))}
        <li className="muted">of {countOf(standing.items, 'item')}</li>
      </ul>
    </div>
  )
}
