import type { Content } from 'pdfmake/interfaces'
import type { DecidedOutcome, Outcome } from '@/lib/engine'
import { type ItemSection, type ItemStanding, listStandings } from '@/lib/review'
import type { PackageContent } from '../content'
import { empty, makeTable, section, subsection } from './style'
import { sayLimit, sayQuantity, saySource, sayTime, sayWord, VERDICT_WORDS } from './words'

const SECTIONS: readonly (readonly [ItemSection, string])[] = [
  ['materials', 'Materials'],
  ['geometry', 'Geometry'],
  ['fabrication', 'Fabrication communication'],
]

/** Numbers shown per item; the rest stand in results.json. */
const SHOWN_OUTCOMES = 5

export function makeChecklist({ snapshot }: PackageContent): Content[] {
  const standings = listStandings(snapshot)
  const parts: Content[] = [section('6  Checklist')]
  for (const [key, title] of SECTIONS) {
    const all = standings.filter(({ item }) => item.section === key)
    const applicable = all.filter(({ state }) => state !== 'not-applicable')
    const rest = all.filter(({ state }) => state === 'not-applicable')
    parts.push(subsection(title))
    parts.push(
      applicable.length === 0
        ? empty('No item of this section applies.')
        : makeTable(
            [
              { label: 'Item', width: '*' },
              { label: 'Found', width: 62, isNumeric: true },
              { label: 'Limit and whose', width: 88 },
              { label: 'Margin', width: 54, isNumeric: true },
              { label: 'Calculation', width: 52 },
              { label: 'Answer', width: 48 },
            ],
            applicable.flatMap(makeRows),
          ),
    )
    if (rest.length > 0) {
      parts.push({
        text: [
          { text: 'Not applicable: ', bold: true },
          rest.map(({ item, answer }) => `${item.question} ${sayReason(answer?.reason ?? '')}`.trim()).join('  '),
        ],
        style: 'small',
        margin: [0, 2, 0, 4],
      })
    }
  }
  return parts
}

const sayReason = (reason: string) => (reason === '' ? '' : `(${reason})`)

const ORDER = { fails: 0, 'thin-margin': 1, meets: 2 } as const

function isDecided(outcome: Outcome): outcome is DecidedOutcome {
  return outcome.kind === 'decided'
}

function makeRows(standing: ItemStanding): Content[][] {
  const { item, result, state } = standing
  const decided = (result?.outcomes ?? []).filter(isDecided).sort((a, b) => ORDER[a.verdict] - ORDER[b.verdict])
  const shown = decided.slice(0, SHOWN_OUTCOMES)
  const [first, ...others] = shown
  const sources = [...new Set(decided.flatMap((outcome) => [outcome.limit.sourceKey, outcome.sourceKey]))].map(
    saySource,
  )
  const notes: Content[] = []
  if (result !== null) notes.push({ text: result.headline, style: 'small' })
  notes.push(...makeAnswerLines(standing))
  if (decided.length > shown.length) {
    notes.push({ text: `${decided.length - shown.length} further numbers of this item: results.json`, style: 'small' })
  }
  if (sources.length > 0) notes.push({ text: `Source: ${sources.join('; ')}`, style: 'small' })
  const rows: Content[][] = [
    [
      { stack: [{ text: item.question, bold: true }, ...notes] },
      first === undefined ? '' : sayQuantity(first.value),
      first === undefined ? '' : makeLimit(first),
      first === undefined ? '' : sayQuantity({ value: first.margin, unit: first.limit.unit }),
      result === null ? '–' : VERDICT_WORDS[result.verdict],
      { text: sayWord(state), bold: state === 'concern' || state === 'waived' || state === 'open' },
    ],
  ]
  for (const outcome of others) {
    rows.push([
      { text: outcome.summary, style: 'small', margin: [8, 0, 0, 0] },
      sayQuantity(outcome.value),
      makeLimit(outcome),
      sayQuantity({ value: outcome.margin, unit: outcome.limit.unit }),
      VERDICT_WORDS[outcome.verdict],
      '',
    ])
  }
  return rows
}

function makeLimit({ limit }: DecidedOutcome): Content {
  return { stack: [sayLimit(limit), { text: limit.owner.name, style: 'small' }] }
}

function makeAnswerLines({ answer, waiver, state, setAside, decidedBy }: ItemStanding): Content[] {
  const lines: Content[] = []
  if (answer !== null && answer.state !== 'open') {
    const reason = answer.reason === '' ? '' : `: ${answer.reason}`
    const files = answer.evidence.map(({ fileName }) => fileName).join(', ')
    const word = decidedBy === 'person' ? '' : ` "${sayWord(answer.state)}"`
    lines.push({
      text: `Answered${word} by ${answer.answeredByName}, ${sayTime(answer.answeredAt)}${reason}${files === '' ? '' : ` Evidence: ${files}.`}`,
      fontSize: 7.5,
    })
  }
  if (state === 'waived' && waiver !== null) {
    lines.push({ text: `Waived: ${waiver.reason} Approved by ${waiver.decidedByName ?? ''}.`, fontSize: 7.5 })
  }
  if (setAside !== '') lines.push({ text: `Set aside: ${setAside}.`, style: 'small' })
  return lines
}
