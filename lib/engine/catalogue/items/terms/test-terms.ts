import type { EvaluationContext } from '../../../context'
import type { MissingInput, Outcome } from '../../../results'
import { BRIEF_PLACE, placeOf } from '../../checks'
import { cannotTellFrom, decide, makeDesignLimit, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { readListState } from '../../listed'
import { askFor, findUnstated, listTerms, makeTermOutcome } from '../../terms'

const TERMS = ['testVoltageVolt', 'continuityOhm', 'isolationMegohm'] as const

export const testTerms = defineItem({
  id: 'test-terms',
  section: 'fabrication',
  severity: 'minor',
  question: 'Are voltage, continuity and isolation of the electrical test stated, and can a good part pass?',
  titles: { meets: 'The electrical test has its limits', fails: 'A limit of the electrical test is wrong' },
  appliesTo: { needs: ['conductor-layers', 'electrical-test'], says: 'designs with an electrical test' },
  limits: [],
  sourceKeys: ['ownChoice'],
  restsOn: [
    'brief.acceptance.testVoltageVolt',
    'brief.acceptance.continuityOhm',
    'brief.acceptance.isolationMegohm',
    'brief.electricalTest',
    'brief.operatingMaxDegC',
    'features.conductors',
    'construction.layers',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    { path: 'brief.acceptance.testVoltageVolt', worse: 'smaller' },
    { path: 'brief.acceptance.continuityOhm', worse: 'smaller' },
    { path: 'features.conductors[].voltageVolt', worse: 'larger' },
  ],
  check: (context) => {
    const missing = findUnstated(context, 'acceptance', TERMS)
    const stated =
      missing.length > 0
        ? askFor(missing)
        : [makeTermOutcome('meets', `Electrical test: ${listTerms(context, 'acceptance', TERMS)}.`, 'commonPractice')]
    return [...stated, ...checkConductors(context)]
  },
})

function checkConductors(context: EvaluationContext): Outcome[] {
  const state = readListState('conductors', context)
  if (state === 'none') return []
  if (state !== 'filled') return [notComputedFrom([state.missing], [BRIEF_PLACE])]
  return [...checkVoltage(context), ...checkContinuity(context)]
}

/** A test below the working voltage shows less than service asks for. */
function checkVoltage({ design }: EvaluationContext): Outcome[] {
  const { testVoltageVolt } = design.brief.acceptance
  if (testVoltageVolt === null) return []
  const missing: MissingInput[] = []
  let highest: { readonly name: string; readonly volt: number } | null = null
  design.features.conductors.forEach(({ name, voltageVolt }, index) => {
    if (voltageVolt === null) {
      missing.push({ path: ['features', 'conductors', index, 'voltageVolt'], label: `working voltage of ${name}` })
    } else if (highest === null || voltageVolt > highest.volt) highest = { name, volt: voltageVolt }
  })
  const known = highest as { readonly name: string; readonly volt: number } | null
  const compared =
    known === null
      ? []
      : [
          decide({
            value: testVoltageVolt,
            limit: makeDesignLimit({
              key: 'workingVoltageVolt',
              value: known.volt,
              unit: 'volt',
              sense: 'at-least',
              sourceKey: 'ownChoice',
              name: `working voltage of ${known.name}`,
            }),
            places: [BRIEF_PLACE],
            what: 'test voltage',
            equation: 'test voltage against the highest working voltage',
            isTyped: true,
          }),
        ]
  return missing.length === 0 ? compared : [...compared, notComputedFrom(missing, [BRIEF_PLACE])]
}

/** A limit below what copper of this size has fails every good part. */
function checkContinuity({ design, conductors }: EvaluationContext): Outcome[] {
  const { continuityOhm } = design.brief.acceptance
  if (continuityOhm === null) return []
  return design.features.conductors.map((feature, index): Outcome => {
    const places = [placeOf('conductor', feature)]
    const result = conductors.find(({ conductorId }) => conductorId === feature.id)
    const what = `resistance of ${feature.name}`
    if (result === undefined || result.resistanceOhm === null) {
      if (result !== undefined && result.cannotTell !== null) return cannotTellFrom(result, what, places)
      const missing = result?.missing ?? []
      return missing.length > 0
        ? notComputedFrom(missing, places)
        : notComputed(['features', 'conductors', index, 'lengthMm'], what, places)
    }
    // Its own heat counts in the resistance: without the current the figure is too kind.
    if (feature.currentAmp === null && feature.carriesPower !== false) {
      return notComputed(['features', 'conductors', index, 'currentAmp'], `current of ${feature.name}`, places)
    }
    return decide({
      value: result.resistanceOhm,
      range: result.resistanceRangeOhm ?? undefined,
      rangeOver: 'both',
      limit: makeDesignLimit({
        key: 'continuityOhm',
        value: continuityOhm,
        unit: 'ohm',
        sense: 'at-most',
        sourceKey: 'exactArithmetic',
        name: 'continuity limit of the electrical test',
      }),
      places,
      what,
      equation: 'resistivity x length / section, at the highest operating temperature',
      sourceKey: 'exactArithmetic',
    })
  })
}
