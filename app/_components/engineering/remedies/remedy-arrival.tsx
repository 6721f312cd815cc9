import type { RemedyReport } from '@/lib/engine'
import { formatStrainShare, nameRemedy } from './words'

/** Which sets were tried: all up to a size, and some beyond it. */
function describeReach({ completeUpTo, deepest, isStopped }: RemedyReport['search']): string {
  if (completeUpTo === 0) return deepest === 0 ? 'No set was tried.' : 'Not all single changes were tried.'
  // A change that a need forbids, whatever goes with it, is tried alone and continued by no other.
  const all =
    completeUpTo === 1
      ? 'All single changes were tried'
      : `All single changes were tried, and all sets of up to ${completeUpTo} of those that no stated need rules out for good`
  if (deepest <= completeUpTo) return `${all}.`
  return `${all}, and ${isStopped ? 'some' : 'the most promising ones'} of up to ${deepest}.`
}

/** Whether allowed changes bring the bend to where it meets; where they do not, by how much the nearest miss and what binds. */
export function RemedyArrivalNote({ report }: { report: RemedyReport }) {
  const { arrival, search, remedies, before } = report
  if (arrival.kind === 'meets-as-it-is') return null
  const at = arrival.remedyId === null ? -1 : remedies.findIndex(({ id }) => id === arrival.remedyId)
  const remedy = remedies[at]
  if (arrival.kind === 'meets') {
    const sameSizeAt = remedies.findIndex(({ id }) => id === arrival.sameSizeRemedyId)
    const sameSize = remedies[sameSizeAt]
    return (
      <p>
        <strong>
          {arrival.changeCount === 1 ? 'One change is enough' : `${arrival.changeCount} changes together are enough`}
          {remedy === undefined ? '.' : `: ${nameRemedy(remedy)} (no. ${at + 1}).`}
        </strong>{' '}
        {arrival.makesPartLarger &&
          sameSize === undefined &&
          `It makes the part larger; no set of up to ${search.deepest} changes was found that does not. `}
        {sameSize !== undefined &&
          `Without a larger part, ${sameSize.changes.length} changes are: ${nameRemedy(sameSize)} (no. ${sameSizeAt + 1}). `}
        {arrival.changeCount > search.completeUpTo + 1 &&
          'A smaller set may have been missed: not all of them were tried.'}
      </p>
    )
  }
  return (
    <div className="stack">
      <p>
        <strong>
          {search.isStopped
            ? 'Stopped before any allowed set of changes met.'
            : search.deepest > search.completeUpTo
              ? 'No allowed set of changes that was tried meets.'
              : 'No allowed set of changes meets.'}
        </strong>{' '}
        {remedy === undefined
          ? 'Nothing that was tried comes nearer than the design as it is.'
          : `The nearest is no. ${at + 1}: strain at the worst corner is ${formatStrainShare(arrival.marginFraction)} times its allowable, against ${formatStrainShare(before.marginFraction)} as it is.`}{' '}
        {arrival.because}
      </p>
      {arrival.heldBack.length > 0 && (
        <>
          <p className="small">Sets that would meet are held back by:</p>
          <ul className="small">
            {arrival.heldBack.map(({ need, setCount }) => (
              <li key={`${need.kind} ${need.name}`}>
                <strong>{need.name}</strong> ({setCount} {setCount === 1 ? 'set' : 'sets'}). {need.because}
              </li>
            ))}
          </ul>
        </>
      )}
      <p className="small muted">{describeReach(search)}</p>
    </div>
  )
}
