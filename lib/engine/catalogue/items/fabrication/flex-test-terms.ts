import { type Bend, callByName } from '../../../design'
import type { MissingInput, Outcome } from '../../../results'
import { type BendUnderCheck, checkDynamicBends } from '../../checks'
import { decide, makeDesignLimit, makeNoneAllowed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { isOpen } from '../../given'

/** Flexural endurance is run at no more than this; faster flexing may warm the part. Source flexuralEndurance. */
const FASTEST_IN_TEST_METHOD_PER_MINUTE = 10

export const flexTestTerms = defineItem({
  id: 'flex-test-terms',
  section: 'fabrication',
  severity: 'major',
  question: 'Does each bend that flexes in service state the terms of its flex test?',
  titles: { meets: 'The terms of flex tests are stated', fails: 'A flex test is gentler than its bend' },
  appliesTo: { needs: ['dynamic-bends'], says: 'designs with a dynamic bend' },
  limits: [],
  sourceKeys: ['flexUses', 'flexuralEndurance'],
  restsOn: [
    'bends.*.flexTest',
    'bends.*.use',
    'bends.*.requiredCycles',
    'bends.*.insideRadiusMm',
    'bends.*.radiusToleranceMm',
  ],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'bends[].flexTest.mandrelDiameterMm', worse: 'larger' }],
  check: (context) => checkDynamicBends(context, checkTerms),
})

function checkTerms({ bend, index, place }: BendUnderCheck): Outcome[] {
  const missing = listMissing(bend, index)
  const terms =
    missing.length > 0
      ? notComputedFrom(missing, [place])
      : decide({
          value: 0,
          limit: makeNoneAllowed('unstatedFlexTestTermsCount', 'flexUses'),
          places: [place],
          what: `terms of the flex test of ${callByName('bend', bend.name)} that are not stated`,
          equation: 'cycles, rate, travel, points of application and mandrel, as typed',
          cautions: listCautions(bend),
          isTyped: true,
        })
  return [terms, ...checkMandrel(bend, place)]
}

function listMissing({ name, requiredCycles, flexTest }: Bend, index: number): MissingInput[] {
  const missing: MissingInput[] = []
  const need = (isThere: boolean, path: readonly string[], label: string) => {
    if (!isThere) missing.push({ path: ['bends', index, ...path], label: `${label} of ${callByName('bend', name)}` })
  }
  need(requiredCycles !== null, ['requiredCycles'], 'required cycles')
  need(flexTest.cyclesPerMinute !== null, ['flexTest', 'cyclesPerMinute'], 'rate of the flex test')
  need(flexTest.travelMm !== null, ['flexTest', 'travelMm'], 'travel in the flex test')
  need(flexTest.mandrelDiameterMm !== null, ['flexTest', 'mandrelDiameterMm'], 'mandrel of the flex test')
  need(!isOpen(flexTest.pointsOfApplication), ['flexTest', 'pointsOfApplication'], 'points of application')
  return missing
}

/** A mandrel that is wider than the bend strains the copper less than service does. */
function checkMandrel(bend: Bend, place: BendUnderCheck['place']): Outcome[] {
  const { mandrelDiameterMm } = bend.flexTest
  if (mandrelDiameterMm === null) return []
  return [
    decide({
      value: mandrelDiameterMm / 2,
      limit: makeDesignLimit({
        key: 'mandrelRadiusMm',
        value: bend.insideRadiusMm + bend.radiusToleranceMm,
        unit: 'mm',
        sense: 'at-most',
        sourceKey: 'exactArithmetic',
        name: `largest inside radius of ${callByName('bend', bend.name)}`,
      }),
      places: [place],
      what: `radius of the mandrel for ${callByName('bend', bend.name)}`,
      equation: 'mandrel diameter / 2',
      sourceKey: 'flexUses',
    }),
  ]
}

function listCautions({ flexTest }: Bend): string[] {
  const { cyclesPerMinute } = flexTest
  return cyclesPerMinute !== null && cyclesPerMinute > FASTEST_IN_TEST_METHOD_PER_MINUTE
    ? [
        `${cyclesPerMinute} cycles a minute are more than the ${FASTEST_IN_TEST_METHOD_PER_MINUTE} of IPC-TM-650 2.4.3: fast flexing may warm the part.`,
      ]
    : []
}
