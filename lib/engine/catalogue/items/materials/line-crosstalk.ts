import { LINE_CAUTION } from '../../../cautions'
import type { EvaluationContext } from '../../../context'
import { type ConductorFeature, findNetClass, type NetClass } from '../../../design'
import { type Coupling, describeZoneLine, findLeast, solveCoupling, type ZoneLine } from '../../../lines'
import { roundToDigits } from '../../../numerics'
import type { Limit, Outcome, ZoneResult } from '../../../results'
import { reachedFraction } from '../../../signals'
import { inSentence } from '../../../units'
import { placeOf } from '../../checks'
import {
  cannotTell,
  computeMargin,
  decide,
  makeDesignLimit,
  notApplicable,
  notComputed,
  notComputedFrom,
} from '../../decide'
import { defineItem } from '../../define-item'
import { IMPEDANCE_INPUTS, SECTION_INPUTS } from '../../item-inputs'
import { listLineZones } from '../../line-zones'

/** Spaces and offsets are looked for up to here: beyond it planes have taken the coupling away, or nothing will. */
const MOST_MM = 3

export const lineCrosstalk = defineItem({
  id: 'line-crosstalk',
  section: 'materials',
  severity: 'minor',
  question: 'Is crosstalk to a line on the same layer, and on the layer beside it, small enough?',
  titles: { meets: 'Lines keep clear of crosstalk', fails: 'Crosstalk between lines is too high' },
  appliesTo: { needs: ['controlled-impedance'], says: 'designs with a conductor whose impedance is stated' },
  limits: ['nearEndCrosstalkPct'],
  sourceKeys: ['lineFields', 'commonPractice'],
  restsOn: [
    'artwork',
    'plan',
    ...SECTION_INPUTS,
    'features.conductors.*.layerId',
    'features.conductors.*.widthMm',
    'features.conductors.*.spaceMm',
    'features.conductors.*.lengthMm',
    'features.conductors.*.frequencyMhz',
    ...IMPEDANCE_INPUTS,
    'features.conductors.*.crossings',
    'bends.*.zoneId',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'lead'],
  monotone: [{ path: 'features.conductors[].spaceMm', worse: 'smaller' }],
  check: (context) =>
    context.design.features.conductors.flatMap((conductor, index) =>
      conductor.impedanceOhm === null ? [] : checkConductor(context, conductor, index),
    ),
})

function checkConductor(context: EvaluationContext, conductor: ConductorFeature, index: number): readonly Outcome[] {
  const { name, widthMm, spaceMm, impedance } = conductor
  const places = [placeOf('conductor', conductor)]
  const at = (...keys: string[]) => ['features', 'conductors', index, ...keys]
  if (widthMm === null) return [notComputed(at('widthMm'), `width of ${name}`, places)]
  if (impedance.referenceLayerId === null) {
    return [notComputed(at('impedance', 'referenceLayerId'), `reference layer of ${name}`, places)]
  }
  const netClass = findNetClass(context.design, conductor)
  const limit = findCrosstalkLimit(context, netClass)
  const outcomes = listLineZones(context, conductor).flatMap(({ zone, runsThere }): Outcome[] => {
    const zonePlaces = [...places, placeOf('zone', { id: zone.zoneId, name: zone.name })]
    const riseTimePs = netClass?.riseTimePs ?? null
    const subject = {
      context,
      conductor: { ...conductor, widthMm },
      index,
      zone,
      limit,
      riseTimePs,
      places: zonePlaces,
    }
    // Within a pair the lines are meant to couple.
    const beside =
      impedance.kind === 'pair'
        ? []
        : [
            spaceMm === null
              ? notComputed(at('spaceMm'), `space beside ${name}`, zonePlaces)
              : checkBeside(subject, spaceMm),
          ]
    return [...beside, ...checkAdjacent(subject)].map((outcome) =>
      runsThere || outcome.kind !== 'decided' || outcome.verdict === 'meets'
        ? outcome
        : cannotTell(
            `the crosstalk to ${name} in ${zone.name}`,
            {
              because: `whether it runs through ${zone.name} is not stated, and there a line beside it would show ${inSentence(outcome.value.value, 'pct')}`,
              decidedBy: 'state the bends that it crosses',
            },
            zonePlaces,
            { value: outcome.value, limit },
          ),
    )
  })
  return outcomes.length > 0 ? outcomes : [notApplicable(`no zone has ${name} and another line near it`, places)]
}

interface Subject {
  readonly context: EvaluationContext
  readonly conductor: ConductorFeature & { readonly widthMm: number }
  readonly index: number
  readonly zone: ZoneResult
  readonly limit: Limit
  /** Of the fastest edge of its class; null where none is stated: every length then counts as long. */
  readonly riseTimePs: number | null
  readonly places: Outcome['places']
}

