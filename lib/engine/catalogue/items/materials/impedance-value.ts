import { LINE_CAUTION } from '../../../cautions'
import type { EvaluationContext } from '../../../context'
import type { ConductorFeature } from '../../../design'
import {
  describeZoneLine,
  ETCHED_WIDTH_CAUTION,
  findDistanceUm,
  findFieldAcrossUm,
  findWidthMm,
  solveRange,
  solveRoughly,
  type ZoneLine,
} from '../../../lines'
import { roundToDigits } from '../../../numerics'
import type { Limit, Outcome, Place, ZoneResult } from '../../../results'
import { isQuasiStatic } from '../../../signals'
import { inSentence } from '../../../units'
import { placeOf } from '../../checks'
import { cannotTell, computeMargin, decide, makeDesignLimit, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { IMPEDANCE_INPUTS, SECTION_INPUTS } from '../../item-inputs'
import { listLineZones } from '../../line-zones'
import { WIDER_TOLERANCES } from '../../monotone'

export const impedanceValue = defineItem({
  id: 'impedance-value',
  section: 'materials',
  severity: 'major',
  question: 'Does the stated build give each impedance, cover and hatch included?',
  titles: {
    meets: 'The build gives each impedance',
    fails: 'The build misses an impedance',
    'thin-margin': 'Impedances are in their bands at nominal, not over the whole range',
  },
  appliesTo: { needs: ['controlled-impedance'], says: 'designs with a conductor whose impedance is stated' },
  limits: [],
  sourceKeys: ['lineFields', 'commonPractice'],
  restsOn: [
    'artwork',
    'plan',
    ...SECTION_INPUTS,
    'features.conductors.*.layerId',
    'features.conductors.*.widthMm',
    'features.conductors.*.spaceMm',
    'features.conductors.*.frequencyMhz',
    ...IMPEDANCE_INPUTS,
    'features.conductors.*.crossings',
    'bends.*.zoneId',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'lead'],
  monotone: [{ path: 'features.conductors[].impedance.tolerancePct', worse: 'smaller' }, ...WIDER_TOLERANCES],
  check: (context) =>
    context.design.features.conductors.flatMap((conductor, index) =>
      conductor.impedanceOhm === null ? [] : checkConductor(context, conductor, index, conductor.impedanceOhm),
    ),
})

function checkConductor(
  context: EvaluationContext,
  conductor: ConductorFeature,
  index: number,
  targetOhm: number,
): readonly Outcome[] {
  const { name, widthMm, impedance } = conductor
  const places = [placeOf('conductor', conductor)]
  const at = (...keys: string[]) => ['features', 'conductors', index, ...keys]
  if (widthMm === null) return [notComputed(at('widthMm'), `width of ${name}`, places)]
  if (impedance.tolerancePct === null) {
    return [notComputed(at('impedance', 'tolerancePct'), `tolerance of the impedance of ${name}`, places)]
  }
  if (impedance.referenceLayerId === null) {
    return [notComputed(at('impedance', 'referenceLayerId'), `reference layer of ${name}`, places)]
  }
  const zones = listLineZones(context, conductor)
  if (zones.length === 0) {
    return [
      cannotTell(
        `the impedance of ${name}`,
        { because: 'no zone has its layer and its reference', decidedBy: 'name a reference that lies beside it' },
        places,
      ),
    ]
  }
  const band = makeDesignLimit({
    key: 'statedImpedanceOhm',
    value: targetOhm * (1 - impedance.tolerancePct / 100),
    upperValue: targetOhm * (1 + impedance.tolerancePct / 100),
    unit: 'ohm',
    sense: 'within',
    sourceKey: 'exactArithmetic',
    name: 'stated impedance',
  })
  return zones.map(({ zone, runsThere }) => {
    const zonePlaces = [...places, placeOf('zone', { id: zone.zoneId, name: zone.name })]
    const line = describeZoneLine({ ...conductor, widthMm }, index, zone, context)
    const outcome = judge({ line, conductor: { ...conductor, widthMm }, zone, targetOhm, band, places: zonePlaces })
    if (runsThere || outcome.kind !== 'decided' || outcome.verdict === 'meets') return outcome
    return cannotTell(
      `the impedance of ${name} in ${zone.name}`,
      {
        because: `whether it runs through ${zone.name} is not stated, and there it would have ${inSentence(outcome.value.value, 'ohm')}`,
        decidedBy: 'state the bends that it crosses, or change its width there',
      },
      zonePlaces,
      { value: outcome.value, limit: band },
    )
  })
}

interface Question {
  readonly line: ZoneLine
  readonly conductor: ConductorFeature & { readonly widthMm: number }
  readonly zone: ZoneResult
  readonly targetOhm: number
  readonly band: Limit
  readonly places: readonly Place[]
}

function judge({ line, conductor, zone, targetOhm, band, places }: Question): Outcome {
  const what = `impedance of ${conductor.name} in ${zone.name}`
  if (line.kind === 'missing') return notComputedFrom(line.missing, places)
  if (line.kind === 'unclear') return cannotTell(`the ${what}`, line, places)
  const solved = solveRange(line, conductor.widthMm)
  if ('faults' in solved) {
    return cannotTell(
      `the ${what}`,
      { because: endless(solved.faults.join(' ')), decidedBy: 'correct the construction or the conductor' },
      places,
    )
  }
  const { nominal, rangeOhm } = solved
  const value = { value: nominal.impedanceOhm, unit: 'ohm' } as const
  if (line.open !== null && nominal.impedanceOhm <= (band.upperValue ?? band.value)) {
    const open = solveRoughly(line.open.makeSection(conductor.widthMm))
    const upTo = 'faults' in open ? '' : ` to ${inSentence(open.impedanceOhm, 'ohm')} with ${line.open.says}`
    const share = line.open.coverageFraction
    const between =
      'faults' in open || share === null
        ? ''
        : `; by the plane's share of copper about ${inSentence(nominal.impedanceOhm ** share * open.impedanceOhm ** (1 - share), 'ohm')}, our choice and no more than a first guess`
    return cannotTell(
      `the ${what}`,
      {
        because: `${line.open.because}: ${inSentence(nominal.impedanceOhm, 'ohm')} with a whole plane${upTo}${between}`,
        decidedBy: share === null ? 'state it, and qualify by coupon' : 'qualify by coupon',
      },
      places,
      { value, limit: band },
    )
  }
  const { frequencyMhz, widthMm } = conductor
  const acrossUm = findFieldAcrossUm(line, conductor)
  if (frequencyMhz !== null && !isQuasiStatic(acrossUm, nominal.effectivePermittivity, frequencyMhz)) {
    return cannotTell(
      `the ${what}`,
      {
        because: `its field is about ${inSentence(roundToDigits(acrossUm / 1000, 2), 'mm')} across, more than a tenth of a wavelength at ${inSentence(frequencyMhz, 'mhz')}, where a static field no longer stands for it`,
        decidedBy: 'solve it as a wave, or measure a coupon at that frequency',
      },
      places,
      { value, limit: band },
    )
  }
  const isMet = computeMargin(nominal.impedanceOhm, band) >= 0 && rangeHolds(rangeOhm, band)
  const remarks = [...(isMet ? [] : describeWaysOut(line, widthMm, targetOhm)), ...line.remarks]
  return decide({
    value: nominal.impedanceOhm,
    // With openings in the plane, or without the other one, it is higher still.
    ...(line.open === null ? {} : { bound: 'more-than' as const }),
    range: rangeOhm,
    rangeOver: 'both',
    limit: band,
    places,
    what,
    equation: conductor.impedance.kind === 'pair' ? 'field solution, differential' : 'field solution',
    sourceKey: 'lineFields',
    cautions: [LINE_CAUTION, ETCHED_WIDTH_CAUTION],
    ...(remarks.length === 0 ? {} : { remark: remarks.join(' ') }),
  })
}

/** The width, or the distance to the reference, at which the line has its target. */
function describeWaysOut(line: Extract<ZoneLine, { kind: 'solvable' }>, widthMm: number, targetOhm: number): string[] {
  const width = findWidthMm(line, widthMm, targetOhm)
  const distanceUm = findDistanceUm(line, widthMm, targetOhm)
  const target = inSentence(targetOhm, 'ohm')
  const ways = [
    ...(width === null ? [] : [`a width of ${inSentence(roundToDigits(width, 3), 'mm')}`]),
    ...(distanceUm === null
      ? []
      : [
          `dielectrics of ${inSentence(roundToDigits(distanceUm, 3), 'um')} to its reference (now ${inSentence(roundToDigits(line.distanceUm, 3), 'um')})`,
        ]),
  ]
  return ways.length === 0
    ? [`No width or dielectric in reach gives ${target}.`]
    : [`For ${target} at nominal: ${ways.join(', or ')}.`]
}

const rangeHolds = ({ low, high }: { low: number; high: number }, band: Limit) =>
  computeMargin(low, band) >= 0 && computeMargin(high, band) >= 0

/** Without its full stop: it stands within a sentence. */
const endless = (sentence: string) => sentence.replace(/\.$/, '')
