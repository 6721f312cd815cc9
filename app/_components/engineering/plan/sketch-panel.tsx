'use client'

import { type FormEvent, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { TextField } from '@/app/_components/ui/text-field'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { digitsOfEnteredLength, getShownUnit, getUnitSymbol } from '@/lib/engine/units'
import { useDraft } from '../draft'
import { BELONGS } from './belongs'
import { readPlace } from './length-entry'
import { leastPoints } from './tools'
import type { PlanEditor } from './use-plan-editor'

/** What is being drawn, by number: every point that the pointer can give, a person can type. */
export function SketchPanel({ editor }: { editor: PlanEditor }) {
  const { tool, sketch, addPoint, dropPoint, finish, start } = editor
  const { unit: chosenUnit } = useLengthUnit()
  const unit = getShownUnit('mm', chosenUnit)
  const [x, setX] = useState('')
  const [y, setY] = useState('')
  const [error, setError] = useState<string | null>(null)
  if (tool === null) return null
  const add = (event: FormEvent) => {
    event.preventDefault()
    const read = readPlace(x, y, unit)
    if (!read.ok) {
      setError(read.reason)
      return
    }
    setError(null)
    addPoint(read.atMm)
    setX('')
    setY('')
  }
  const symbol = getUnitSymbol(unit)
  const say = (mm: number) => digitsOfEnteredLength(mm, 'mm', unit)
  return (
    <form className="plan-sketch" onSubmit={add} aria-label={`Draw: ${tool.singular}`}>
      <p className="small">
        {tool.takes === 'point'
          ? `Click where the ${tool.singular} goes, or type its position.`
          : tool.takes === 'segment'
            ? `Click both ends of the ${tool.singular}, or type them.`
            : `Click the points of the ${tool.singular}, or type them; then finish.`}
      </p>
      <OwnerChoice editor={editor} />
      {sketch.length > 0 && (
        <p className="small">
          So far: {sketch.map(([px, py]) => `(${say(px)}, ${say(py)})`).join(' ')} {symbol}
        </p>
      )}
      <div className="row">
        <TextField label={`x, ${symbol}`} value={x} onChange={setX} autoComplete="off" />
        <TextField label={`y, ${symbol}`} value={y} onChange={setY} autoComplete="off" />
        <Button type="submit">Add point</Button>
        {(tool.takes === 'path' || tool.takes === 'loop') && (
          <Button weight="strong" onPress={() => finish()} isDisabled={sketch.length < leastPoints(tool)}>
            Finish
          </Button>
        )}
        <Button onPress={dropPoint} isDisabled={sketch.length === 0}>
          Drop last point
        </Button>
        <Button onPress={() => start(null)}>Cancel</Button>
      </div>
      {error !== null && (
        <p className="field-error" role="alert">
          {error}
        </p>
      )}
    </form>
  )
}

/** What the new shape belongs to. */
function OwnerChoice({ editor }: { editor: PlanEditor }) {
  const { state } = useDraft()
  const { tool, owner, setOwner } = editor
  const belongs = tool === null || tool.key === 'outline' ? undefined : BELONGS[tool.key]
  if (belongs === undefined) return null
  const candidates = belongs.list(state.design)
  const word = belongs.label.toLowerCase()
  const mayBeNew = tool?.key === 'bendLines' || tool?.key === 'areas'
  if (!mayBeNew && !belongs.isOptional && candidates.length === 0) {
    return (
      <p className="field-error" role="alert">
        No {word} is entered yet: add one on the {belongs.addedOn} page first.
      </p>
    )
  }
  return (
    <label className="plan-owner small">
      {belongs.label}{' '}
      <select
        className="input"
        value={owner.kind === 'id' ? owner.id : owner.kind === 'new' ? '+' : ''}
        onChange={({ target: { value } }) =>
          setOwner(value === '+' ? { kind: 'new' } : value === '' ? { kind: 'none' } : { kind: 'id', id: value })
        }
      >
        {mayBeNew && <option value="+">a new {word}</option>}
        {belongs.isOptional && <option value="">none yet</option>}
        {candidates.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  )
}
