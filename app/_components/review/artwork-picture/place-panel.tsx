'use client'

import { useState } from 'react'
import { LinkButton } from '@/app/_components/ui/button'
import { SelectField } from '@/app/_components/ui/select-field'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { paths } from '@/lib/addresses'
import type { PictureFrame } from '@/lib/artwork'
import type { PointMm } from '@/lib/artwork-picture'
import { digitsOfResultLength, getShownUnit, getUnitSymbol } from '@/lib/engine/units'
import type { PictureFile } from './picture-types'

interface PlacePanelProps {
  readonly projectId: string
  readonly revisionId: string
  readonly frame: PictureFrame
  readonly mark: PointMm | null
  /** Null while nothing is measured. */
  readonly measured: readonly PointMm[] | null
  /** Files that a thread may be about, the nearest that is seen first; empty where the reader may not comment. */
  readonly files: readonly PictureFile[]
}

/** The marked place in numbers with the way to ask about it, or what was measured. */
export function PlacePanel({ projectId, revisionId, frame, mark, measured, files }: PlacePanelProps) {
  const { unit: chosenUnit } = useLengthUnit()
  const [fileId, setFileId] = useState<string | null>(null)
  const unit = getShownUnit('mm', chosenUnit)
  const write = (mm: number) => `${digitsOfResultLength(mm, 'mm', unit)} ${getUnitSymbol(unit)}`
  if (measured !== null) {
    const [from, to] = measured
    return (
      <p className="small" role="status">
        {from === undefined
          ? 'Choose two places: click, or move the picture under the cross and press Enter.'
          : to === undefined
            ? `From x ${write(from[0])}, y ${write(from[1])}. Choose the second place.`
            : `${write(Math.hypot(to[0] - from[0], to[1] - from[1]))}; along x ${write(Math.abs(to[0] - from[0]))}, along y ${write(Math.abs(to[1] - from[1]))}`}
      </p>
    )
  }
  if (mark === null) return <p className="small muted">Click a place, or press Enter for the one in the middle.</p>
  const file = files.find(({ id }) => id === fileId) ?? files[0]
  const place = frame.toFiles(mark).map((mm) => Math.round(mm * 1e4) / 1e4) as [number, number]
  return (
    <div className="artwork-place">
      <p className="small" role="status">
        x {write(mark[0])}, y {write(mark[1])} {frame.frame === 'plan' ? 'of the plan' : 'of the files'}
      </p>
      {file !== undefined && (
        <>
          {files.length > 1 && (
            <SelectField
              label="About the file"
              value={file.id}
              options={files.map(({ id, fileName }) => ({ value: id, label: fileName }))}
              onChange={setFileId}
            />
          )}
          <LinkButton href={paths.ask(projectId, revisionId, { kind: 'artwork', id: file.id, place })}>
            Ask or comment here
          </LinkButton>
        </>
      )}
    </div>
  )
}
