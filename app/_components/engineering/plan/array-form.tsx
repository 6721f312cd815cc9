'use client'

import { Button } from '@/app/_components/ui/button'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { type FieldNode, PLAN_FIELDS, type Plan } from '@/lib/engine'
import { getShownUnit } from '@/lib/engine/units'
import { type PointMm, planSchema } from '@/lib/plan'
import { FieldCell, type FieldValue, FormCells, makePlaces } from '../cells'
import { makeFreshId, useDraft, useEdit } from '../draft'
import { planOf, withEdit } from './additions'
import { PlaceInput } from './place-input'
import type { PlanEditor } from './use-plan-editor'

type DrawnArray = NonNullable<Plan['array']>

const ONE_PART: DrawnArray = {
  columns: 1,
  rows: 1,
  columnStepMm: null,
  rowStepMm: null,
  frameMm: null,
  tabs: [],
  fiducials: [],
}
const COUNTED = ['columns', 'rows', 'columnStepMm', 'rowStepMm', 'frameMm'] as const
const FIRST_TAB_MM = 1

/** The array in which parts are delivered: counts, steps, frame, and where tabs and fiducials are. */
export function ArrayForm({ editor }: { editor: PlanEditor }) {
  const { state } = useDraft()
  const edit = useEdit()
  const { array } = planOf(state.design)
  const { isReadOnly } = editor
  const put = (key: string, change: (present: DrawnArray) => DrawnArray | null) =>
    edit(`plan.array.${key}`, (design) =>
      withEdit(design, { act: 'set', field: 'array', value: change(planOf(design).array ?? ONE_PART) }),
    )
  if (array === null) {
    return (
      <>
        <p className="empty">No array is drawn: parts come singly, or nobody has said yet.</p>
        {!isReadOnly && <Button onPress={() => put('begin', (present) => present)}>Draw an array</Button>}
      </>
    )
  }
  const at = makePlaces(['plan', 'array'], 'plan.array', 'array')
  const words: Readonly<Record<string, FieldNode>> = PLAN_FIELDS.array.fields
  const schema = planSchema.shape.array.unwrap().shape
  return (
    <FormCells>
      <div className="plan-fields">
        {COUNTED.map((field) => {
          const word = words[field]
          return (
            word !== undefined && (
              <FieldCell
                key={field}
                words={word}
                schema={schema[field]}
                at={at(field)}
                value={array[field] as FieldValue}
                onChange={(next) => put(field, (present) => ({ ...present, [field]: next }) as DrawnArray)}
              />
            )
          )
        })}
      </div>
      <PlacedList
        editor={editor}
        label="Tab"
        entries={array.tabs}
        onChange={(atMms) =>
          put('tabs', (present) => ({
            ...present,
            tabs: atMms.map(({ id, atMm }) => ({
              id,
              atMm,
              widthMm: present.tabs.find((tab) => tab.id === id)?.widthMm ?? FIRST_TAB_MM,
            })),
          }))
        }
      />
      {array.tabs.map((tab, index) => (
        <FieldCell
          key={tab.id}
          words={{ label: `Width of tab ${index + 1}`, unit: 'mm' }}
          schema={schema.tabs.unwrap().shape.widthMm}
          at={at('tabs', index, 'widthMm')}
          value={tab.widthMm}
          onChange={(widthMm) =>
            put(`tabs.${tab.id}.widthMm`, (present) => ({
              ...present,
              tabs: present.tabs.map((each) => (each.id === tab.id ? { ...each, widthMm: Number(widthMm) } : each)),
            }))
          }
        />
      ))}
      <PlacedList
        editor={editor}
        label="Fiducial"
        entries={array.fiducials}
        onChange={(fiducials) => put('fiducials', (present) => ({ ...present, fiducials }))}
      />
      {!isReadOnly && (
        <div className="row">
          <Button onPress={() => put('remove', () => null)}>Remove the array</Button>
        </div>
      )}
    </FormCells>
  )
}

interface Placed {
  readonly id: string
  readonly atMm: PointMm
}

interface PlacedListProps {
  readonly editor: PlanEditor
  readonly label: string
  readonly entries: readonly Placed[]
  readonly onChange: (entries: { id: string; atMm: PointMm }[]) => void
}

function PlacedList({ editor, label, entries, onChange }: PlacedListProps) {
  const unit = getShownUnit('mm', useLengthUnit().unit)
  const plain = entries.map(({ id, atMm }) => ({ id, atMm }))
  return (
    <fieldset className="field plan-pair">
      <legend className="field-label">{label}s</legend>
      {plain.map(({ id, atMm }, index) => (
        <span key={id} className="row">
          <PlaceInput
            label={`${label} ${index + 1}`}
            atMm={atMm}
            unit={unit}
            isReadOnly={editor.isReadOnly}
            onChange={(next) => onChange(plain.map((each) => (each.id === id ? { id, atMm: next } : each)))}
          />
          {!editor.isReadOnly && (
            <Button onPress={() => onChange(plain.filter((each) => each.id !== id))}>
              Remove {label.toLowerCase()} {index + 1}
            </Button>
          )}
        </span>
      ))}
      {!editor.isReadOnly && (
        <Button onPress={() => onChange([...plain, { id: makeFreshId(label.toLowerCase(), plain), atMm: [0, 0] }])}>
          Add a {label.toLowerCase()}
        </Button>
      )}
    </fieldset>
  )
}
