import 'server-only'
import { type CompanyStanding, hashDeclaredContent, listStandings } from '@/lib/review'
import { mayOnRevision } from '../records/authorization'
import type { Wait, WaitContext } from './wait'

const TARGET = { tab: 'sign-off', id: null } as const

function listStandingsOf({ snapshot }: WaitContext): CompanyStanding[] {
  return listStandings(snapshot, hashDeclaredContent(snapshot))
}

/**
 * A fabricator's word that the present content cannot be built waits for the team, until the content changes or the
 * fabricator says otherwise.
 */
export function listNotBuildableWaits(context: WaitContext): Wait[] {
  if (!mayOnRevision(context.rights, 'revision:edit', context.subject)) return []
  return listStandingsOf(context).flatMap(({ kind, last, companyName }) =>
    kind !== 'no' || last === null
      ? []
      : [
          {
            since: last.madeAt,
            reason: `${companyName} declared that it cannot be built${last.note === '' ? '' : `: ${last.note}`}`,
            nextAct: 'Change the design, or ask what would make it buildable',
            target: TARGET,
          },
        ],
  )
}

/** Conditions that nobody has decided on wait for those who may. */
export function listConditionWaits(context: WaitContext): Wait[] {
  if (!mayOnRevision(context.rights, 'condition:decide', context.subject)) return []
  return listStandingsOf(context).flatMap(({ kind, last, companyName }) => {
    if (last === null || kind === 'taken-off') return []
    const open = last.conditions.filter(({ state }) => state === 'open').length
    if (open === 0) return []
    return [
      {
        since: last.madeAt,
        reason: `${companyName} builds it under ${open === 1 ? 'a condition' : `${open} conditions`} not decided yet`,
        nextAct: 'Take over, decline, or make an action of each',
        target: TARGET,
      },
    ]
  })
}

export function listDeclarationWaits(context: WaitContext): Wait[] {
  const { loaded, rights, subject, fabricatorCompanyId } = context
  if (fabricatorCompanyId === null || !mayOnRevision(rights, 'declaration:make', subject)) return []
  const standing = listStandingsOf(context).find(({ companyId }) => companyId === fabricatorCompanyId)
  const reason = standing === undefined ? null : describeMissing(standing)
  if (reason === null) return []
  return [
    {
      since: loaded.record.stageSince.toISOString(),
      reason,
      nextAct: 'Declare buildable, buildable with conditions, or not buildable',
      target: TARGET,
    },
  ]
}

/** Why the company's word is asked for; null where it stands, or is not asked for. */
function describeMissing({ kind }: CompanyStanding): string | null {
  switch (kind) {
    case 'silent':
      return 'Your company has not yet declared whether it can be built'
    case 'outdated':
      return 'The content has changed since your company’s declaration'
    case 'conditions-declined':
      return 'A condition of your company was declined'
    case 'unclear':
      return 'Your company’s declaration has a note that may be a condition'
    default:
      return null
  }
}
