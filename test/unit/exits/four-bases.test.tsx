import { describe, expect, test } from 'vitest'
import { SigningSummaryView } from '@/app/_components/review/signing-summary'
import { countVerdicts, VerdictCounts } from '@/app/_components/review/verdict-counts'
import { formatReport } from '@/lib/cli/evaluation-report'
import { BASIS_WORDS, type Evaluation, ITEM_BASES, type ItemBasis } from '@/lib/engine'
import type { PackageContent } from '@/lib/package'
import { makeDataFiles } from '@/lib/package/data-files'
import { makeChecklist, makeChecklistAnnex } from '@/lib/package/report/checklist'
import { makeSummary } from '@/lib/package/report/opening'
import { buildSignedContent, listItemStates, makeReviewItem, summarizeSigning } from '@/lib/review'
import { renderScreen } from '@/test/factories/render-screen'
import { makeEvaluation, makeResult, makeSnapshot } from '../review/snapshot-factory'

/*
 * A calculation, a number that somebody typed, what somebody saw and what somebody thinks are four things: each exit says which, and counts
 * them apart.
 */

/** As many items of each basis: no two counts are alike. */
const COUNTS: Readonly<Record<ItemBasis, number>> = { computed: 2, typed: 3, stated: 4, judgment: 5 }
const SHA256 = 'b'.repeat(64)

const entries = ITEM_BASES.flatMap((basis) =>
  Array.from({ length: COUNTS[basis] }, (_, at) => ({ basis, id: `${basis}-${'abcde'[at]}` })),
)
const items = entries.map(({ id }) =>
  makeReviewItem({
    id,
    section: 'geometry',
    question: `Does ${id} hold?`,
    severity: 'major',
    decidedWhen: 'early',
    answeredBy: ['member', 'lead'],
  }),
)
const byPerson = (basis: ItemBasis) => basis === 'stated' || basis === 'judgment'
const results: Evaluation = makeEvaluation(
  entries.map(({ id, basis }) => ({ ...makeResult(id, byPerson(basis) ? 'needs-judgment' : 'meets'), basis })),
)
const base = makeSnapshot()
const snapshot = makeSnapshot({
  items,
  artwork: [],
  evaluation: base.evaluation === null ? null : { ...base.evaluation, results },
  answers: entries
    .filter(({ basis }) => byPerson(basis))
    .map(({ id, basis }) => ({
      itemId: id,
      state: 'meets' as const,
      reason: 'Looked at.',
      answeredBy: 'member',
      answeredByName: 'Mara Tolland',
      answeredAt: '2027-03-01T10:00:00.000Z',
      evidence: [],
      ...(basis === 'stated'
        ? { lookedAt: { sheet: 'Sheet 2', layer: 'L2', sha256: SHA256, fileName: 'inspection.txt' } }
        : {}),
    })),
})
const content = {
  snapshot,
  edition: { kind: 'team' },
  flexTests: [],
  release: { at: '2027-03-05T09:00:00.000Z', byName: 'Ines Calder', terms: { isConditional: false }, replaces: null },
  artwork: [],
  signedContent: null,
  signedParts: [],
  minutes: null,
} as unknown as PackageContent

describe('the four bases', () => {
  test('of the state of an item: what is met, by what', () => {
    const met = listItemStates(snapshot).filter(({ state }) => state === 'meets')
    const counts = Object.fromEntries(
      ITEM_BASES.map((basis) => [basis, met.filter((each) => each.basis === basis).length]),
    )
    expect(counts).toEqual(COUNTS)
  })

  test('in the headline of a revision', () => {
    const html = renderScreen(
      <VerdictCounts
        counts={countVerdicts(listItemStates(snapshot).flatMap(({ result }) => (result === null ? [] : [{ result }])))}
      />,
    ).replaceAll(/<[^>]*>/g, ' ')
    for (const basis of ITEM_BASES) {
      const verdict = byPerson(basis) ? 'need judgment' : 'meet'
      expect(html.replaceAll(/\s+/g, ' ')).toContain(`${BASIS_WORDS[basis]} : ${COUNTS[basis]} ${verdict}`)
    }
  })

  test('on the page where somebody signs', () => {
    const summary = summarizeSigning(snapshot, null)
    expect(summary.metBy).toEqual(COUNTS)
    const html = renderScreen(<SigningSummaryView summary={summary} projectId="p" revisionId="r" />).replaceAll(
      /<[^>]*>/g,
      '',
    )
    for (const basis of ITEM_BASES) expect(html).toContain(`${COUNTS[basis]} ${BASIS_WORDS[basis]}`)
  })

  test('in what is signed: what an item rests on, and where somebody looked', () => {
    const text = JSON.stringify(buildSignedContent(snapshot))
    expect(text).toContain(SHA256)
    for (const basis of ITEM_BASES) expect(text).toContain(`"${basis}"`)
  })

  test('in the report, in its summary and beside each item', () => {
    const summary = JSON.stringify(makeSummary(content))
    for (const basis of ITEM_BASES) expect(summary).toContain(`${COUNTS[basis]}: ${COUNTS[basis]} met`)
    const checklist = JSON.stringify([makeChecklist(content), makeChecklistAnnex(content)])
    for (const basis of ITEM_BASES) {
      expect(checklist.split(`"${BASIS_WORDS[basis]}"`).length - 1, basis).toBe(COUNTS[basis])
    }
    expect(checklist).toContain('Sheet 2')
  })

  test('in the file of the package', () => {
    const file = makeDataFiles(content).find(({ path }) => path === 'checklist.json')
    const read = JSON.parse(new TextDecoder().decode(file?.bytes)) as {
      items: { id: string; basis: ItemBasis; answer: unknown }[]
    }
    for (const { id, basis } of entries) expect(read.items.find((item) => item.id === id)?.basis, id).toBe(basis)
    expect(JSON.stringify(read)).toContain(SHA256)
  })

  test('by the command line', () => {
    const text = formatReport(snapshot.design, results)
    for (const basis of ITEM_BASES) {
      const verdict = byPerson(basis) ? 'needs judgment' : 'meets'
      expect(text).toMatch(new RegExp(`^ {2}${BASIS_WORDS[basis]} .*\\b${COUNTS[basis]} ${verdict}`, 'm'))
    }
  })
})
