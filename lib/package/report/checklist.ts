import type { Content } from 'pdfmake/interfaces'
import {
  BASIS_WORDS,
  citeRecordedSource,
  type DecidedOutcome,
  describeLimitOwner,
  ITEM_SECTION_WORDS,
  ITEM_SECTIONS,
  type Outcome,
  TALLY_WORDS,
  VERDICT_WORDS,
} from '@/lib/engine'
import { fillWhatHelps, readWhatHelps } from '@/lib/engine/catalogue/prose'
import { countOf } from '@/lib/engine/units'
import { describeFollows, type ItemState, listItemStates } from '@/lib/review'
import type { PackageContent } from '../content'
import { level1, makeEmptyPart, makeTable } from './style'
import { listWaiverTerms } from './waiver-terms'
import { asSentence, formatLimit, formatQuantity, formatTime, formatWord } from './words'

/** Numbers that do not simply meet, shown per item; the rest stand in results.json. */
const SHOWN_CONCERNS = 6

/** What a person decided, or has to: everything but rows that the calculation met and nobody looked at. */
export function makeChecklist({ snapshot }: PackageContent): Content[] {
  const { switchedOff } = snapshot.template
  const sections = makeSections(
    listItemStates(snapshot).filter((itemState) => !isCalculatedAlone(itemState)),
    '6  Checklist',
  )
  if (switchedOff.length === 0) return sections
  return [
    ...sections,
    { text: 'Items that are not asked, and why', style: 'subsection' },
    ...switchedOff.map(({ question, reason }): Content => ({ text: `${question} ${reason}`, style: 'small' })),
  ]
}

/** Rows that nobody decided: the calculation says that they are met, or that they do not apply. */
export function makeChecklistAnnex({ snapshot }: PackageContent): Content[] {
  return makeSections(
    listItemStates(snapshot).filter(isCalculatedAlone),
    'Annex A  Calculated or compared, decided by nobody',
  )
}

function isCalculatedAlone({ state, answer, waiver }: ItemState): boolean {
  return (state === 'meets' || state === 'not-applicable') && answer === null && waiver === null
}

function makeSections(itemStates: readonly ItemState[], head: string): Content[] {
  return ITEM_SECTIONS.flatMap((key): Content[] => {
    const title = `${head}: ${ITEM_SECTION_WORDS[key].toLowerCase()}`
    const all = itemStates.filter(({ item }) => item.section === key)
    if (all.length === 0) return []
    const applicable = all.filter(({ state }) => state !== 'not-applicable')
    const rest = all.filter(({ state }) => state === 'not-applicable')
    const table =
      applicable.length === 0
        ? makeEmptyPart(level1(title), 'No item of this section applies.')
        : makeTable(
            [
              { label: 'Item', width: '*' },
              { label: 'Found', width: 54, isNumeric: true },
              { label: 'Limit and who set it', width: 80 },
              { label: 'Margin', width: 50, isNumeric: true },
              { label: 'Calculation, answer', width: 62 },
            ],
            applicable.flatMap(makeRows),
            level1(title),
          )
    const questions = rest.map(({ item, answer }) => {
      const reason = answer?.reason ?? ''
      return reason === '' ? item.question : `${item.question} (${reason})`
    })
    return rest.length === 0
      ? [table]
      : [
          table,
          {
            text: [{ text: 'Not applicable: ', bold: true }, questions.join('  ')],
            style: 'small',
            margin: [0, 2, 0, 4],
          },
        ]
  })
}

const ORDER = { fails: 0, 'thin-margin': 1, meets: 2 } as const

function isDecided(outcome: Outcome): outcome is DecidedOutcome {
  return outcome.kind === 'decided'
}

/** Room left in relation to the limit: of the numbers that meet, the tightest is the one to show. */
function relativeMargin({ margin, limit }: DecidedOutcome): number {
  return limit.value === 0 ? margin : margin / Math.abs(limit.value)
}