/** The limit of its class, where that states one; the catalogue's otherwise. */
function findCrosstalkLimit(context: EvaluationContext, netClass: NetClass | null): Limit {
  const stated = netClass?.crosstalkLimitPct ?? null
  if (netClass === null || stated === null) return context.getLimit('nearEndCrosstalkPct')
  return makeDesignLimit({
    key: 'statedCrosstalkPct',
    value: stated,
    unit: 'pct',
    sense: 'at-most',
    sourceKey: 'exactArithmetic',
    name: `net class ${netClass.name}`,
  })
}

/** Percent of the step at the near end: saturated, or what the stated length reaches with the stated edge. */
function readNearEndPct(
  { nearEndFraction, effectivePermittivity }: Coupling,
  { lengthMm }: ConductorFeature,
  riseTimePs: number | null,
): number {
  const reached =
    lengthMm === null || riseTimePs === null ? 1 : reachedFraction(lengthMm, effectivePermittivity, riseTimePs)
  return 100 * nearEndFraction * reached
}

/** A line of its own width beside it, at the stated space. */
function checkBeside(
  { context, conductor, index, zone, limit, riseTimePs, places }: Subject,
  spaceMm: number,
): Outcome {
  const describe = (space: number) =>
    describeZoneLine(
      { ...conductor, spaceMm: space, impedance: { ...conductor.impedance, kind: 'pair' } },
      index,
      zone,
      context,
    )
  const line = describe(spaceMm)
  const what = `near-end crosstalk to ${conductor.name} from a line beside it in ${zone.name}`
  const refused = refuse(line, what, places)
  if (refused !== null) return refused
  const couplingAt = (space: number): Coupling | null => {
    const found = describe(space)
    return found.kind === 'solvable' ? solveCoupling(found.makeSection('nominal', conductor.widthMm)) : null
  }
  const coupling = couplingAt(spaceMm)
  if (coupling === null) {
    return cannotTell(
      `the ${what}`,
      { because: 'the section has no solution', decidedBy: 'correct the construction or the conductor' },
      places,
    )
  }
  const nearEndPct = (found: Coupling | null) => (found === null ? 100 : readNearEndPct(found, conductor, riseTimePs))
  const pct = nearEndPct(coupling)
  const keeps = (space: number) => nearEndPct(couplingAt(space)) <= limit.value
  const spaceFor = computeMargin(pct, limit) >= 0 ? null : findLeast(keeps, spaceMm, MOST_MM)
  const { lengthMm, frequencyMhz } = conductor
  const further = [
    ...(riseTimePs !== null
      ? [describeEdge(coupling, lengthMm, riseTimePs)]
      : lengthMm === null || frequencyMhz === null
        ? []
        : [describeReached(pct, coupling, lengthMm, frequencyMhz)]),
    `By the other convention, ¼(Cm/C + Lm/L), ${inSentence(100 * coupling.backwardFraction, 'pct')}; far end ${inSentence(100 * coupling.farEndFraction, 'pct')} per delay over rise time.`,
    ...(spaceFor === null ? [] : [`A space of ${inSentence(roundToDigits(spaceFor, 2), 'mm')} keeps the limit.`]),
  ]
  return decide({
    value: pct,
    limit,
    places,
    what,
    equation:
      riseTimePs === null || lengthMm === null
        ? 'field solution, saturated step, both lines ended'
        : 'field solution, stated length and rise time, both lines ended',
    sourceKey: 'lineFields',
    cautions: [LINE_CAUTION],
    remark: further.join(' '),
  })
}

/** What the stated rise time does to the saturated step. */
function describeEdge({ nearEndFraction }: Coupling, lengthMm: number | null, riseTimePs: number): string {
  const saturated = inSentence(100 * nearEndFraction, 'pct')
  return lengthMm === null
    ? `With a long coupled length; state the length for what an edge of ${inSentence(riseTimePs, 'ps')} reaches.`
    : `Over ${inSentence(lengthMm, 'mm')} with an edge of ${inSentence(riseTimePs, 'ps')}; saturated ${saturated}.`
}

/** An edge is taken to rise in 0.35 over the highest frequency: common practice. It informs, and decides nothing: edges may be faster. */
function describeReached(
  pct: number,
  { effectivePermittivity }: Coupling,
  lengthMm: number,
  frequencyMhz: number,
): string {
  const riseTimePs = 350_000 / frequencyMhz
  const reached = pct * reachedFraction(lengthMm, effectivePermittivity, riseTimePs)
  return `Over ${inSentence(lengthMm, 'mm')}, with the edge that ${inSentence(frequencyMhz, 'mhz')} stands for, it reaches ${inSentence(reached, 'pct')}.`
}

