import { placeOf } from '../../checks'
import { decide, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { computeStepConcentration, filletRadiusOfTaperMm } from '../../step-concentration'

export const widthStep = defineItem({
  id: 'width-step',
  section: 'geometry',
  severity: 'minor',
  question: 'Do conductors change width gradually?',
  titles: { meets: 'Conductors change width gradually', fails: 'A conductor changes width abruptly' },
  appliesTo: { needs: ['width-steps'], says: 'conductors that change width' },
  limits: ['stepConcentrationRatio'],
  sourceKeys: ['filletConcentration', 'commonPractice'],
  restsOn: ['artwork', 'plan', 'features.widthSteps', 'features.none', 'construction.zones.*.kind'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [
    { path: 'features.widthSteps[].wideMm', worse: 'larger' },
    { path: 'features.widthSteps[].taperLengthMm', worse: 'smaller' },
  ],
  check: (context) => {
    const limit = context.getLimit('stepConcentrationRatio')
    return context.design.features.widthSteps.map((step, index) => {
      const { wideMm, narrowMm, taperLengthMm } = step
      if (wideMm === null || narrowMm === null || taperLengthMm === null) {
        const path = (field: string) => ['features', 'widthSteps', index, field]
        const missing = [
          ...(wideMm === null ? [{ path: path('wideMm'), label: `wide side of ${step.name}` }] : []),
          ...(narrowMm === null ? [{ path: path('narrowMm'), label: `narrow side of ${step.name}` }] : []),
          ...(taperLengthMm === null
            ? [{ path: path('taperLengthMm'), label: `length of the change at ${step.name}` }]
            : []),
        ]
        return notComputedFrom(missing, [placeOf('width-step', step)])
      }
      const radiusMm = filletRadiusOfTaperMm((wideMm - narrowMm) / 2, taperLengthMm)
      const { ratio, isOutOfRange } = computeStepConcentration(wideMm, narrowMm, radiusMm)
      return decide({
        value: ratio,
        limit,
        places: [placeOf('width-step', step)],
        what: `stress concentration at ${step.name}`,
        equation: 'Kt = C1 + C2 s + C3 s^2 + C4 s^3, s = 2t/H',
        isTyped: true,
        sourceKey: 'filletConcentration',
        cautions: isOutOfRange
          ? [
              'The fillet lies outside the range of the handbook fit; the factor is that of the nearest fillet inside it.',
            ]
          : [],
      })
    })
  },
})
