import type { EvaluationContext } from '../../context'
import { BRIEF_FIELDS, CONNECTOR_DIMENSIONS, callByName, FEATURE_FIELDS, getFieldInText } from '../../design'
import { type Outcome, placeOf } from '../../results'
import type { Unit } from '../../units'
import { BRIEF_PLACE } from '../checks'
import { decide, makeSourceLimit } from '../decide'

/** A requirement that two figures state together. */
interface Span {
  readonly what: string
  readonly value: number
  readonly low: number
  readonly high: number
  readonly unit: Unit
  readonly places: Outcome['places']
}

/** No room is held closer than this for years without a thermostat; our choice. */
const LEAST_SERVICE_SPAN_DEG_C = 5
/** Below this nothing is cycled. Our choice. */
const LEAST_CYCLE_SPAN_DEG_C = 15
/** Windows of film connectors are some 40 to 100 um wide, of edges of boards some 400; our choice around both. */
const WINDOW_SPAN_UM = { low: 5, high: 600 } as const
/** A dimension that may be half as large as it may be is no dimension; our choice. */
const LARGEST_SPAN_OF_MAXIMUM_FRACTION = 0.5
/** Where the flatter end has nearly the curvature of the tighter one, nothing moves; our choice. */
const LEAST_SWING_FRACTION = 0.01

/** Pairs of figures of which each alone may be usual. */
export function listSpans(context: EvaluationContext): readonly Span[] {
  return [...listTemperatureSpans(context), ...listWindows(context), ...listFits(context), ...listSwings(context)]
}

export function checkSpan({ value, low, high, unit, what, places }: Span): Outcome {
  return decide({
    value,
    limit: makeSourceLimit({
      key: 'requirementSpan',
      ...(value < low ? { value: low, sense: 'at-least' } : { value: high, sense: 'at-most' }),
      unit,
      sourceKey: 'ownChoice',
    }),
    places,
    what,
    equation: 'difference of both ends as typed',
    isTyped: true,
    remark: 'Check both ends.',
  })
}

export const isWithin = ({ value, low, high }: Pick<Span, 'value' | 'low' | 'high'>): boolean =>
  value >= low && value <= high

function listTemperatureSpans({ design: { brief } }: EvaluationContext): Span[] {
  const between = (
    [from, to]: readonly ['operatingMinDegC', 'operatingMaxDegC'] | readonly ['cycleMinDegC', 'cycleMaxDegC'],
    low: number,
  ): Span[] => {
    const [least, most] = [brief[from], brief[to]]
    if (least === null || most === null) return []
    const words = (key: typeof from | typeof to) => getFieldInText(BRIEF_FIELDS[key])
    return [
      {
        what: `difference between ${words(from)} and ${words(to)}`,
        value: most - least,
        low,
        high: 500,
        unit: 'degC',
        places: [BRIEF_PLACE],
      },
    ]
  }
  return [
    ...between(['operatingMinDegC', 'operatingMaxDegC'], LEAST_SERVICE_SPAN_DEG_C),
    ...between(['cycleMinDegC', 'cycleMaxDegC'], LEAST_CYCLE_SPAN_DEG_C),
  ]
}

function listWindows({ design }: EvaluationContext): Span[] {
  return design.construction.zones.flatMap((zone): Span[] =>
    zone.connectorWindow === null
      ? []
      : [
          {
            what: `width of the connector window of ${callByName('zone', zone.name)}`,
            value: zone.connectorWindow.maxUm - zone.connectorWindow.minUm,
            ...WINDOW_SPAN_UM,
            unit: 'um',
            places: [placeOf('zone', zone)],
          },
        ],
  )
}

function listFits({ design }: EvaluationContext): Span[] {
  return design.features.connectors.flatMap((connector) =>
    CONNECTOR_DIMENSIONS.flatMap((dimension): Span[] => {
      const { minMm, maxMm } = connector[dimension]
      // A drawing that gives a maximum alone says 0, and lets nothing pass that its maximum does not.
      if (minMm === null || maxMm === null || minMm === 0) return []
      const words = getFieldInText(FEATURE_FIELDS.connectors.entry[dimension])
      return [
        {
          what: `width of the window for ${words} of ${connector.name}`,
          value: maxMm - minMm,
          low: 0,
          high: LARGEST_SPAN_OF_MAXIMUM_FRACTION * maxMm,
          unit: 'mm',
          places: [placeOf('connector', connector)],
        },
      ]
    }),
  )
}

/** How much of its curvature a bend gives up on its way to the flatter end. */
function listSwings({ design }: EvaluationContext): Span[] {
  return design.bends.flatMap((bend): Span[] => {
    const kept =
      bend.flexesFromRadiusMm !== null
        ? bend.insideRadiusMm / bend.flexesFromRadiusMm
        : bend.flexesFromAngleDeg !== null
          ? bend.flexesFromAngleDeg / bend.angleDeg
          : null
    if (bend.use !== 'dynamic' || kept === null) return []
    return [
      {
        what: `share of its curvature by which ${callByName('bend', bend.name)} moves`,
        value: 1 - kept,
        low: LEAST_SWING_FRACTION,
        high: 1,
        unit: 'fraction',
        places: [placeOf('bend', bend)],
      },
    ]
  })
}
