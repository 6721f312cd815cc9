import type { Outcome } from '../../../results'
import { listWrittenTwice, type WrittenTwice } from '../../../statements'
import { DESIGN_PLACE } from '../../checks'
import { cannotTell, decide, makeNoneAllowed } from '../../decide'
import { defineItem } from '../../define-item'

export const statementsAgree = defineItem({
  id: 'statements-agree',
  section: 'fabrication',
  severity: 'blocking',
  question: 'Does every fact that is written twice say the same in both places?',
  titles: { meets: 'What is written twice agrees', fails: 'Two places say different things' },
  appliesTo: { needs: ['layers'], says: 'designs with layers' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'brief.partNumber',
    'brief.purpose',
    'brief.performanceClass',
    'brief.circuitType',
    'brief.operatingMaxDegC',
    'brief.surfaceFinish',
    'brief.solderedAssembly',
    'brief.acceptance.hasSurfaceMountParts',
    'brief.agreements.prototypeTool',
    'brief.agreements.seriesTool',
    'brief.panelForm',
    'brief.array.partCount',
    'brief.marking.letterHeightMm',
    'brief.marking.lineWidthMm',
    'brief.marking.toPadMm',
    'brief.layoutFreezeDate',
    'brief.needDate',
    'bends',
    'bends.*.note',
    'bends.*.name',
    'construction.layers',
    'construction.layers.*.name',
    'construction.zones',
    'features',
    'artwork',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: ({ drawing, facts }) => {
    // What was stated against what was stated; against the plan it is held by `plan-agreement`.
    const pairs = listWrittenTwice(drawing.stated, facts)
    const clear = pairs.filter(({ agrees, readFrom }) => !agrees && readFrom === 'fields')
    const inDoubt = pairs.filter(({ agrees, readFrom }) => !agrees && readFrom !== 'fields')
    return [...clear.map(contradict), ...inDoubt.map(doubt), ...(clear.length === 0 ? count(pairs) : [])]
  },
})

const quote = ({ one, other }: WrittenTwice): string => `${one.says} in ${one.where}, ${other.says} in ${other.where}`

function contradict(pair: WrittenTwice): Outcome {
  return decide({
    value: 1,
    limit: makeNoneAllowed('contradictionsCount', 'commonPractice'),
    places: pair.places,
    what: pair.fact,
    equation: 'both places compared',
    isTyped: true,
    summary: `${pair.fact}: ${quote(pair)}.`,
  })
}

/** A name or a note may speak of something else, and a part may be of a form that makes both figures hold: who wrote them knows. */
function doubt(pair: WrittenTwice): Outcome {
  return cannotTell(
    pair.fact.charAt(0).toLowerCase() + pair.fact.slice(1),
    {
      because: quote(pair),
      decidedBy:
        pair.readFrom === 'words'
          ? 'correct one of them, or word the text so that it cannot be misread'
          : 'correct one of them, or draw the part',
    },
    pair.places,
  )
}

function count(pairs: readonly WrittenTwice[]): Outcome[] {
  const agreeing = pairs.filter(({ agrees }) => agrees)
  if (agreeing.length === 0) return []
  return [
    decide({
      value: 0,
      limit: makeNoneAllowed('contradictionsCount', 'commonPractice'),
      places: [DESIGN_PLACE],
      what: 'contradictions between fields',
      equation: 'both places compared',
      isTyped: true,
      remark: `${agreeing.length === 1 ? 'One fact is' : `${agreeing.length} facts are`} written twice and agree; what drawings and artwork say inside is for people to compare.`,
    }),
  ]
}
