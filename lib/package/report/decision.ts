import type { Content, ContentTable } from 'pdfmake/interfaces'
import type { DecidedOutcome, Outcome } from '@/lib/engine'
import { asComputed, countOf } from '@/lib/engine/units'
import {
  DECLARATION_WORDS,
  describeChange,
  describeCondition,
  describeDecision,
  describeDue,
  describeTerms,
  hashDeclaredContent,
  type ItemState,
  isOverdue,
  isPending,
  listItemStates,
  listReviews,
} from '@/lib/review'
import type { PackageContent } from '../content'
import { listLoosenedFacts } from './sign-off'
import { CLOSE_RULED, level1, level2, makeEmptyTable, makeFacts, makeTable } from './style'
import { estimateTablesHeight } from './table-height'
import { listWaiverTerms } from './waiver-terms'
import { asSentence, formatLimit, formatQuantity, formatTime, formatWord } from './words'

/**
 * The decision stands on the first page, whatever a review holds: so many entries of each kind are named there, and so much of a text; the rest is in
 * the part that is named. Who decided, until when and for how many parts is never cut.
 */
const SMALLEST = 5
const MOST_RISKS = 3
const MOST_ACTIONS = 3
const MOST_CHANGES = 3
const MOST_NAMES = 3
const FONT_SIZE_PT = 7.5

/** Characters of a text, of conditions and reason, and of a question, and how many fabricators are named: the first that fits the page is taken. */
interface Room {
  readonly text: number
  readonly terms: number
  readonly question: number
  readonly fabricators: number
}
const TIGHTEST: Room = { text: 44, terms: 80, question: 55, fabricators: 1 }
const ROOMS: readonly Room[] = [
  { text: 220, terms: 400, question: 120, fabricators: 3 },
  { text: 150, terms: 400, question: 110, fabricators: 3 },
  { text: 110, terms: 400, question: 55, fabricators: 2 },
  { text: 72, terms: 400, question: 55, fabricators: 2 },
  { text: 44, terms: 400, question: 55, fabricators: 2 },
  { text: 44, terms: 200, question: 55, fabricators: 1 },
  { text: 44, terms: 130, question: 55, fabricators: 1 },
  TIGHTEST,
]
/** Below title, facts of the revision and cautions, as they usually are. */
const PAGE_ROOM_PT = 540
const LOOSENED_ROW_PT = 32

function cut(text: string, length: number): string {
  if (text.length <= length) return text
  const blank = text.lastIndexOf(' ', length - 2)
  return `${text.slice(0, blank > 0 ? blank : length - 2)} …`
}

/** The first page: what was decided, by whom, on what, and what is left to be done. */
export function makeDecision(content: PackageContent): Content[] {
  const heightPt = PAGE_ROOM_PT - listLoosenedFacts(content).length * LOOSENED_ROW_PT
  const pages = ROOMS.map((room) => makePage(content, room))
  const page = pages.find((tables) => estimateTablesHeight(tables, FONT_SIZE_PT) <= heightPt) ?? pages.at(-1) ?? []
  return [
    { stack: page.map((table) => ({ ...table, layout: CLOSE_RULED })), fontSize: FONT_SIZE_PT, pageBreak: 'after' },
  ]
}

function makePage(content: PackageContent, room: Room): ContentTable[] {
  const { snapshot, release } = content
  const { terms, replaces } = release
  const itemStates = listItemStates(snapshot)
  const isUnlimited = terms.quantityLimit === null && terms.validUntil === null
  const decided = [
    terms.isConditional ? 'Released conditionally' : 'Released',
    describeTerms(terms),
    ...(isUnlimited ? ['without a limit of number or date'] : []),
  ]
  return [
    makeFacts(
      [
        ['Decision', decided.filter((part) => part !== '').join(', ')],
        ['Conditions', cut(listConditions(content), room.terms)],
        ['Replaces', replaces === null ? 'nothing: first issue of this part number' : `revision ${replaces}`],
        ['Change, reason, effectivity', cut(describeChange(terms), room.terms)],
        [
          'Changed since the last issue',
          describeChanges(content.changes.sinceIssue, 'there is none to compare with', 0.4 * room.text),
        ],
        ['Changed since the fabricator looked', describeSinceLooked(content, room)],
        ...listRoles(content, itemStates),
      ],
      level1('Decision'),
    ),
    makeMargins(itemStates, room),
    makeRisks(itemStates, room),
    makeOpenActions(content, room),
  ]
}

