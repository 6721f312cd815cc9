import type { EvaluationContext } from '../../../context'
import { CONNECTOR_DIMENSIONS, type ConnectorFeature, FEATURE_FIELDS, getFieldInText } from '../../../design'
import type { MissingInput, Outcome } from '../../../results'
import { placeOf } from '../../checks'
import { findEndsWithoutRecord } from '../../connector-ends'
import { decide, makeDesignLimit, makeSourceLimit, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { sourceOf } from '../../drawn'

export const contactGeometry = defineItem({
  id: 'contact-geometry',
  section: 'geometry',
  severity: 'blocking',
  question: 'Do the dimensions of each contact end match its connector’s drawing over their tolerances?',
  titles: { meets: 'Contact ends match their connectors', fails: 'A contact end misses its connector’s drawing' },
  appliesTo: { needs: ['contact-ends'], says: 'designs with a contact end' },
  limits: [],
  sourceKeys: ['exactArithmetic', 'commonPractice'],
  restsOn: ['plan', 'features.connectors', 'construction.zones.*.kind'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: CONNECTOR_DIMENSIONS.map((dimension) => ({
    path: `features.connectors[].${dimension}.toleranceMm`,
    worse: 'larger' as const,
  })),
  check: (context) => [
    ...findEndsWithoutRecord(context),
    ...context.design.features.connectors.flatMap((connector, index) => [
      ...CONNECTOR_DIMENSIONS.map((dimension) => checkDimensionOf(context, connector, index, dimension)),
      ...checkGap(connector),
    ]),
  ],
})

function checkDimensionOf(
  context: EvaluationContext,
  connector: ConnectorFeature,
  index: number,
  dimension: (typeof CONNECTOR_DIMENSIONS)[number],
): Outcome {
  const { partMm, toleranceMm, minMm, maxMm } = connector[dimension]
  const places = [placeOf('connector', connector)]
  const words = getFieldInText(FEATURE_FIELDS.connectors.entry[dimension])
  const missing: MissingInput[] = []
  const need = (isThere: boolean, field: string, label: string) => {
    if (!isThere) {
      missing.push({
        path: ['features', 'connectors', index, dimension, field],
        label: `${label} of the ${words} of ${connector.name}`,
      })
    }
  }
  need(partMm !== null, 'partMm', 'value')
  need(toleranceMm !== null, 'toleranceMm', 'tolerance')
  // One end alone is a drawing that gives a minimum or a maximum.
  need(minMm !== null || maxMm !== null, 'minMm', 'connector’s limits')
  if (partMm === null || toleranceMm === null || missing.length > 0) {
    return { ...notComputedFrom(missing, places), rests: 'typed' }
  }
  return decide({
    value: partMm,
    range: { low: partMm - toleranceMm, high: partMm + toleranceMm },
    limit: makeDesignLimit({
      key: 'connectorDimensionMm',
      value: minMm ?? maxMm ?? 0,
      ...(minMm !== null && maxMm !== null ? { upperValue: maxMm } : {}),
      unit: 'mm',
      sense: minMm === null ? 'at-most' : maxMm === null ? 'at-least' : 'within',
      sourceKey: 'exactArithmetic',
      name: 'drawing of the connector',
    }),
    places,
    what: `${words} of ${connector.name}`,
    ...sourceOf(
      context,
      ['features', 'connectors', index, dimension, 'partMm'],
      'dimension as typed, plus and minus its tolerance',
    ),
  })
}

/** The finest space that shops etch. Source: table of finest widths and spaces in fabricator guides, 0.05 to 0.076 mm. */
const LEAST_GAP_MM = 0.05

/** What pitch and width leave between two contacts: each may match the drawing, and both together short the end. */
function checkGap(connector: ConnectorFeature): Outcome[] {
  const { pitch, contactWidth } = connector
  if (pitch.partMm === null || contactWidth.partMm === null) return []
  const gapMm = pitch.partMm - contactWidth.partMm
  const spreadMm = (pitch.toleranceMm ?? 0) + (contactWidth.toleranceMm ?? 0)
  return [
    decide({
      value: gapMm,
      range: { low: gapMm - spreadMm, high: gapMm + spreadMm },
      limit: makeSourceLimit({
        key: 'contactGapMm',
        value: LEAST_GAP_MM,
        unit: 'mm',
        sense: 'at-least',
        sourceKey: 'commonPractice',
      }),
      places: [placeOf('connector', connector)],
      what: `gap between contacts of ${connector.name}`,
      equation: 'pitch less contact width, over their tolerances',
      isTyped: true,
    }),
  ]
}