/** Listed conductors on the signal layers next to it, where no plane lies between: their place across the part is not stated. */
function checkAdjacent({ context, conductor, index, zone, limit, riseTimePs, places }: Subject): Outcome[] {
  const line = describeZoneLine(
    { ...conductor, impedance: { ...conductor.impedance, kind: 'single' } },
    index,
    zone,
    context,
  )
  const copper = zone.layers.filter(({ kind, coverageFraction }) => kind === 'conductor' && (coverageFraction ?? 0) > 0)
  const at = copper.findIndex(({ layerId }) => layerId === conductor.layerId)
  return [copper[at - 1], copper[at + 1]].flatMap((layer): Outcome[] => {
    if (layer === undefined || layer.layerId === conductor.impedance.referenceLayerId) return []
    const { widths, unknown } = readWidthsOn(context, layer, places)
    if (widths.length === 0) return unknown
    const otherMm = Math.max(...widths)
    const what = `near-end crosstalk to ${conductor.name} from ${layer.name} in ${zone.name}`
    const refused = refuse(line, what, places)
    // A single line is told so beside its own layer, once.
    if (line.kind !== 'solvable') return conductor.impedance.kind === 'pair' && refused !== null ? [refused] : unknown
    // Less copper in the planes couples more: the figure with whole planes would be too good.
    if (refused !== null) return [...unknown, refused]
    const couplingAt = (offsetMm: number) => {
      const section = line.addLine(layer.layerId, otherMm, conductor.widthMm, offsetMm)
      return section === null ? null : solveCoupling(section)
    }
    const stacked = couplingAt(0)
    if (stacked === null) return unknown
    const nearEndPct = (found: Coupling | null) => (found === null ? 100 : readNearEndPct(found, conductor, riseTimePs))
    const pct = nearEndPct(stacked)
    if (pct <= limit.value) {
      return [
        ...unknown,
        decide({
          value: pct,
          limit,
          places,
          what,
          equation: `field solution, one line above the other, ${riseTimePs === null || conductor.lengthMm === null ? 'saturated step' : 'stated length and rise time'}`,
          sourceKey: 'lineFields',
          cautions: [LINE_CAUTION],
        }),
      ]
    }
    const offsetMm = findLeast((offset) => nearEndPct(couplingAt(offset)) <= limit.value, 0, MOST_MM)
    return [
      ...unknown,
      cannotTell(
        `the ${what}`,
        {
          because: `one above the other they couple by ${inSentence(pct, 'pct')}, and their offset is not stated`,
          decidedBy:
            offsetMm === null
              ? 'lay a plane between them, or cross them at right angles'
              : `keep their middles at least ${inSentence(roundToDigits(offsetMm, 2), 'mm')} apart for ${inSentence(limit.value, 'pct')}, which also staggers them in a bend, and look at the artwork`,
        },
        places,
        { value: { value: pct, unit: 'pct' }, limit },
      ),
    ]
  })
}

/** Widths on a layer, and what is open there: a line of no stated width, or a layer of conductors of which none is listed, may couple by any amount. */
function readWidthsOn(
  { design, layersById }: EvaluationContext,
  { layerId, name }: ZoneResult['layers'][number],
  places: Outcome['places'],
): { readonly widths: number[]; readonly unknown: Outcome[] } {
  const { conductors } = design.features
  const listed = conductors.filter((conductor) => conductor.layerId === layerId)
  const layer = layersById.get(layerId)
  if (listed.length === 0 && layer?.kind === 'conductor' && layer.role !== 'plane') {
    return { widths: [], unknown: [notComputed(['features', 'conductors'], `a conductor on ${name}`, places, 'typed')] }
  }
  return {
    widths: listed.flatMap(({ widthMm }) => (widthMm === null ? [] : [widthMm])),
    unknown: listed.flatMap((conductor) =>
      conductor.widthMm === null
        ? [
            notComputed(
              ['features', 'conductors', conductors.indexOf(conductor), 'widthMm'],
              `width of ${conductor.name}`,
              places,
            ),
          ]
        : [],
    ),
  }
}

function refuse(line: ZoneLine, what: string, places: Outcome['places']): Outcome | null {
  if (line.kind === 'missing') return notComputedFrom(line.missing, places)
  if (line.kind === 'unclear') return cannotTell(`the ${what}`, line, places)
  if (line.open === null) return null
  return cannotTell(`the ${what}`, { because: line.open.because, decidedBy: 'qualify by coupon' }, places)
}
