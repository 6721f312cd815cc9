import { type DecidedWhen, PROFILE_ITEM_IDS } from '@/lib/engine/catalogue'
import { capitalise } from '@/lib/engine/units'
import { listItemStates } from './answers'
import type { Blocker } from './blocker'
import { findGapsInBrief, findGapsInConstruction } from './completeness'
import { findDeclarationBlockers } from './declaration-blockers'
import { findDifferenceBlockers } from './differences'
import { findApprovalBlockers, findAuthorSigning, findIndependenceBlockers } from './independence-blockers'
import { isPending } from './review-actions'
import { getStoredDesign, hashDesign } from './signed-content'
import type { ReviewSnapshot, ReviewThread } from './snapshot'
import type { Stage } from './stages'

/**
 * What keeps the revision from leaving its present stage, as one list. Computed, never asked. A stage's list includes
 * the causes of the stages before it, so that nothing is released that an earlier stage would no longer let pass.
 * Stages outside the path have none.
 */
export function findBlockers(snapshot: ReviewSnapshot, stage: Stage = snapshot.stage): Blocker[] {
  switch (stage) {
    case 'preparing':
      return findEmptiness(snapshot)
    case 'early-review':
      return findEarlyBlockers(snapshot)
    case 'fabricator-review':
      return [
        ...findEarlyBlockers(snapshot),
        ...findProfileDemands(snapshot, 'layout'),
        ...findUnanswered(snapshot, 'layout'),
        ...findFabricatorBlockers(snapshot),
      ]
    case 'awaiting-signature':
      return [...findContentBlockers(snapshot), ...findSignatureBlockers(snapshot)]
    default:
      return []
  }
}

/** What keeps anybody from signing: the list of the last stage without the signatures themselves. */
export function findContentBlockers(snapshot: ReviewSnapshot): Blocker[] {
  return [
    ...findEarlyBlockers(snapshot),
    ...findProfileDemands(snapshot, 'layout'),
    ...findUnanswered(snapshot, 'layout'),
    ...findFabricatorBlockers(snapshot),
    ...findUnanswered(snapshot, 'fabricator'),
    ...findUnwaived(snapshot),
    ...findPendingActions(snapshot),
    ...findDifferenceBlockers(snapshot),
    ...findArtworkBlockers(snapshot),
  ]
}

/** What keeps this person from signing now. */
export function findSigningBlockers(snapshot: ReviewSnapshot, userId: string): Blocker[] {
  return [
    ...findContentBlockers(snapshot),
    ...findIndependenceBlockers(snapshot),
    ...findAuthorSigning(snapshot, userId),
  ]
}

function findEmptiness(snapshot: ReviewSnapshot): Blocker[] {
  const { layers, zones } = snapshot.design.construction
  if (layers.length > 0 && zones.length > 0) return []
  return [
    {
      code: 'construction-empty',
      sentence: 'The construction has no layers or no zones yet',
      target: { tab: 'construction', id: '' },
    },
  ]
}

function findEarlyBlockers(snapshot: ReviewSnapshot): Blocker[] {
  const blockers = findEmptiness(snapshot)
  for (const gap of findGapsInBrief(snapshot.design.brief)) {
    blockers.push({
      code: 'brief-incomplete',
      sentence: `The brief does not state ${gap.label}`,
      target: { tab: 'brief', id: gap.field },
    })
  }
  const written = snapshot.design.brief.revisionLabel
  if (written !== '' && written !== snapshot.label) {
    blockers.push({
      code: 'revision-differs',
      sentence: `The design says revision ${written}, and this is revision ${snapshot.label}: re-evaluate to put it right`,
      target: { tab: 'overview', id: '' },
    })
  }
  for (const gap of findGapsInConstruction(snapshot.design)) {
    blockers.push({ code: 'construction-incomplete', sentence: gap.sentence, target: gap.target })
  }
  blockers.push(
    ...findStaleness(snapshot),
    ...findProfileDemands(snapshot, 'early'),
    ...findUnanswered(snapshot, 'early'),
  )
  return blockers
}

function findStaleness(snapshot: ReviewSnapshot): Blocker[] {
  const { evaluation } = snapshot
  // The overview shows results and computes them again.
  const target = { tab: 'overview', id: '' } as const
  if (evaluation === null) {
    return [{ code: 'not-evaluated', sentence: 'This revision has no recorded results', target }]
  }
  const causes: string[] = []
  if (evaluation.designHash !== hashDesign(getStoredDesign(snapshot))) causes.push('the design')
  if (evaluation.limitsHash !== snapshot.limitsHash) causes.push('a limit or a sheet of a fabricator')
  if (evaluation.engineVersion !== snapshot.engineVersion) {
    causes.push(`the engine (${evaluation.engineVersion}, now ${snapshot.engineVersion})`)
  }
  if (causes.length === 0) return []
  return [
    {
      code: 'calculation-stale',
      sentence: `The recorded results are older than a change of ${causes.join(' and ')}: re-evaluate`,
      target,
    },
  ]
}

/**
 * What a profile requires and nobody has stated. No answer stands in for it: the field is filled in, or a waiver of the item says why it may
 * stay open.
 */
