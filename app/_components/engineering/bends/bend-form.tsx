'use client'

import type { ReactNode } from 'react'
import { BEND_FIELDS, type Bend, bendSchema, type FieldNode } from '@/lib/engine'
import { ChoiceCell, FieldCell, FormCells, makePlaces, RecordCells } from '../cells'
import { updateBend, useDraft, useEdit } from '../draft'

type BendField = keyof typeof BEND_FIELDS

/** Only parts that flex in service have these. */
const ONLY_DYNAMIC: readonly BendField[] = ['motion', 'flexTest']

/** What is asked where something else is stated. A value that is there stays in sight, since it counts. */
function isAsked(name: BendField, bend: Bend): boolean {
  switch (name) {
    case 'flexesFromRadiusMm':
    case 'flexesFromAngleDeg':
      return bend[name] !== null || (bend.use === 'dynamic' && bend.motion === 'one-way')
    case 'twistLengthMm':
      return bend[name] !== null || (bend.twistDeg ?? 0) > 0
    case 'faceGapMm':
      return bend[name] !== null || bend.radiusHeldBy === 'between-faces'
    default:
      return bend.use === 'dynamic' || !ONLY_DYNAMIC.includes(name)
  }
}
/** Written over several lines. */
const LONG_TEXTS: readonly string[] = ['note', 'pointsOfApplication']
const FIELDS = (Object.keys(BEND_FIELDS) as BendField[]).filter((key) => key !== 'id')

/** Everything that a bend states: the fields of the dictionary, in its order. */
export function BendForm({ bend, index }: { bend: Bend; index: number }) {
  return (
    <FormCells>
      <div className="form-grid">
        {FIELDS.filter((key) => isAsked(key, bend)).map((key) => (
          <BendCell key={key} name={key} bend={bend} index={index} />
        ))}
      </div>
    </FormCells>
  )
}

function BendCell({ name, bend, index }: { name: BendField; bend: Bend; index: number }) {
  const { state } = useDraft()
  const edit = useEdit()
  const at = makePlaces(['bends', index], `bend.${bend.id}`, bend.name || `bend ${index + 1}`)
  const set = (change: Partial<Bend>) =>
    edit(at(name).key, (design) => updateBend(design, bend.id, (present) => ({ ...present, ...change })))
  const words: FieldNode = BEND_FIELDS[name]
  if (name === 'zoneId') {
    const zones = state.design.construction.zones.map((zone) => ({
      value: zone.id,
      label: zone.kind === 'flex' ? zone.name : `${zone.name} (${zone.kind})`,
    }))
    return (
      <ChoiceCell
        label={words.label}
        at={at(name)}
        value={bend.zoneId}
        choices={zones}
        onChange={(zoneId) => set({ zoneId })}
      />
    )
  }
  if (name === 'flexTest' || name === 'forming' || name === 'inProduct') {
    return <NestedCells name={name} bend={bend} index={index} />
  }
  return (
    <Wide isWide={LONG_TEXTS.includes(name)}>
      <FieldCell
        words={words}
        schema={bendSchema.shape[name]}
        at={at(name)}
        value={bend[name]}
        hint={
          name === 'requiredCycles' && bend.use === 'dynamic'
            ? 'One cycle is out and back. You can type 2e6.'
            : words.hint
        }
        isLong={LONG_TEXTS.includes(name)}
        onChange={(value) => set({ [name]: value })}
      />
    </Wide>
  )
}

/** A record within a bend: how flexing is tested (MIL-PRF-50884F), how it is formed, what happens to it in the product. */
function NestedCells<K extends 'flexTest' | 'forming' | 'inProduct'>({
  name,
  bend,
  index,
}: {
  name: K
  bend: Bend
  index: number
}) {
  const edit = useEdit()
  const at = makePlaces(['bends', index], `bend.${bend.id}`, bend.name || `bend ${index + 1}`)
  type Cells = Parameters<typeof RecordCells<Bend[K]>>[0]
  return (
    <RecordCells<Bend[K]>
      fields={BEND_FIELDS[name].fields as unknown as Cells['fields']}
      shape={bendSchema.shape[name].shape as unknown as Cells['shape']}
      value={bend[name]}
      at={(field) => at(name, field ?? '')}
      longTexts={LONG_TEXTS}
      onChange={(key, change) =>
        edit(key, (design) => updateBend(design, bend.id, (present) => ({ ...present, [name]: change(present[name]) })))
      }
    />
  )
}

function Wide({ isWide, children }: { isWide: boolean; children: ReactNode }) {
  return isWide ? <div className="field-wide">{children}</div> : children
}
