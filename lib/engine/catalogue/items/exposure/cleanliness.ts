import type { EvaluationContext } from '../../../context'
import { listOrganicMaterials } from '../../../design'
import { readEnds } from '../../../materials'
import type { Outcome } from '../../../results'
import { DESIGN_PLACE, placeOf } from '../../checks'
import { decide, makeDesignLimit, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { askFor, findUnstated, listTerms, makeTermOutcome } from '../../terms'

export const cleanliness = defineItem({
  id: 'cleanliness',
  section: 'fabrication',
  severity: 'minor',
  question: 'Are the limit of ionic residue, the cleaning and the drying agreed?',
  titles: { meets: 'Cleanliness is agreed', fails: 'A material does not bear the drying' },
  appliesTo: { needs: ['soldering'], says: 'designs that are soldered' },
  limits: [],
  sourceKeys: ['solderedCleanliness', 'ownChoice'],
  restsOn: [
    'brief.exposure.ionicLimitUgPerCm2',
    'brief.exposure.cleaning',
    'brief.exposure.dryingDegC',
    'brief.exposure.dryingHours',
    'brief.solderedAssembly',
    'construction.layers.*.materialId',
    'materials',
  ],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  onlyWithProfile: true,
  monotone: [{ path: 'brief.exposure.dryingDegC', worse: 'larger' }],
  check: (context) => {
    const { exposure, solderedAssembly } = context.design.brief
    const { cleaning } = exposure
    if (solderedAssembly === null) return askFor([{ path: ['brief', 'solderedAssembly'], label: 'soldered assembly' }])
    const isWashed = cleaning !== null && cleaning !== 'none'
    const fields = ['ionicLimitUgPerCm2', 'cleaning'] as const
    const missing = [
      ...findUnstated(context, 'exposure', fields),
      ...(isWashed ? findUnstated(context, 'exposure', ['dryingDegC', 'dryingHours']) : []),
    ]
    if (missing.length > 0) return askFor(missing)
    const stated = isWashed ? ([...fields, 'dryingDegC', 'dryingHours'] as const) : fields
    return [
      makeTermOutcome('meets', `Agreed: ${listTerms(context, 'exposure', stated)}.`, 'solderedCleanliness'),
      ...(isWashed ? checkDrying(context) : []),
    ]
  },
})

/** Hours at a temperature are held against what each material bears in service: our choice, no published source. */
function checkDrying({ design }: EvaluationContext): Outcome[] {
  const { dryingDegC } = design.brief.exposure
  if (dryingDegC === null) return []
  return listOrganicMaterials(design).map(({ id, name, maxServiceDegC }): Outcome => {
    const layer = design.construction.layers.find((each) => each.kind !== 'unbonded-gap' && each.materialId === id)
    const places = layer === undefined ? [DESIGN_PLACE] : [placeOf('layer', layer)]
    if (maxServiceDegC === null) {
      return notComputed(['construction', 'layers'], `service temperature of ${name}`, places)
    }
    return decide({
      value: dryingDegC,
      limit: makeDesignLimit({
        key: 'serviceDegC',
        value: maxServiceDegC.value,
        unit: 'degC',
        sense: 'at-most',
        sourceKey: 'ownChoice',
        name: `service temperature of ${name}`,
      }),
      limitRange: readEnds('maxServiceDegC', maxServiceDegC),
      limitRangeOver: 'constants',
      places,
      what: `drying of ${name}`,
      equation: 'drying temperature against service temperature',
      isTyped: true,
    })
  })
}