function findProfileDemands(snapshot: ReviewSnapshot, when: DecidedWhen): Blocker[] {
  if (snapshot.evaluation === null) return []
  return listItemStates(snapshot)
    .filter(({ item, state }) => PROFILE_ITEM_IDS.includes(item.id) && item.decidedWhen === when && state !== 'waived')
    .flatMap(({ item, result }) =>
      (result?.outcomes ?? [])
        .filter(({ kind }) => kind === 'not-computed')
        .map(({ summary }): Blocker => {
          const said = summary.replace(/^Not computed: /, '').replace(/\.$/, '')
          return {
            code: 'profile-requirement',
            sentence: capitalise(said),
            target: { tab: 'checklist', id: item.id },
          }
        }),
    )
}

function findUnanswered(snapshot: ReviewSnapshot, when: DecidedWhen): Blocker[] {
  // Without any results the one blocker that says so is enough.
  if (snapshot.evaluation === null) return []
  return listItemStates(snapshot)
    .filter(({ item, state }) => item.decidedWhen === when && state === 'open' && !PROFILE_ITEM_IDS.includes(item.id))
    .map(({ item, result }) => {
      const missing = result?.outcomes.flatMap((o) => (o.kind === 'not-computed' ? o.missing : [])) ?? []
      const labels = [...new Set(missing.map(({ label }) => label))]
      const named = labels.slice(0, 3).join(', ') + (labels.length > 3 ? ` and ${labels.length - 3} more` : '')
      return {
        code: 'item-unanswered',
        sentence: `Unanswered: ${item.question}${labels.length > 0 ? ` Missing: ${named}.` : ''}`,
        target: { tab: 'checklist', id: item.id },
      }
    })
}

/** An answer settles a query. A must-change is settled when it is closed, which takes what was done about it. */
export function isThreadUnresolved({ kind, state }: Pick<ReviewThread, 'kind' | 'state'>): boolean {
  return kind === 'must-change' ? state !== 'closed' : kind === 'engineering-query' && state === 'open'
}

/** Closing one of these says what was done about it. */
export function needsDone({ kind }: Pick<ReviewThread, 'kind'>): boolean {
  return kind === 'must-change' || kind === 'engineering-query'
}

interface OpenedThread {
  readonly kind: ReviewThread['kind']
  readonly openedByCompanyId: string
  /** Null is the team alone. */
  readonly audienceCompanyId: string | null
}

/**
 * May it be closed by saying that nothing changes? A fabricator's must-change is not: its own people withdraw it so, and the team once the company is off
 * this release.
 *
 * @param fabricatorCompanyId  of the person who closes; null is the team
 */
export function mayCloseUnchanged(
  { kind, openedByCompanyId, audienceCompanyId }: OpenedThread,
  fabricatorCompanyId: string | null,
  takenOff: readonly { readonly companyId: string }[],
): boolean {
  const isFabricators = audienceCompanyId !== null && openedByCompanyId === audienceCompanyId
  if (kind !== 'must-change' || !isFabricators || fabricatorCompanyId === openedByCompanyId) return true
  return takenOff.some(({ companyId }) => companyId === openedByCompanyId)
}

function findFabricatorBlockers(snapshot: ReviewSnapshot): Blocker[] {
  const blockers: Blocker[] = snapshot.threads.filter(isThreadUnresolved).map((thread) => ({
    code: 'thread-open',
    sentence: `${thread.state === 'open' ? 'Open' : 'Answered, not closed:'} ${thread.kind === 'must-change' ? 'must-change' : 'engineering query'} of ${thread.openedByCompanyName}: ${thread.title}`,
    target: { tab: 'threads', id: thread.id },
  }))
  blockers.push(...findDeclarationBlockers(snapshot))
  return blockers
}

function findUnwaived(snapshot: ReviewSnapshot): Blocker[] {
  return listItemStates(snapshot)
    .filter(({ state, needsWaiver }) => state !== 'waived' && needsWaiver)
    .map(({ item, result, waiver, setAside }) => ({
      code: 'failure-unwaived',
      sentence: `${result?.headline ?? item.question}${
        waiver !== null ? ' (a waiver is awaiting approval)' : setAside !== '' ? ` (${setAside})` : ''
      }`,
      target: { tab: 'checklist', id: item.id },
    }))
}

/** What is due before the release is done, looked at and closed by then, or dropped with a reason. */
function findPendingActions({ actions }: ReviewSnapshot): Blocker[] {
  return actions
    .filter((action) => action.due === 'before-release' && isPending(action))
    .map(({ id, number, text, state, ownerName }) => ({
      code: 'action-open',
      sentence:
        state === 'reported'
          ? `Action ${number} is reported done and awaits another person: ${text}`
          : `Action ${number}, due before release, is open (${ownerName}): ${text}`,
      target: { tab: 'actions', id },
    }))
}

function findArtworkBlockers(snapshot: ReviewSnapshot): Blocker[] {
  const blockers: Blocker[] = []
  if (snapshot.settings.artworkRequired && snapshot.artwork.length === 0) {
    blockers.push({
      code: 'artwork-missing',
      sentence: 'No artwork is uploaded',
      target: { tab: 'artwork', id: '' },
    })
  }
  return blockers
}

function findSignatureBlockers(snapshot: ReviewSnapshot): Blocker[] {
  return [...findIndependenceBlockers(snapshot), ...findApprovalBlockers(snapshot)]
}
