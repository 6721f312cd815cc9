import type { Content } from 'pdfmake/interfaces'
import type { DecidedOutcome, Outcome } from '@/lib/engine'
import { asComputed } from '@/lib/engine/units'
import {
  DECLARATION_WORDS,
  describeCondition,
  describeDecision,
  describeDue,
  describeTerms,
  hashDeclaredContent,
  type ItemState,
  isOverdue,
  isPending,
  listItemStates,
} from '@/lib/review'
import type { PackageContent } from '../content'
import { level1, level2, makeEmptyPart, makeFacts, makeTable } from './style'
import { formatLimit, formatQuantity, formatTime, formatWord } from './words'

/** So many margins and changes are named on the first page; the rest stands further on. */
const SMALLEST = 5
const MOST_CHANGES = 8

/** The first page: what was decided, by whom, on what, and what is left to be done. */
export function makeDecision(content: PackageContent): Content[] {
  const { snapshot, release } = content
  const { terms, replaces } = release
  const itemStates = listItemStates(snapshot)
  return [
    makeFacts(
      [
        ['Decision', `${terms.isConditional ? 'Released conditionally' : 'Released'}, ${describeTerms(terms)}`],
        ['Conditions', listConditions(content)],
        ['Replaces', replaces === null ? 'nothing: first issue in this project' : `revision ${replaces}`],
        [
          'Change, reason, effectivity',
          [
            terms.changeNumber === '' ? 'no change number' : `change ${terms.changeNumber}`,
            terms.reason === '' ? 'reason not stated' : terms.reason,
            terms.effectivity === '' ? 'effectivity not stated' : `effective ${terms.effectivity}`,
          ].join('; '),
        ],
        ['Changed since the last issue', describeChanges(content.changes.sinceIssue, 'there is none to compare with')],
        [
          'Changed since the fabricator looked',
          content.changes.sinceLooked.length === 0
            ? 'no fabricator has opened it'
            : content.changes.sinceLooked
                .map(({ company, changes }) => `${company}: ${describeChanges(changes, 'has not opened it')}`)
                .join('; '),
        ],
      ],
      level1('Decision'),
    ),
    makeRoles(content),
    makeMargins(itemStates),
    makeRisks(itemStates),
    makeOpenActions(content),
    { text: '', pageBreak: 'after' },
  ]
}

/** Those of the release itself, then each that a fabricator's present declaration makes, with what became of it. */
function listConditions({ snapshot, release }: PackageContent): string {
  const declared = hashDeclaredContent(snapshot)
  const made = snapshot.declarations
    .filter(({ contentHash }) => contentHash === declared)
    .flatMap(({ companyName, conditions }) =>
      conditions.map(
        (condition) =>
          `${companyName}: ${describeCondition(condition)}. ${describeDecision(condition) || 'Not decided.'}`,
      ),
    )
  const all = [...(release.terms.conditions === '' ? [] : [release.terms.conditions]), ...made]
  return all.length === 0 ? 'none' : all.join(' ')
}

function describeChanges(changes: readonly string[] | null, without: string): string {
  if (changes === null) return without
  if (changes.length === 0) return 'nothing'
  const left = changes.length - MOST_CHANGES
  return `${changes.slice(0, MOST_CHANGES).join('; ')}${left > 0 ? `; and ${left} more` : ''}`
}

function makeRoles({ snapshot, release }: PackageContent): Content {
  const signed = snapshot.signatures.filter(({ voided }) => voided === null)
  const waived = snapshot.waivers.filter(({ state }) => state === 'approved')
  const declared = hashDeclaredContent(snapshot)
  const rows: string[][] = [
    ['released it', release.byName, formatTime(release.at)],
    ...signed.map(({ name, capacity, signedAt }) => [`signed as ${capacity}`, name, formatTime(signedAt)]),
    ...snapshot.authors.map(({ name }) => ['made it', name, '']),
    ...[...new Set(waived.map(({ decidedByName }) => decidedByName ?? ''))].map((name) => [
      'approved waivers',
      name,
      '',
    ]),
    ...snapshot.sharedWith.map(({ companyId, companyName }) => {
      const last = snapshot.declarations.filter((declaration) => declaration.companyId === companyId).at(-1)
      if (last === undefined) return ['was asked and has not declared', companyName, '']
      const on = last.contentHash === declared ? '' : ', on earlier content'
      return [
        `declared ${DECLARATION_WORDS[last.verdict]}${on}`,
        `${last.madeByName}, ${companyName}`,
        formatTime(last.madeAt),
      ]
    }),
  ]
  return makeTable(
    [
      { label: 'Role', width: 150 },
      { label: 'Who', width: '*' },
      { label: 'When', width: 120 },
    ],
    rows,
    level2('Who in which role'),
  )
}