/** `Ann, Ben and 3 more` */
function listSome(texts: readonly string[], most: number, separator = ', '): string {
  const left = texts.length - most
  return `${texts.slice(0, most).join(separator)}${left > 0 ? ` and ${left} more` : ''}`
}

/** Those of the release itself, then each that a fabricator's present declaration makes, with what became of it. */
function listConditions({ snapshot, release }: PackageContent): string {
  const declared = hashDeclaredContent(snapshot)
  const made = snapshot.declarations
    .filter(({ contentHash }) => contentHash === declared)
    .flatMap(({ companyName, conditions }) =>
      conditions.map(
        (condition) =>
          `${companyName}: ${asSentence(describeCondition(condition))} ${asSentence(describeDecision(condition) || 'not decided')}`,
      ),
    )
  const all = [...(release.terms.conditions === '' ? [] : [release.terms.conditions]), ...made]
  return all.length === 0 ? 'none' : all.join(' ')
}

function describeChanges(changes: readonly string[] | null, without: string, longestText: number): string {
  if (changes === null) return without
  if (changes.length === 0) return 'nothing'
  return listSome(
    changes.map((change) => cut(change, longestText)),
    MOST_CHANGES,
    '; ',
  )
}

/** Fabricators with the same changes together: `Brackenfold Circuits, Ostrel Flexible: nothing`. */
function describeSinceLooked({ changes: { sinceLooked } }: PackageContent, room: Room): string {
  if (sinceLooked.length === 0) return 'no fabricator has opened it'
  const companies = new Map<string, string[]>()
  for (const { company, changes } of sinceLooked) {
    const what = describeChanges(changes, 'has not opened it', 0.4 * room.text)
    companies.set(what, [...(companies.get(what) ?? []), company])
  }
  const lines = [...companies].map(([what, names]) => `${names.join(', ')}: ${what}`)
  const left = sinceLooked.length - [...companies.values()].slice(0, room.fabricators).flat().length
  return [
    ...lines.slice(0, room.fabricators),
    ...(left === 0 ? [] : [`and changes for ${countOf(left, 'more fabricator')}`]),
  ].join('; ')
}

/** Who in which role, a line for each role. Of waivers those that count. */
function listRoles(
  { snapshot, release }: PackageContent,
  itemStates: readonly ItemState[],
): (readonly [label: string, text: string])[] {
  const signed = snapshot.signatures.filter(({ voided }) => voided === null)
  const waived = itemStates.flatMap(({ state, waiver }) => (state === 'waived' && waiver !== null ? [waiver] : []))
  const approvers = [...new Set(waived.map(({ decidedByName }) => decidedByName ?? ''))]
  const declared = hashDeclaredContent(snapshot)
  const words = snapshot.sharedWith.map(({ companyId, companyName }) => {
    const last = snapshot.declarations.filter((declaration) => declaration.companyId === companyId).at(-1)
    if (last === undefined) return `${companyName}: was asked and has not declared`
    const on = last.contentHash === declared ? '' : ', on earlier content'
    return `${companyName}: ${DECLARATION_WORDS[last.verdict]}${on}, ${last.madeByName}, ${formatTime(last.madeAt)}`
  })
  return [
    ['Released by', `${release.byName}, ${formatTime(release.at)}`],
    [
      'Signed by',
      listSome(
        signed.map(({ name, capacity, signedAt }) => `${name} as ${capacity}, ${formatTime(signedAt)}`),
        MOST_NAMES,
        '; ',
      ) || 'nobody',
    ],
    [
      'Made by; reviewed by',
      [
        listSome(
          snapshot.authors.map(({ name }) => name),
          MOST_NAMES,
        ) || 'nobody on record',
        listSome(
          listReviews(snapshot).map(({ name, role }) => `${name} (${role})`),
          MOST_NAMES,
        ) || 'nobody',
      ].join('; '),
    ],
    ...(approvers.length === 0 ? [] : [['Waivers approved by', listSome(approvers, MOST_NAMES)] as const]),
    ['Fabricators', words.length === 0 ? 'none was asked' : listSome(words, 3, '; ')],
  ]
}

