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
  ],
  decidedWhen: 'fabricator',
  answeredBy: ['fabricator'],
  monotone: [{ path: 'facts.capability.outside', worse: 'larger' }],
  check: ({ facts: { capability } }) => [
    capability === undefined
      ? notComputed(['facts', 'capability'], "comparison with the fabricator's matrix", [DESIGN_PLACE])
      : decide({
          value: capability.outside,
          limit: makeNoneAllowed('outsideCapabilityCount', 'commonPractice'),
          places: [DESIGN_PLACE],
          what: 'entries outside the matrix',
          equation: "count against the fabricator's matrix",
          remark: `Comfortable ${capability.comfortable}, stretch ${capability.stretch}, not stated ${capability.notStated}.`,
          cautions:
            capability.notStated > 0 ? [`The matrix says nothing about ${capability.notStated} entries: ask.`] : [],
        }),
  ],
  judgment: { evidence: "The fabricator's own statement on each dimension and material.", replacesMissing: true },
})
