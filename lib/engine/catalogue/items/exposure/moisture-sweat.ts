import { DESIGN_PLACE } from '../../checks'
import { decide, notApplicable, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { askFor, findUnstated, makeTermOutcome } from '../../terms'

export const moistureSweat = defineItem({
  id: 'moisture-sweat',
  section: 'geometry',
  severity: 'major',
  question: 'What keeps sweat and condensation off contacts and cut edges?',
  titles: { meets: 'Wet edges are sealed', fails: 'Moisture reaches copper' },
  appliesTo: { needs: ['layers'], says: 'parts that get wet' },
  limits: ['wetEdgeCopperMm'],
  sourceKeys: ['commonPractice'],
  restsOn: ['brief.exposure.hasWetEdges', 'brief.exposure.sealedBy', 'features.copperToOutlineMm', 'features.outline'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'lead'],
  onlyWithProfile: true,
  monotone: [{ path: 'features.copperToOutlineMm', worse: 'smaller' }],
  check: (context) => {
    const { exposure } = context.design.brief
    if (exposure.hasWetEdges === null) return askFor(findUnstated(context, 'exposure', ['hasWetEdges']))
    if (!exposure.hasWetEdges) return [notApplicable('no edge gets wet')]
    const { copperToOutlineMm } = context.design.features
    return [
      ...askFor(findUnstated(context, 'exposure', ['sealedBy'])),
      ...(exposure.sealedBy === 'nothing'
        ? [makeTermOutcome('fails', 'Edges get wet, and nothing seals them.', 'commonPractice')]
        : []),
      copperToOutlineMm === null
        ? notComputed(['features', 'copperToOutlineMm'], 'distance of copper from the outline', [DESIGN_PLACE], 'typed')
        : decide({
            value: copperToOutlineMm,
            limit: context.getLimit('wetEdgeCopperMm'),
            places: [DESIGN_PLACE],
            what: 'copper to the outline',
            equation: 'as stated for the whole outline',
            isTyped: true,
          }),
    ]
  },
  judgment: { evidence: 'The seal of contacts and edges as built: section, sample or test in damp heat.' },
})