function makeRows(itemState: ItemState): Content[][] {
  const { item, result, state, follows } = itemState
  const decided = (result?.outcomes ?? [])
    .filter(isDecided)
    .sort((a, b) => ORDER[a.verdict] - ORDER[b.verdict] || relativeMargin(a) - relativeMargin(b))
  const concerns = decided.filter(({ verdict }) => verdict !== 'meets')
  const shown = concerns.length === 0 ? decided.slice(0, 1) : concerns.slice(0, SHOWN_CONCERNS)
  const [first, ...others] = shown
  const sources = [...new Set(decided.flatMap((outcome) => [outcome.limit.sourceKey, outcome.sourceKey]))]
  const left = decided.length - shown.length
  const leftConcerns = concerns.length > shown.length
  const notes: Content[] = [
    ...(result === null ? [] : [{ text: result.headline, style: 'small' }]),
    ...(follows.length === 0 ? [] : [{ text: `${describeFollows(follows)}.`, style: 'small' }]),
    ...(left > 0
      ? [
          {
            text: `${left} more ${left === 1 ? 'number' : 'numbers'}${leftConcerns ? '' : ', met'}: results.json`,
            style: 'small',
          },
        ]
      : []),
    ...(item.becauseOf ?? []).map((sentence): Content => ({ text: sentence, style: 'small' })),
    ...makeHelpLine(itemState),
    ...makeAnswerLines(itemState),
    ...(sources.length > 0 ? [{ text: `Source: ${sources.map(citeRecordedSource).join('; ')}`, style: 'small' }] : []),
  ]
  const rows: Content[][] = [
    [
      { stack: [{ text: item.question, bold: true }, ...notes] },
      ...makeNumbers(first),
      {
        stack: [
          result === null ? 'no result' : TALLY_WORDS[follows.length > 0 ? 'follows' : result.verdict].word,
          { text: BASIS_WORDS[itemState.basis], style: 'small' },
          { text: formatWord(state), bold: state === 'concern' || state === 'waived' || state === 'open' },
        ],
      },
    ],
  ]
  for (const outcome of others) {
    rows.push([
      { text: outcome.summary, style: 'small', margin: [8, 0, 0, 0] },
      ...makeNumbers(outcome),
      VERDICT_WORDS[outcome.verdict].word,
    ])
  }
  return rows
}

/** Found, limit and margin. Where a thing is simply forbidden, three zeros tell less than one. */
function makeNumbers(outcome: DecidedOutcome | undefined): Content[] {
  if (outcome === undefined) return ['', '', '']
  const { value, limit, margin, decidingEnd } = outcome
  const owner: Content = { text: describeLimitOwner(limit.owner), style: 'small' }
  if (limit.unit === 'count' && limit.value === 0 && limit.sense !== 'at-least') {
    return [value.value === 0 ? 'none found' : formatQuantity(value), { stack: ['must be none', owner] }, '']
  }
  if (decidingEnd !== undefined) {
    const inUnit = (amount: number) => formatQuantity({ value: amount, unit: limit.unit })
    const end: Content = {
      text: `${decidingEnd.end} end: ${inUnit(decidingEnd.value)} against ${inUnit(decidingEnd.limit)}`,
      style: 'small',
    }
    return [{ stack: [formatQuantity(value), end] }, { stack: [formatLimit(limit), owner] }, inUnit(decidingEnd.margin)]
  }
  return [formatQuantity(value), { stack: [formatLimit(limit), owner] }, formatQuantity({ ...value, value: margin })]
}

/** What helps with what is not met; nothing where it is. */
function makeHelpLine({ item, result }: ItemState): Content[] {
  if (result === null || (result.verdict !== 'fails' && result.verdict !== 'thin-margin')) return []
  const texts = fillWhatHelps(readWhatHelps(item.id), result.outcomes)
  return texts.length === 0 ? [] : [{ text: `What helps: ${texts.join(' ')}`, style: 'small' }]
}

function makeAnswerLines({ answer, waiver, state, setAside, decidedBy, follows }: ItemState): Content[] {
  const lines: Content[] = []
  if (answer !== null && answer.state !== 'open') {
    const reason = answer.reason === '' ? '.' : `: ${asSentence(answer.reason)}`
    const files = answer.evidence.map(({ fileName }) => fileName).join(', ')
    const word = decidedBy === 'person' ? '' : ` "${formatWord(answer.state)}"`
    const { lookedAt, carriedFrom } = answer
    const changed = answer.changedInputs?.length ?? 0
    const since = changed === 0 ? '' : `, ${countOf(changed, 'input')} of the item changed since`
    const carried = carriedFrom === undefined ? '' : `, carried over from revision ${carriedFrom}${since}`
    const viewed =
      lookedAt == null
        ? ''
        : ` Looked at: ${lookedAt.sheet}, ${lookedAt.layer}, ${lookedAt.fileName} (SHA-256 ${lookedAt.sha256}).`
    lines.push({
      text: `Answered${word} by ${answer.answeredByName}, ${formatTime(answer.answeredAt)}${carried}${reason}${files === '' ? '' : ` Evidence: ${files}.`}${viewed}`,
      fontSize: 7.5,
    })
  }
  if (state === 'waived' && waiver !== null) {
    const withRoot = follows.length === 0 ? '' : ' with what it follows from'
    lines.push({
      text: [
        `Waived${withRoot}: ${asSentence(waiver.reason)}`,
        ...listWaiverTerms(waiver),
        `Approved by ${waiver.decidedByName ?? ''}.`,
      ].join(' '),
      fontSize: 7.5,
    })
  }
  if (setAside !== '') lines.push({ text: `Set aside: ${setAside}.`, style: 'small' })
  return lines
}
