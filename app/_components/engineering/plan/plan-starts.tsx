'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { SelectField } from '@/app/_components/ui/select-field'
import { TextArea, TextField } from '@/app/_components/ui/text-field'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import {
  digitsOfEnteredLength,
  formatEnteredLength,
  getShownUnit,
  getUnitSymbol,
  parseLength,
} from '@/lib/engine/units'
import { STARTING_SHAPES, type StartingShape, startingShape, wholePoint } from '@/lib/plan/edit'
import { useDraft, useEdit } from '../draft'
import { readCorners } from '../features/read-corners'
import { planOf, withEdit } from './additions'

const WORDS: Readonly<Record<StartingShape, string>> = {
  strip: 'Strip',
  L: 'L',
  T: 'T',
  cross: 'Cross',
  U: 'U',
  ring: 'Ring',
}

const FIELDS = [
  { key: 'lengthMm', label: 'Length over all' },
  { key: 'widthMm', label: 'Width over all' },
  { key: 'armMm', label: 'Width of an arm' },
  { key: 'cornerRadiusMm', label: 'Inside corner radius' },
] as const

const USUAL_MM = { lengthMm: 60, widthMm: 40, armMm: 12, cornerRadiusMm: 2 } as const

/** An outline to begin with: a shape of given sizes, or corners from a spreadsheet. */
export function PlanStarts() {
  const { dispatch } = useDraft()
  const edit = useEdit()
  const { unit: chosenUnit } = useLengthUnit()
  const unit = getShownUnit('mm', chosenUnit)
  const [kind, setKind] = useState<StartingShape>('strip')
  const [typed, setTyped] = useState<Partial<Record<keyof typeof USUAL_MM, string>>>({})
  const [error, setError] = useState<string | null>(null)
  const textOf = (key: keyof typeof USUAL_MM) => typed[key] ?? digitsOfEnteredLength(USUAL_MM[key], 'mm', unit)
  const draw = () => {
    const sizes = { ...USUAL_MM } as Record<keyof typeof USUAL_MM, number>
    for (const { key, label } of FIELDS) {
      const read = parseLength(textOf(key), unit)
      if (!read.ok) {
        setError(`${label}: ${read.message}`)
        return
      }
      sizes[key] = read.valueUm / 1000
    }
    const made = startingShape(kind, sizes)
    if (made === null || made.outline === null || made.outline.some(({ atMm }) => wholePoint(atMm) === null)) {
      setError('No such shape has these sizes: arms and corners must fit into length and width.')
      return
    }
    setError(null)
    edit('plan.start', (design) => {
      const plan = planOf(design)
      return { ...design, plan: { ...plan, outline: made.outline, cutOuts: [...plan.cutOuts, ...made.cutOuts] } }
    })
    dispatch({ type: 'settle' })
  }
  return (
    <>
      <div className="form-grid">
        <SelectField
          label="Shape"
          value={kind}
          onChange={setKind}
          options={STARTING_SHAPES.map((shape) => ({ value: shape, label: WORDS[shape] }))}
        />
        {FIELDS.filter(({ key }) => kind !== 'strip' || key === 'lengthMm' || key === 'widthMm').map(
          ({ key, label }) => (
            <TextField
              key={key}
              label={`${label}, ${getUnitSymbol(unit)}`}
              value={textOf(key)}
              onChange={(text) => setTyped({ ...typed, [key]: text })}
              autoComplete="off"
            />
          ),
        )}
      </div>
      {error !== null && (
        <p className="field-error" role="alert">
          {error}
        </p>
      )}
      <div className="row above">
        <Button weight="strong" onPress={draw}>
          Begin with this shape
        </Button>
      </div>
      <PasteCorners />
    </>
  )
}

function PasteCorners() {
  const { dispatch } = useDraft()
  const { unit: chosenUnit } = useLengthUnit()
  const unit = getShownUnit('mm', chosenUnit)
  const edit = useEdit()
  const [text, setText] = useState('')
  const [error, setError] = useState<string | undefined>(undefined)
  const take = () => {
    const read = readCorners(text, unit)
    if (!read.ok) {
      setError(read.reason)
      return
    }
    const points = read.verticesMm.map(wholePoint)
    if (points.includes(null)) {
      setError(`A plan reaches ${formatEnteredLength(5000, 'mm', unit)} from its origin to each side.`)
      return
    }
    const nodes = points.flatMap((atMm) => (atMm === null ? [] : [{ atMm, viaMm: null }]))
    edit('plan.corners', (design) => withEdit(design, { act: 'set', field: 'outline', value: nodes }))
    dispatch({ type: 'settle' })
  }
  return (
    <details className="above">
      <summary>Or paste its corners</summary>
      <TextArea
        label={`Corners, in ${getUnitSymbol(unit)}`}
        hint="One corner on a line: x and y, as they come from a spreadsheet. A heading may name another unit."
        value={text}
        onChange={setText}
        error={error}
        rows={5}
      />
      <div className="row above">
        <Button onPress={take}>Begin with these corners</Button>
      </div>
    </details>
  )
}
