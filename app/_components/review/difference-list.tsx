import Link from 'next/link'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import type { DifferenceView, RevisionView } from '@/lib/data'
import { DifferenceActs } from './difference-acts'

/** Where words differ from numbers: one list, in which a lead or quality may let one stand with a reason. */
export function DifferenceList({ revision }: { revision: RevisionView }) {
  const { differences } = revision.signOff
  if (differences.length === 0) {
    return <p>Answers, waivers, conditions, actions and names agree with what is stated and computed.</p>
  }
  return (
    <ul className="plain-list" id="differences">
      {differences.map((difference) => (
        <li key={`${difference.key} ${difference.said}`} className="stack">
          <p>
            <strong>{difference.fact}:</strong>{' '}
            <Link href={paths.target(revision.project.id, revision.id, difference.target)}>{difference.said}</Link>, but{' '}
            {difference.against}.
          </p>
          <DifferenceState difference={difference} />
          <DifferenceActs revisionId={revision.id} version={revision.version} difference={difference} />
        </li>
      ))}
    </ul>
  )
}

function DifferenceState({ difference: { acknowledged, isDecidedInChecklist } }: { difference: DifferenceView }) {
  if (acknowledged !== null) {
    return (
      <p className="small muted">
        {acknowledged.byName} let it stand, <Timestamp at={acknowledged.at} />: {acknowledged.reason}
      </p>
    )
  }
  return isDecidedInChecklist ? <p className="small muted">Decided in the checklist.</p> : null
}
