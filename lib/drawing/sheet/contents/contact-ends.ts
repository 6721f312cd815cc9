import {
  CONNECTOR_DIMENSIONS,
  type ConnectorFeature,
  type Design,
  FEATURE_FIELDS,
  getChoiceWord,
  NOT_STATED,
} from '@/lib/engine'
import { digitsAsEntered } from '@/lib/engine/units'
import type { SheetColumn, SheetTable } from './model'
import { formatObserved, type SheetWords } from './words'

const column = (label: string, leastMm: number, growth = 0, isNumeric = false): SheetColumn => ({
  label,
  leastMm,
  growth,
  isNumeric,
})

const FIELDS = FEATURE_FIELDS.connectors.entry
const FIT = FIELDS.pitch.fields

/** Contact ends and what goes into which connector; empty where none is entered. */
export function makeContactEndTables({ features }: Design, words: SheetWords): SheetTable[] {
  const { connectors } = features
  return connectors.length === 0 ? [] : [makeEndTable(connectors, words), makeFitTable(connectors, words)]
}

function makeEndTable(connectors: readonly ConnectorFeature[], words: SheetWords): SheetTable {
  return {
    kind: 'table',
    id: 'contact-ends',
    title: 'Contact ends',
    keyColumnCount: 1,
    columns: [
      column(FIELDS.name.label, 28, 1),
      column(FIELDS.zoneId.label, 11),
      column(FIELDS.finish.label, 34, 1),
      column(FIELDS.isHardGold.label, 17),
      column(FIELDS.matings.label, 16, 0, true),
      column(FIELDS.isBlindInsertion.label, 16),
      column(FIELDS.hasPlaneOrHoleBeforeBend.label, 30),
      column(`${FIELDS.firstBendMm.label}, ${words.planUnit}`, 26, 0, true),
    ],
    rows: connectors.map((connector) => ({
      id: connector.id,
      cells: [
        connector.name,
        connector.zoneId === null ? NOT_STATED : words.zone(connector.zoneId),
        getChoiceWord(FIELDS.finish, connector.finish),
        formatObserved(connector.isHardGold),
        connector.matings === null ? NOT_STATED : digitsAsEntered(connector.matings),
        formatObserved(connector.isBlindInsertion),
        formatObserved(connector.hasPlaneOrHoleBeforeBend),
        words.plan(connector.firstBendMm),
      ],
    })),
  }
}

function makeFitTable(connectors: readonly ConnectorFeature[], words: SheetWords): SheetTable {
  const mm = words.planUnit
  return {
    kind: 'table',
    id: 'contact-end-dimensions',
    title: 'Contact ends: dimensions of the part, and what the connector accepts',
    keyColumnCount: 2,
    columns: [
      column(FIELDS.name.label, 28, 1),
      column('Dimension', 34, 1),
      ...(['partMm', 'toleranceMm', 'minMm', 'maxMm'] as const).map((key) =>
        column(`${FIT[key].label}, ${mm}`, 22, 0, true),
      ),
    ],
    rows: connectors.flatMap((connector) =>
      CONNECTOR_DIMENSIONS.map((dimension) => {
        const { partMm, toleranceMm, minMm, maxMm } = connector[dimension]
        return {
          id: `${connector.id} ${dimension}`,
          cells: [
            connector.name,
            FIELDS[dimension].label,
            words.plan(partMm),
            words.plan(toleranceMm),
            words.plan(minMm),
            words.plan(maxMm),
          ],
        }
      }),
    ),
  }
}
