import type { EvaluationContext } from '../../../context'
import { describeDefaultSpreads, readEnds } from '../../../materials'
import type { MissingInput, Outcome, QuantityRange } from '../../../results'
import { inSentence } from '../../../units'
import { BRIEF_PLACE, placeOf } from '../../checks'
import { cannotTell, computeMargin, decide, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS, TEMPERATURE_INPUTS } from '../../item-inputs'

export const operatingTemperature = defineItem({
  id: 'operating-temperature',
  section: 'materials',
  severity: 'major',
  question:
    'Are all adhesives and films rated for the maximum operating temperature, with the heat of their own conductors?',
  titles: {
    meets: 'Materials bear the operating temperature',
    fails: 'A material is too weak for the operating temperature',
  },
  appliesTo: { needs: ['layers'], says: 'designs with layers' },
  limits: ['temperatureMarginDegC'],
  sourceKeys: ['ipc2221'],
  restsOn: [...SECTION_INPUTS, 'features.conductors', 'brief.solderedAssembly', ...TEMPERATURE_INPUTS],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    { path: 'brief.operatingMaxDegC', worse: 'larger' },
    { path: 'features.conductors[].currentAmp', worse: 'larger' },
  ],
  check: (context) => {
    const { operatingMaxDegC } = context.design.brief
    if (operatingMaxDegC === null) {
      return [notComputed(['brief', 'operatingMaxDegC'], 'highest operating temperature', [BRIEF_PLACE])]
    }
    const limit = context.getLimit('temperatureMarginDegC')
    const outcomes: Outcome[] = []
    const seen = new Set<string>()
    context.design.construction.layers.forEach((layer, index) => {
      if (layer.kind === 'unbonded-gap' || layer.kind === 'conductor' || seen.has(layer.materialId)) return
      seen.add(layer.materialId)
      const material = context.findMaterial(layer.materialId)
      const places = [placeOf('layer', layer)]
      if (material === null || material.maxServiceDegC === null) {
        outcomes.push(
          notComputed(
            ['construction', 'layers', index, 'materialId'],
            `service temperature of ${material?.name ?? layer.materialId}`,
            places,
          ),
        )
        return
      }
      const heating = findHeating(context, layer.id)
      const service = readEnds('maxServiceDegC', material.maxServiceDegC)
      const marginDegC = material.maxServiceDegC.value - operatingMaxDegC - heating.riseDegC
      if (computeMargin(marginDegC, limit) >= 0) {
        if (heating.missing.length > 0) {
          outcomes.push(notComputedFrom(heating.missing, places))
          return
        }
        if (heating.cannotTell !== null) {
          outcomes.push(
            cannotTell(
              `the temperature of ${material.name}`,
              { because: heating.cannotTell, decidedBy: 'measure it, or state a current that can be computed' },
              places,
            ),
          )
          return
        }
      }
      outcomes.push(
        decide({
          value: marginDegC,
          range: {
            low: service.low - operatingMaxDegC - heating.riseRangeDegC.high,
            high: service.high - operatingMaxDegC - heating.riseRangeDegC.low,
          },
          rangeOver: 'both',
          limit,
          places,
          what: `temperature margin of ${material.name}`,
          equation: 'service temperature - highest operating temperature - heating by the conductors beside it',
          cautions: [
            ...(heating.riseDegC > 0 ? heating.cautions : []),
            ...(service.isDefault ? describeDefaultSpreads(new Set([material.name])) : []),
          ],
          remark:
            heating.riseDegC > 0
              ? `${heating.hottest} warms it by ${inSentence(heating.riseDegC, 'degC')}.`
              : undefined,
        }),
      )
    })
    return outcomes
  },
})

interface Heating {
  readonly riseDegC: number
  readonly riseRangeDegC: QuantityRange
  /** Name of the conductor that warms most. */
  readonly hottest: string
  readonly missing: readonly MissingInput[]
  readonly cannotTell: string | null
  readonly cautions: readonly string[]
}

/** How far the listed conductors warm a layer: the greatest rise of those that share a zone with it. */
function findHeating({ design, conductors }: EvaluationContext, layerId: string): Heating {
  const beside = new Set<string>()
  for (const { presence } of design.construction.zones) {
    if (presence.some((each) => each.layerId === layerId)) for (const each of presence) beside.add(each.layerId)
  }
  let riseDegC = 0
  let riseRangeDegC: QuantityRange = { low: 0, high: 0 }
  let hottest = ''
  let reason: string | null = null
  const missing: MissingInput[] = []
  // Copper carries something: with no conductor listed nobody has said how much.
  const hasCopper = design.construction.layers.some(({ id, kind }) => kind === 'conductor' && beside.has(id))
  if (hasCopper && design.features.conductors.length === 0) {
    missing.push({ path: ['features', 'conductors'], label: 'conductors with their currents' })
  }
  const cautions = new Set<string>()
  design.features.conductors.forEach((conductor, index) => {
    const result = conductors[index]
    if (result === undefined || !beside.has(conductor.layerId)) return
    if (conductor.carriesPower === false && conductor.currentAmp === null) return
    if (result.riseDegC === null) {
      if (result.cannotTell !== null) reason = result.cannotTell
      else if (conductor.currentAmp === null) {
        missing.push({ path: ['features', 'conductors', index, 'currentAmp'], label: `current of ${conductor.name}` })
      } else missing.push(...result.missing)
      return
    }
    const { low, high } = result.riseRangeDegC ?? { low: result.riseDegC, high: result.riseDegC }
    riseRangeDegC = { low: Math.max(riseRangeDegC.low, low), high: Math.max(riseRangeDegC.high, high) }
    if (result.riseDegC > riseDegC) {
      riseDegC = result.riseDegC
      hottest = conductor.name
    }
    for (const caution of result.cautions) cautions.add(caution)
  })
  return { riseDegC, riseRangeDegC, hottest, missing, cannotTell: reason, cautions: [...cautions] }
}