const isDecided = (outcome: Outcome): outcome is DecidedOutcome => outcome.kind === 'decided'

/** Room left in relation to the limit. A limit of zero has no such relation and is left out. */
function makeMargins(itemStates: readonly ItemState[]): Content {
  const margins = itemStates
    .flatMap(({ item, result, follows }) =>
      result === null || follows.length > 0
        ? []
        : result.outcomes
            .filter(isDecided)
            // What was typed stands where somebody put it, and of what is counted there is no room to speak of.
            .filter(({ isTyped, isStated }) => isTyped !== true && isStated !== true)
            .filter(({ limit }) => limit.value !== 0 && limit.unit !== 'count')
            .map((outcome) => ({ item, outcome, share: outcome.margin / Math.abs(outcome.limit.value) })),
    )
    .sort((a, b) => a.share - b.share)
  const seen = new Set<string>()
  const smallest = margins
    .filter(({ item }) => !seen.has(item.id) && seen.add(item.id) !== undefined)
    .slice(0, SMALLEST)
  if (smallest.length === 0)
    return makeEmptyPart(level2('Smallest computed margins'), 'Nothing was computed against a limit.')
  return makeTable(
    [
      { label: 'Item', width: '*' },
      { label: 'Found', width: 70, isNumeric: true },
      { label: 'Limit', width: 90 },
      { label: 'Margin of the limit', width: 80, isNumeric: true },
    ],
    smallest.map(({ item, outcome, share }) => [
      item.question,
      formatQuantity(outcome.value),
      formatLimit(outcome.limit),
      asComputed(share * 100, 'sharePct'),
    ]),
    level2('Smallest computed margins'),
  )
}

function makeRisks(itemStates: readonly ItemState[]): Content {
  const risks = itemStates.filter(
    ({ state, follows }) => (state === 'waived' || state === 'concern') && follows.length === 0,
  )
  if (risks.length === 0) return makeEmptyPart(level2('Accepted risks'), 'No waiver and no concern.')
  return makeTable(
    [
      { label: 'Item', width: '*' },
      { label: 'Accepted as', width: 60 },
      { label: 'Why, by whom, with what consequence', width: 210 },
    ],
    risks.map(({ item, state, waiver, answer }) => [item.question, formatWord(state), describeRisk(waiver, answer)]),
    level2('Accepted risks'),
  )
}

function describeRisk(waiver: ItemState['waiver'], answer: ItemState['answer']): string {
  if (waiver === null) {
    return answer === null ? 'computed; nobody answered' : `${answer.reason} ${answer.answeredByName}.`.trim()
  }
  return [
    waiver.reason,
    ...(waiver.consequence === undefined || waiver.consequence === '' ? [] : [`Consequence: ${waiver.consequence}`]),
    ...(waiver.quantityLimit == null ? [] : [`At most ${waiver.quantityLimit} parts.`]),
    ...(waiver.validUntil == null ? [] : [`Until ${waiver.validUntil}.`]),
    ...(waiver.customerConsent === undefined || waiver.customerConsent === ''
      ? []
      : [`Customer’s consent: ${waiver.customerConsent}`]),
    `Approved by ${waiver.decidedByName ?? 'nobody'}.`,
  ].join(' ')
}

function makeOpenActions({ snapshot, release }: PackageContent): Content {
  const pending = snapshot.actions.filter(isPending)
  if (pending.length === 0) return makeEmptyPart(level2('Open actions'), 'None.')
  return makeTable(
    [
      { label: 'No.', width: 20, isNumeric: true },
      { label: 'What is to be done', width: '*' },
      { label: 'Owner', width: 100 },
      { label: 'Due', width: 110 },
    ],
    pending.map((action) => [
      String(action.number),
      action.text,
      action.ownerName,
      `${describeDue(action)}${isOverdue(action, release.at.slice(0, 10)) ? ' (overdue)' : ''}`,
    ]),
    level2('Open actions'),
  )
}
