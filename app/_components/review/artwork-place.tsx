'use client'

import { useState } from 'react'
import { NumberField } from '@/app/_components/ui/number-field'

interface Place {
  xMm: number
  yMm: number
}

interface ArtworkPlaceProps {
  place: Place | undefined
  /** Undefined while nothing is entered: the thread is then about the file. Not a number for a half that is missing. */
  onChange: (place: Place | undefined) => void
}

/** A place on an artwork file, in the file's own coordinates and always in mm, as artwork viewers show them. */
export function ArtworkPlace({ place, onChange }: ArtworkPlaceProps) {
  const [xMm, setXMm] = useState<number | null>(place?.xMm ?? null)
  const [yMm, setYMm] = useState<number | null>(place?.yMm ?? null)
  const change = (x: number | null, y: number | null) => {
    setXMm(x)
    setYMm(y)
    // Half a place is handed on as it is, so that the form is refused and nothing that was typed gets lost.
    onChange(x === null && y === null ? undefined : { xMm: x ?? Number.NaN, yMm: y ?? Number.NaN })
  }
  const isHalf = (xMm === null) !== (yMm === null)
  return (
    <div className="row">
      <NumberField label="Place, x" unit="mm" value={xMm} onChange={(x) => change(x, yMm)} isOptional />
      <NumberField
        label="Place, y"
        unit="mm"
        value={yMm}
        onChange={(y) => change(xMm, y)}
        isOptional
        error={isHalf ? 'a place needs both x and y' : undefined}
      />
    </div>
  )
}
