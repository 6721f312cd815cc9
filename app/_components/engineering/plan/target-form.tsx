'use client'

import { useMemo } from 'react'
import { Button } from '@/app/_components/ui/button'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { type FieldNode, PLAN_FIELDS, type Plan } from '@/lib/engine'
import { describeLoopSlack, measureLoopSlack, placeConnectorEnd, prepareFolding } from '@/lib/engine/folding'
import { roundTo } from '@/lib/engine/numerics'
import { digitsAsEntered, digitsOfLength, getShownUnit, withUnit } from '@/lib/engine/units'
import { planSchema } from '@/lib/plan'
import { FieldCell, type FieldValue, makePlaces } from '../cells'
import { useDraft } from '../draft'

type DrawnEnd = Plan['connectorEnds'][number]
type Target = NonNullable<DrawnEnd['target']>

/** Where nobody has said anything yet: how far it may be off is asked before anything is judged. */
const FIRST_TARGET: Target = { atMm: [0, 0, 0], pointsTo: [1, 0, 0], topFaces: null, withinMm: null, withinDeg: null }
const UPWARDS: Target['pointsTo'] = [0, 0, 1]
const AXES = ['x', 'y', 'z'] as const
const WORDS = PLAN_FIELDS.connectorEnds.entry.target.fields
const SCHEMA = planSchema.shape.connectorEnds.unwrap().shape.target.unwrap().shape

interface TargetFormProps {
  readonly index: number
  readonly end: DrawnEnd
  readonly name: string
  readonly isReadOnly: boolean
  readonly onChange: (target: Target | null) => void
}

/** Place and direction that a contact end must have once the part is folded, and where it lies as drawn. */
export function TargetForm({ index, end, name, isReadOnly, onChange }: TargetFormProps) {
  const { target } = end
  const label = PLAN_FIELDS.connectorEnds.entry.target.label
  const at = makePlaces(
    ['plan', 'connectorEnds', index, 'target'],
    `plan.connectorEnds.${end.id}.target`,
    `target of ${name}`,
  )
  const triple = (field: 'atMm' | 'pointsTo' | 'topFaces', value: Target['atMm']) => (
    <fieldset className="field plan-triple">
      <legend className="field-label">{WORDS[field].label}</legend>
      {AXES.map((axis, place) => {
        const words: FieldNode = field === 'atMm' ? { label: axis, unit: 'mm' } : { label: axis }
        return (
          <FieldCell
            key={axis}
            words={words}
            schema={SCHEMA.atMm.def.items[place as 0]}
            at={at(field, place)}
            value={value[place as 0]}
            onChange={(next) =>
              target !== null &&
              onChange({ ...target, [field]: value.map((part, other) => (other === place ? Number(next) : part)) })
            }
          />
        )
      })}
    </fieldset>
  )
  return (
    <fieldset className="field stack plan-target">
      <legend className="field-label">{label}</legend>
      <PresentPlace end={end} />
      {target === null ? (
        <div className="row">
          <span className="muted">not known</span>
          {!isReadOnly && <Button onPress={() => onChange(FIRST_TARGET)}>State where it must lie</Button>}
        </div>
      ) : (
        <>
          <p className="small muted">{WORDS.atMm.hint}</p>
          {triple('atMm', target.atMm)}
          {triple('pointsTo', target.pointsTo)}
          {target.topFaces !== null && triple('topFaces', target.topFaces)}
          {!isReadOnly && (
            <div className="row">
              <Button onPress={() => onChange({ ...target, topFaces: target.topFaces === null ? UPWARDS : null })}>
                {target.topFaces === null ? 'State which way its top face looks' : 'Either face may look up'}
              </Button>
            </div>
          )}
          <div className="plan-fields">
            {(['withinMm', 'withinDeg'] as const).map((field) => (
              <FieldCell
                key={field}
                words={WORDS[field]}
                schema={SCHEMA[field]}
                at={at(field)}
                value={target[field] as FieldValue}
                onChange={(next) => onChange({ ...target, [field]: next })}
              />
            ))}
          </div>
          {!isReadOnly && (
            <div className="row">
              <Button onPress={() => onChange(null)}>Not known</Button>
            </div>
          )}
        </>
      )}
    </fieldset>
  )
}

/** Where the end lies in the folded part as drawn. */
function PresentPlace({ end }: { readonly end: DrawnEnd }) {
  const { evaluatedDesign, evaluation } = useDraft().live
  const { unit: chosen } = useLengthUnit()
  const placed = useMemo(() => {
    const folding = prepareFolding(evaluatedDesign, evaluation.zones, evaluation.bends)
    if (folding.kind !== 'foldable') return null
    const found = placeConnectorEnd(evaluatedDesign, folding.value, end)
    if (found.kind !== 'placed') return null
    return { ...found.placed, loop: end.target === null ? null : measureLoopSlack(evaluatedDesign, found, end.target) }
  }, [evaluatedDesign, evaluation.zones, evaluation.bends, end])
  if (placed === null) return <p className="small muted">Where it lies is known once the part can be folded.</p>
  const unit = getShownUnit('mm', chosen)
  const say = (mm: number) => digitsOfLength(mm * 1000, unit, 'plan')
  const [x, y, z] = placed.at
  return (
    <>
      <p className="small">
        Folded as drawn it lies at {say(x)}, {say(y)}, {withUnit(say(z), unit)} and points to{' '}
        {placed.pointsTo.map(formatPart).join(', ')}; its top face looks to {placed.topFaces.map(formatPart).join(', ')}
        .
      </p>
      {placed.loop !== null && <p className="small">{describeLoopSlack(placed.loop)}</p>}
    </>
  )
}

/** A part of a unit vector: three decimals, without a negative nought. */
const formatPart = (part: number) => digitsAsEntered(roundTo(part, 3))
