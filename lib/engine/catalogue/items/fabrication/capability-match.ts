import { DESIGN_PLACE } from '../../checks'
import { decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'

export const capabilityMatch = defineItem({
  id: 'capability-match',
  section: 'fabrication',
  severity: 'blocking',
  question: "Does every dimension and material lie within the fabricator's capability matrix?",
  titles: {
    meets: 'Nothing lies outside the capability matrix',
    fails: 'Something lies outside the capability matrix',
  },
  appliesTo: { needs: ['layers'], says: 'designs with layers' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [
    ...SECTION_INPUTS,
    'bends',
    'features',
    'brief.surfaceFinish',
    'brief.performanceClass',
    'brief.circuitType',
    'brief.panelForm',
    'brief.operatingMaxDegC',
    'brief.tolerances',
    'brief.acceptance.bowAndTwistPct',
    'brief.finishTerms',
    'brief.marking',
    'plan.array',
    'plan.outline',
  ],
  decidedWhen: 'fabricator',
  answeredBy: ['fabricator'],
  monotone: [
    { path: 'facts.capability.outside', worse: 'larger' },
    { path: 'facts.capability.stretch', worse: 'larger' },
    { path: 'facts.capability.notStated', worse: 'larger' },
  ],
  check: ({ facts: { capability } }) => {
    if (capability === undefined) {
      return [notComputed(['facts', 'capability'], "comparison with the fabricator's matrix", [DESIGN_PLACE])]
    }
    const { comfortable, stretch, outside, notStated, stretchEntries = [], notStatedEntries = [] } = capability
    // A matrix that was held against nothing says nothing of the design.
    if (comfortable + stretch + outside + notStated === 0) {
      return [
        notComputed(['facts', 'capability'], 'an entry of the matrix that the design can be held against', [
          DESIGN_PLACE,
        ]),
      ]
    }
    const compared = decide({
      value: outside,
      // What the fabricator takes on as a stretch is inside today, and outside on a worse day.
      ...(stretch > 0 ? { range: { low: outside, high: outside + stretch } } : {}),
      limit: makeNoneAllowed('outsideCapabilityCount', 'commonPractice'),
      places: [DESIGN_PLACE],
      what: 'entries outside the matrix',
      equation: "count against the fabricator's matrix",
      summary: `Entries outside the matrix: ${outside}; none allowed. In the stretch range ${stretch}${nameEntries(stretchEntries)}, comfortable ${comfortable}.`,
    })
    if (notStated === 0) return [compared]
    // A matrix that says nothing of an entry has not said yes.
    return [
      compared,
      notComputed(
        ['facts', 'capability', 'notStated'],
        `what the matrix says of ${notStated} ${notStated === 1 ? 'entry' : 'entries'}${nameEntries(notStatedEntries)}`,
        [DESIGN_PLACE],
      ),
    ]
  },
  judgment: { evidence: "The fabricator's own statement on each dimension and material.", replacesMissing: true },
})

/** ` (conductor width, hole to bend)`; empty where nothing names them. */
const nameEntries = (entries: readonly string[]): string => (entries.length === 0 ? '' : ` (${entries.join(', ')})`)
