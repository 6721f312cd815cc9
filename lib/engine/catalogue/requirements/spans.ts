import type { EvaluationContext } from '../../context'
import { BRIEF_FIELDS, CONNECTOR_DIMENSIONS, callByName, FEATURE_FIELDS, getFieldInText } from '../../design'
import { lifeOverMedianFraction } from '../../life'
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
/** Scatter of fatigue takes at least this much off the median life, or the demand leaves no room for it; our choice. */
const MOST_OF_MEDIAN_FRACTION = 0.7
/** Both tolerances of a sheet together: none is rolled, cast or etched closer. Our choice. */
const LEAST_SHEET_SPREAD_UM = 0.2
/** Where the flatter end has nearly the curvature of the tighter one, nothing moves; our choice. */
const LEAST_SWING_FRACTION = 0.01

/** Pairs of figures of which each alone may be usual. */
export function listSpans(context: EvaluationContext): readonly Span[] {
  return [
    ...listTemperatureSpans(context),
    ...listWindows(context),
    ...listFits(context),
    ...listSwings(context),
    ...listScatter(context),
    ...listSheetTolerances(context),
  ]
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
    equation: 'from both figures as typed',
    isTyped: true,
    remark: 'Check both figures.',
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

/** How much of the median life is counted on, by the share that must survive and the slope: each may be usual, and both together hardly less than the median. */
function listScatter({ design: { brief } }: EvaluationContext): Span[] {
  const { lifeSurvivalPct, lifeWeibullSlope } = brief
  if (lifeSurvivalPct === null || lifeWeibullSlope === null) return []
  const words = `${getFieldInText(BRIEF_FIELDS.lifeSurvivalPct)} and ${getFieldInText(BRIEF_FIELDS.lifeWeibullSlope)}`
  return [
    {
      what: `share of the median life that is counted on, by ${words}`,
      value: lifeOverMedianFraction(1 - lifeSurvivalPct / 100, lifeWeibullSlope),
      low: 0,
      high: MOST_OF_MEDIAN_FRACTION,
      unit: 'fraction',
      places: [BRIEF_PLACE],
    },
  ]
}

/** A sheet without tolerance has no thin margin anywhere, and one whose tolerance is its thickness has none itself. */
function listSheetTolerances({ design }: EvaluationContext): Span[] {
  return design.construction.layers.flatMap((layer): Span[] =>
    layer.kind === 'unbonded-gap'
      ? []
      : [
          {
            what: `both tolerances of the thickness of ${layer.name} together`,
            value: layer.tolerancePlusUm + layer.toleranceMinusUm,
            low: LEAST_SHEET_SPREAD_UM,
            high: 2 * Math.max(layer.thicknessUm, LEAST_SHEET_SPREAD_UM),
            unit: 'um',
            places: [placeOf('layer', layer)],
          },
        ],
  )
}
