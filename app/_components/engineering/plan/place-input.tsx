'use client'

import { useId, useState } from 'react'
import type { LengthUnit } from '@/lib/engine/units'
import { digitsOfEnteredLength, getUnitSymbol } from '@/lib/engine/units'
import type { PointMm } from '@/lib/plan'
import { readPlace } from './length-entry'

interface PlaceInputProps {
  readonly label: string
  readonly atMm: PointMm
  readonly unit: LengthUnit
  readonly isReadOnly?: boolean
  readonly onChange: (atMm: PointMm) => void
}

/** A place as two numbers. What is typed counts when the field is left, or with Enter; what cannot be read stays with its reason. */
export function PlaceInput({ label, atMm, unit, isReadOnly = false, onChange }: PlaceInputProps) {
  const id = useId()
  const shown = atMm.map((mm) => digitsOfEnteredLength(mm, 'mm', unit))
  const [typed, setTyped] = useState<{ readonly x: string | null; readonly y: string | null }>({ x: null, y: null })
  const [error, setError] = useState<string | null>(null)
  const [x, y] = [typed.x ?? shown[0] ?? '', typed.y ?? shown[1] ?? '']
  const take = () => {
    if (typed.x === null && typed.y === null) return
    const read = readPlace(x, y, unit)
    if (!read.ok) {
      setError(read.reason)
      return
    }
    setError(null)
    // What is shown may be rounded in another unit: a coordinate that nobody typed stays as it is.
    onChange([typed.x === null ? atMm[0] : read.atMm[0], typed.y === null ? atMm[1] : read.atMm[1]])
    setTyped({ x: null, y: null })
  }
  const input = (axis: 'x' | 'y', value: string) => (
    <input
      className="input input-num"
      inputMode="decimal"
      autoComplete="off"
      aria-label={`${label}, ${axis}`}
      aria-invalid={error === null ? undefined : true}
      aria-describedby={error === null ? undefined : id}
      value={value}
      readOnly={isReadOnly}
      onChange={(event) => setTyped({ ...typed, [axis]: event.target.value })}
      onBlur={take}
      onKeyDown={(event) => {
        if (event.key === 'Enter') {
          event.preventDefault()
          take()
        }
      }}
    />
  )
  return (
    <span className="plan-place">
      {input('x', x)}
      {input('y', y)}
      <span className="small muted">{getUnitSymbol(unit)}</span>
      {error !== null && (
        <span id={id} className="field-error cell-error">
          {error}
        </span>
      )}
    </span>
  )
}