const isDecided = (outcome: Outcome): outcome is DecidedOutcome => outcome.kind === 'decided'

/** Room left in relation to the limit. A limit of zero has no such relation and is left out. */
function makeMargins(itemStates: readonly ItemState[], room: Room): ContentTable {
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
    return makeEmptyTable(level2('Smallest computed margins'), 'Nothing was computed against a limit.')
  return makeTable(
    [
      { label: 'Item', width: '*' },
      { label: 'Found', width: 70, isNumeric: true },
      { label: 'Limit', width: 90 },
      { label: 'Margin of the limit', width: 80, isNumeric: true },
    ],
    smallest.map(({ item, outcome, share }) => [
      cut(item.question, room.question),
      formatQuantity(outcome.value),
      formatLimit(outcome.limit),
      asComputed(share * 100, 'sharePct'),
    ]),
    level2('Smallest computed margins'),
  )
}

function makeRisks(itemStates: readonly ItemState[], room: Room): ContentTable {
  const risks = itemStates.filter(
    ({ state, follows }) => (state === 'waived' || state === 'concern') && follows.length === 0,
  )
  if (risks.length === 0) return makeEmptyTable(level2('Accepted risks'), 'No waiver and no concern.')
  return makeTable(
    [
      { label: 'Item', width: 190 },
      { label: 'Accepted as', width: 56 },
      { label: 'Why, by whom, with what consequence', width: '*' },
    ],
    risks
      .slice(0, MOST_RISKS)
      .map(({ item, state, waiver, answer }) => [
        cut(item.question, room.question),
        formatWord(state),
        describeRisk({ waiver, answer }, room),
      ]),
    level2(nameRest('Accepted risks', risks.length, MOST_RISKS, '6 and 7')),
  )
}

function describeRisk({ waiver, answer }: Pick<ItemState, 'waiver' | 'answer'>, room: Room): string {
  if (waiver === null) {
    if (answer === null) return 'Computed; nobody answered.'
    return `${asSentence(cut(answer.reason, room.text))} ${asSentence(answer.answeredByName)}`.trim()
  }
  return [
    asSentence(cut(waiver.reason, room.text)),
    ...listWaiverTerms(waiver, (text) => cut(text, 0.6 * room.text)),
    `Approved by ${waiver.decidedByName ?? 'nobody'}.`,
  ].join(' ')
}

function makeOpenActions({ snapshot, release }: PackageContent, room: Room): ContentTable {
  const pending = snapshot.actions.filter(isPending)
  if (pending.length === 0) return makeEmptyTable(level2('Open actions'), 'None.')
  return makeTable(
    [
      { label: 'No.', width: 20, isNumeric: true },
      { label: 'What is to be done', width: '*' },
      { label: 'Owner', width: 76 },
      { label: 'Due', width: 168 },
    ],
    pending
      .slice(0, MOST_ACTIONS)
      .map((action) => [
        String(action.number),
        cut(action.text, room.text),
        action.ownerName,
        `${describeDue(action)}${isOverdue(action, release.at.slice(0, 10)) ? ' (overdue)' : ''}`,
      ]),
    level2(nameRest('Open actions', pending.length, MOST_ACTIONS, '9')),
  )
}

/** `Open actions, the first 4 of 9; all in part 9` */
function nameRest(title: string, count: number, most: number, part: string): string {
  return count <= most ? title : `${title}, the first ${most} of ${count}; all in part ${part}`
}
