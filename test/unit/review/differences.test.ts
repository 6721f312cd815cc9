import { describe, expect, it } from 'vitest'
import {
  findSigningBlockers,
  listDifferences,
  type RecordedAnswer,
  type ReviewSnapshot,
  type SignOffPolicy,
  USUAL_SIGN_OFF_POLICY,
} from '@/lib/review'
import { makeDesign, makeEvaluation, makeResult, makeSnapshot } from './snapshot-factory'

/** What is held against what is a choice of ours; common practice, no published source. */
const say = (reason: string, itemId = 'packing-notes'): RecordedAnswer => ({
  itemId,
  state: 'meets',
  reason,
  answeredBy: 'member',
  answeredByName: 'Mara Tolland',
  answeredAt: '2027-03-01T10:00:00.000Z',
  evidence: [],
})

const differ = (snapshot: ReviewSnapshot) => listDifferences(snapshot).map(({ fact, said }) => `${fact}: ${said}`)
const under = (differences: SignOffPolicy['differences']) => ({
  signOffPolicy: { version: 1, rules: { ...USUAL_SIGN_OFF_POLICY, differences } },
})

function withPanel(reason: string, count: number): ReviewSnapshot {
  const result = makeResult('parts-per-panel', 'meets')
  const outcomes = result.outcomes.map((outcome) => ({ ...outcome, summary: `0.71 of it. ${count} parts per panel.` }))
  const base = makeSnapshot({ answers: [say(reason)] })
  const evaluation = base.evaluation
  if (evaluation === null) throw new Error('the factory evaluates')
  const items = [...evaluation.results.items, { ...result, outcomes }]
  return { ...base, evaluation: { ...evaluation, results: makeEvaluation(items) } }
}

describe('words against numbers', () => {
  it('says nothing where nothing differs', () => {
    expect(differ(makeSnapshot())).toEqual([])
  })

  it('holds a stated count of parts against the computed one', () => {
    expect(differ(withPanel('36 parts on the production panel of 305 mm × 457 mm.', 36))).toEqual([])
    expect(differ(withPanel('36 parts on the production panel of 305 mm × 457 mm.', 34))).toEqual([
      'Parts per panel: 36 in the answer to "Are packing and handling stated?"',
    ])
    expect(differ(withPanel('1,200 parts per panel', 1200))).toEqual([])
    // A loss in parts is no count, and a panel is not named.
    expect(differ(withPanel('This costs two parts per panel; 40 parts are packed in a tray.', 34))).toEqual([])
  })

  it.each([
    ['a note by its number', 'See note 7 of the drawing.', 'Note of the drawing: note 7'],
    ['a class that the brief does not state', 'Class 3, as agreed.', 'Class: class 3'],
    ['a thickness that no layer has', 'We use 47 µm rolled copper.', 'Thickness of a layer: 47 µm'],
    ['a radius that no bend has', 'The former holds an inside radius of 93 mm.', 'Inside radius of a bend: 93 mm'],
  ])('names %s', (_, text, begins) => {
    const found = differ(makeSnapshot({ answers: [say(text)] }))
    expect(found).toHaveLength(1)
    expect(found[0]).toContain(begins)
  })

  it('holds the last word of a thread and the reason of its closing against them, and nothing said on the way', () => {
    const comment = (text: string) => ({
      id: text,
      authorId: 'lead',
      authorName: 'Imke Dahl',
      companyName: 'Quillmoor Instruments',
      at: '2027-03-01T10:00:00.000Z',
      text,
      editedAt: null,
      attachments: [],
    })
    const thread = (texts: readonly string[], reason: string) => ({
      id: 'thread',
      kind: 'note' as const,
      anchor: { kind: 'revision' as const, id: '', label: 'the revision' },
      openedBy: 'member',
      openedByName: 'Mara Tolland',
      openedAt: '2027-03-01T09:00:00.000Z',
      audienceCompanyId: null,
      openedByCompanyId: 'team',
      openedByCompanyName: 'Quillmoor Instruments',
      title: 'The hinge',
      comments: texts.map(comment),
      state: 'closed' as const,
      closed: { by: 'lead', byName: 'Imke Dahl', at: '2027-03-01T11:00:00.000Z', reason, done: null },
    })
    const said = ['An inside radius of 93 mm would hold longer.', 'We keep what is drawn.']
    expect(differ(makeSnapshot({ threads: [thread(said, 'as drawn')] }))).toEqual([])
    expect(differ(makeSnapshot({ threads: [thread([...said].reverse(), 'as drawn')] }))).toEqual([
      'Inside radius of a bend: 93 mm in the last word in "The hinge"',
    ])
    const [closing] = listDifferences(makeSnapshot({ threads: [thread(said, 'See note 7 of the drawing.')] }))
    expect(closing).toMatchObject({ said: 'note 7 in the closing of "The hinge"', saidById: 'lead' })
  })

  it('lets a text tell of another value beside the one that holds', () => {
    expect(differ(makeSnapshot({ answers: [say('Class 2; class 3 was asked for first.')] }))).toEqual([])
  })

  it('names how the outline is cut, in the sentence that speaks of it', () => {
    const design = makeDesign((draft) => {
      draft.features.outlineCutBy = 'die'
    })
    const told = (text: string) => differ(makeSnapshot({ design, answers: [say(text)] }))
    expect(told('The outline is cut by laser.')).toEqual([
      'How the outline is cut: laser in the answer to "Are packing and handling stated?"',
    ])
    expect(told('The outline is punched.')).toEqual([])
    expect(told('Marked by laser. The outline is shown on the drawing.')).toEqual([])
  })

  it('names a planned day that has not come, and a needed one that is over', () => {
    const design = makeDesign((draft) => {
      Object.assign(draft.brief, {
        manufacturingReviewDate: '2027-03-06',
        layoutFreezeDate: '2027-03-05',
        needDate: '2027-03-04',
      })
    })
    const facts = listDifferences(makeSnapshot({ design, today: '2027-03-05' })).map(({ fact }) => fact)
    expect(facts).toContain('Day of the manufacturing review')
    expect(facts).toContain('Date of need')
    expect(facts).not.toContain('Day of the layout freeze')
  })

  it('blocks the signature until it is let stand, and for good where the policy lets none stay', () => {
    const answers = [say('See note 7 of the drawing.')]
    const codes = (change: Partial<ReviewSnapshot>) =>
      findSigningBlockers(makeSnapshot({ answers, ...change }), 'lead').map(({ code }) => code)
    const [difference] = listDifferences(makeSnapshot({ answers }))
    if (difference === undefined) throw new Error('nothing differs')
    const acknowledgements = [
      {
        ...difference,
        id: 'ack-1',
        reason: 'the printed sheet is issue 3',
        byId: 'quality',
        byName: 'Senna Ruddock',
        at: '2027-03-04T09:00:00.000Z',
      },
    ]
    expect(codes({})).toContain('words-differ')
    expect(codes({ acknowledgements })).not.toContain('words-differ')
    expect(codes({ acknowledgements, ...under('none') })).toContain('words-differ')
    expect(codes(under('listed'))).not.toContain('words-differ')
    // Other words are another difference: what was let stand covers them no longer.
    expect(codes({ acknowledgements, answers: [say('See note 8 of the drawing.')] })).toContain('words-differ')
  })
})
