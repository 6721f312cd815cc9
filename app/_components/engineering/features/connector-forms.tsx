'use client'

import { Button } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { PageSection } from '@/app/_components/ui/section'
import {
  CONNECTOR_DIMENSIONS,
  type ConnectorFeature,
  connectorFeatureSchema,
  FEATURE_FIELDS,
  UNKNOWN_CONNECTOR,
} from '@/lib/engine'
import {
  FieldCell,
  FormCells,
  makePlaces,
  OptionalChoiceCell,
  OptionalPlanLengthCell,
  TextCell,
  useUnitLabels,
} from '../cells'
import { makeFreshId, useDraft, useEdit } from '../draft'
import { RowAct } from '../row-act'

const WORDS = FEATURE_FIELDS.connectors.entry
const FACTS = [
  'finish',
  'isHardGold',
  'matings',
  'isBlindInsertion',
  'hasPlaneOrHoleBeforeBend',
  'firstBendMm',
] as const satisfies readonly (keyof ConnectorFeature)[]

/** Contact ends with what their connectors' drawings accept. */
export function ConnectorForms() {
  const { state, isReadOnly } = useDraft()
  const edit = useEdit()
  const { connectors } = state.design.features
  const add = () =>
    edit(`add-connector-${connectors.length}`, (design) => {
      const present = design.features.connectors
      const id = makeFreshId('connector', present)
      const connector = { id, name: `Connector end ${present.length + 1}`, ...UNKNOWN_CONNECTOR }
      return { ...design, features: { ...design.features, connectors: [...present, connector] } }
    })
  return (
    <PageSection
      title={FEATURE_FIELDS.connectors.label}
      actions={!isReadOnly && <Button onPress={add}>Add connector end</Button>}
    >
      {connectors.length === 0 && (
        <p className="empty">No connector ends entered. Without one, the fit of a finger zone is not checked.</p>
      )}
      {connectors.map((connector, index) => (
        <ConnectorForm key={connector.id} connector={connector} index={index} />
      ))}
    </PageSection>
  )
}

function ConnectorForm({ connector, index }: { connector: ConnectorFeature; index: number }) {
  const { state, isReadOnly } = useDraft()
  const edit = useEdit()
  const at = makePlaces(['features', 'connectors', index], `connectors.${connector.id}`, connector.name)
  const setAll = (key: string, change: (present: readonly ConnectorFeature[]) => ConnectorFeature[]) =>
    edit(key, (design) => ({
      ...design,
      features: { ...design.features, connectors: change(design.features.connectors) },
    }))
  const set = (field: string, change: (present: ConnectorFeature) => ConnectorFeature) =>
    setAll(at(field).key, (all) => all.map((present) => (present.id === connector.id ? change(present) : present)))
  const zones = state.design.construction.zones.map(({ id, name }) => ({ value: id, label: name }))
  return (
    <FormCells>
      <div className="form-grid">
        <TextCell
          label={WORDS.name.label}
          at={at('name')}
          value={connector.name}
          onChange={(name) => set('name', (present) => ({ ...present, name }))}
        />
        <OptionalChoiceCell
          label={WORDS.zoneId.label}
          at={at('zoneId')}
          value={connector.zoneId}
          choices={zones}
          emptyLabel="not stated"
          onChange={(zoneId) => set('zoneId', (present) => ({ ...present, zoneId }))}
        />
        {FACTS.map((name) => (
          <FieldCell
            key={name}
            words={WORDS[name]}
            schema={connectorFeatureSchema.shape[name]}
            at={at(name)}
            value={connector[name]}
            onChange={(value) => set(name, (present) => ({ ...present, [name]: value }))}
          />
        ))}
      </div>
      <FitTable connector={connector} at={at} set={set} />
      {!isReadOnly && (
        <RowAct
          label={`Remove ${connector.name}`}
          onPress={() =>
            setAll(`remove-${connector.id}`, (all) => all.filter((present) => present.id !== connector.id))
          }
        >
          remove
        </RowAct>
      )}
    </FormCells>
  )
}

const FIT_WORDS = WORDS.pitch.fields
const FIT_KEYS = Object.keys(FIT_WORDS) as (keyof typeof FIT_WORDS)[]

/** Part and connector side by side, a line for each dimension. */
function FitTable({
  connector,
  at,
  set,
}: {
  connector: ConnectorFeature
  at: ReturnType<typeof makePlaces>
  set: (field: string, change: (present: ConnectorFeature) => ConnectorFeature) => void
}) {
  const units = useUnitLabels()
  const number = (key: keyof typeof FIT_WORDS) => ({
    head: FIT_WORDS[key].label,
    unit: units.plan,
    isNumeric: true,
    className: 'cell-number',
  })
  const columns = {
    dimension: { head: 'Dimension', isRowHead: true },
    partMm: number('partMm'),
    toleranceMm: number('toleranceMm'),
    minMm: number('minMm'),
    maxMm: number('maxMm'),
  } satisfies Columns
  return (
    <DataTable label={`Dimensions of ${connector.name}`} columns={columns} isGrid>
      {CONNECTOR_DIMENSIONS.map((dimension) => (
        <DataRow
          key={dimension}
          columns={columns}
          cells={{
            dimension: WORDS[dimension].label,
            ...(Object.fromEntries(
              FIT_KEYS.map((key) => [
                key,
                <OptionalPlanLengthCell
                  key={key}
                  label={`${WORDS[dimension].label}, ${FIT_WORDS[key].label}`}
                  at={at(dimension, key)}
                  value={connector[dimension][key]}
                  onChange={(value) =>
                    set(`${dimension}.${key}`, (present) => ({
                      ...present,
                      [dimension]: { ...present[dimension], [key]: value },
                    }))
                  }
                />,
              ]),
            ) as Record<keyof typeof FIT_WORDS, React.ReactNode>),
          }}
        />
      ))}
    </DataTable>
  )
}
