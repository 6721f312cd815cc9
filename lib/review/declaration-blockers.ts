import type { Blocker } from './blocker'
import { describeCondition } from './declared'
import { hashDeclaredContent } from './signed-content'
import type { ReviewSnapshot } from './snapshot'
import { type CompanyStanding, isUnresolved, listStandings } from './standings'

const TARGET = { tab: 'sign-off', id: 'declaration' } as const

/**
 * What fabricators' words keep the revision from. One company's yes is needed; no company's yes sets another's no, or its
 * condition, aside.
 */
export function findDeclarationBlockers(snapshot: ReviewSnapshot): Blocker[] {
  if (snapshot.sharedWith.length === 0 && snapshot.declarations.length === 0) {
    return [{ code: 'not-shared', sentence: 'The revision is not shared with any fabricator', target: TARGET }]
  }
  const standings = listStandings(snapshot, hashDeclaredContent(snapshot))
  return [...standings.flatMap(describeUnresolved), ...findMissingYes(standings)]
}

function describeUnresolved(standing: CompanyStanding): Blocker[] {
  const { companyName, kind, last } = standing
  if (last === null || !isUnresolved(standing)) return []
  const block = (code: Blocker['code'], sentence: string): Blocker => ({ code, sentence, target: TARGET })
  switch (kind) {
    case 'no':
      return [
        block('declared-not-buildable', `${companyName} declared this content not buildable${because(last.note)}`),
      ]
    case 'unclear':
      return [
        block(
          'declaration-unclear',
          `${companyName} declared this content buildable with a note that may be a condition, and must declare again: ${last.note}`,
        ),
      ]
    case 'conditions-open':
    case 'conditions-declined':
      return last.conditions.flatMap((condition): Blocker[] => {
        if (condition.state === 'open') {
          return [block('condition-open', `Condition of ${companyName} not decided: ${describeCondition(condition)}`)]
        }
        if (condition.state !== 'declined') return []
        return [
          block(
            'condition-declined',
            `Condition of ${companyName} declined: ${describeCondition(condition)}. It must declare without the condition, or be taken off this release`,
          ),
        ]
      })
    default:
      return [describeOutdated(standing)]
  }
}

function describeOutdated({ companyName, last }: CompanyStanding): Blocker {
  const said =
    last?.verdict === 'not-buildable'
      ? 'not buildable'
      : last?.verdict === 'with-conditions'
        ? 'buildable with conditions'
        : 'buildable'
  return {
    code: 'declaration-outdated',
    sentence: `${companyName} declared earlier content ${said}; the design or artwork has changed since`,
    target: TARGET,
  }
}

function findMissingYes(standings: readonly CompanyStanding[]): Blocker[] {
  const asked = standings.filter(({ kind }) => kind !== 'taken-off')
  if (asked.length === 0) {
    return [
      {
        code: 'not-shared',
        sentence: 'Every fabricator that sees the revision is taken off this release',
        target: TARGET,
      },
    ]
  }
  if (asked.some(({ kind }) => kind === 'yes') || asked.some(isUnresolved)) return []
  const outdated = asked.filter(({ kind }) => kind === 'outdated')
  if (outdated.length > 0) return outdated.map(describeOutdated)
  const names = asked.map(({ companyName }) => companyName).join(', ')
  return [{ code: 'declaration-missing', sentence: `No declaration by ${names} yet`, target: TARGET }]
}

const because = (note: string): string => (note === '' ? '' : `: ${note}`)
