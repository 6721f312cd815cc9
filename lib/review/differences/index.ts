import { listWrittenTwice } from '@/lib/engine/statements'
import { listItemStates } from '../answers'
import type { Blocker } from '../blocker'
import { hashJson } from '../canonical'
import type { ReviewSnapshot } from '../snapshot'
import { getSignOffPolicy } from '../waiver-independence'
import { compareDates } from './dates'
import { listFacts } from './facts'
import type { FoundDifference } from './found'
import { listRemarks } from './remarks'

/** A place where a remark disagrees with what is computed, stated or done. */
export interface Difference extends FoundDifference {
  /** Hash of the words and numbers: an acknowledgement covers these and no others. */
  readonly key: string
  /** Who let it stand and why; null where nobody has. */
  readonly acknowledged: { readonly byName: string; readonly at: string; readonly reason: string } | null
  /** The question on facts that are written twice was decided by a person: that is the word on this one. */
  readonly isDecidedInChecklist: boolean
}

/** Everything that differs, before anybody signs: one list, which the sign-off page, what blocks, and the report read. */
export function listDifferences(snapshot: ReviewSnapshot): Difference[] {
  const found = [...compareRemarks(snapshot), ...compareDates(snapshot)].map((one) => ({
    ...one,
    isDecidedInChecklist: false,
  }))
  return [...found, ...listWithinDesign(snapshot)].map((one) => {
    const key = hashJson([one.fact, one.said, one.against])
    const own = snapshot.acknowledgements.find((entry) => entry.key === key)
    return {
      ...one,
      key,
      acknowledged: own === undefined ? null : { byName: own.byName, at: own.at, reason: own.reason },
    }
  })
}

function compareRemarks(snapshot: ReviewSnapshot): FoundDifference[] {
  const facts = listFacts(snapshot)
  return listRemarks(snapshot).flatMap((remark) =>
    facts.flatMap(({ fact, read, against }) =>
      read(remark)
        .filter(({ agrees }) => !agrees)
        .map(({ says }) => ({
          fact,
          said: `${says} in ${remark.where}`,
          against,
          target: remark.target,
          saidById: remark.saidById,
        })),
    ),
  )
}

/** What fields, names and file names of the design say twice; the checklist asks about them too. */
function listWithinDesign(snapshot: ReviewSnapshot) {
  const state = listItemStates(snapshot).find(({ item }) => item.id === 'statements-agree')
  const isDecidedInChecklist = state !== undefined && state.decidedBy === 'person' && state.state !== 'open'
  return listWrittenTwice(snapshot.design, {
    revisionLabel: snapshot.label,
    artworkFileNames: snapshot.artwork.map(({ fileName }) => fileName),
  })
    .filter(({ agrees }) => !agrees)
    .map(({ fact, one, other }) => ({
      fact,
      said: `${other.says} in ${other.where}`,
      against: `${one.says} in ${one.where}`,
      target: { tab: 'checklist' as const, id: 'statements-agree' },
      saidById: '',
      isDecidedInChecklist,
    }))
}

/** What keeps anybody from signing, by the rule of the project: a list alone keeps nobody. */
export function findDifferenceBlockers(snapshot: ReviewSnapshot): Blocker[] {
  const { differences: rule } = getSignOffPolicy(snapshot)
  if (rule === 'listed') return []
  return listDifferences(snapshot)
    .filter(
      ({ acknowledged, isDecidedInChecklist }) => rule === 'none' || (acknowledged === null && !isDecidedInChecklist),
    )
    .map(({ fact, said, against }) => ({
      code: 'words-differ',
      sentence: `${fact}: ${said}, but ${against}`,
      target: { tab: 'sign-off', id: 'differences' },
    }))
}
