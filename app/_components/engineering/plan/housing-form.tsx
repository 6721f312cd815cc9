'use client'

import { useMemo } from 'react'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { PLAN_FIELDS, type Plan } from '@/lib/engine'
import { measureRoom, prepareFolding, ROOM_SIDES } from '@/lib/engine/folding'
import { digitsOfLength, getShownUnit, withUnit } from '@/lib/engine/units'
import { planSchema } from '@/lib/plan'
import { FieldCell, type FieldValue, FormCells, makePlaces, OptionalChoiceCell } from '../cells'
import { useDraft, useEdit } from '../draft'
import { planOf, withEdit } from './additions'

type Housing = NonNullable<Plan['housing']>

const NOTHING_KNOWN: Housing = { heldAreaId: null, alongXMm: null, alongYMm: null, heightMm: null }
const WORDS = PLAN_FIELDS.housing.fields

/** The room that the folded part has, beside what it takes. */
export function HousingForm() {
  const { state } = useDraft()
  const edit = useEdit()
  const plan = planOf(state.design)
  const housing = plan.housing ?? NOTHING_KNOWN
  const at = makePlaces(['plan', 'housing'], 'plan.housing', 'room')
  const put = (field: keyof Housing, value: FieldValue) =>
    edit(`plan.housing.${field}`, (design) => {
      const next = { ...(planOf(design).housing ?? NOTHING_KNOWN), [field]: value } as Housing
      const isEmpty = Object.values(next).every((each) => each === null)
      return withEdit(design, { act: 'set', field: 'housing', value: isEmpty ? null : next })
    })
  return (
    <FormCells>
      <div className="plan-fields">
        <OptionalChoiceCell
          label={WORDS.heldAreaId.label}
          hint={WORDS.heldAreaId.hint}
          at={at('heldAreaId')}
          value={housing.heldAreaId}
          choices={plan.areas.map(({ id, name }) => ({ value: id, label: name }))}
          emptyLabel="the largest"
          onChange={(next) => put('heldAreaId', next)}
        />
        {ROOM_SIDES.map(({ field }) => (
          <FieldCell
            key={field}
            words={WORDS[field]}
            schema={planSchema.shape.housing.unwrap().shape[field]}
            at={at(field)}
            value={housing[field]}
            onChange={(next) => put(field, next)}
          />
        ))}
      </div>
      <TakenRoom />
    </FormCells>
  )
}

/** What the folded part takes, to the hundredth that decides nothing; the checklist compares with its bounds. */
function TakenRoom() {
  const { evaluatedDesign, evaluation } = useDraft().live
  const { unit: chosen } = useLengthUnit()
  const sides = useMemo(() => {
    const folding = prepareFolding(evaluatedDesign, evaluation.zones, evaluation.bends)
    return folding.kind === 'foldable' ? measureRoom(evaluatedDesign, folding.value) : null
  }, [evaluatedDesign, evaluation.zones, evaluation.bends])
  if (sides === null) return <p className="small muted">What the part takes is known once it can be folded.</p>
  const unit = getShownUnit('mm', chosen)
  const taken = sides.map(
    ({ takenMm, words }) => `${withUnit(digitsOfLength(takenMm * 1000, unit, 'plan'), unit)} ${words}`,
  )
  return (
    <p className="small">
      Folded as drawn, with what stands on it, the part takes {taken.slice(0, 2).join(', ')} and {taken[2]}, at nominal
      radii.
    </p>
  )
}
