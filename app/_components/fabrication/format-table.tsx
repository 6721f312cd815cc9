'use client'

import { TableFrame } from '@/app/_components/ui/table-frame'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { digitsOfEnteredLength, getShownUnit, withUnitInHead } from '@/lib/engine/units'
import type { PanelFormat } from '@/lib/fabrication'
import { FOIL_WORDS, formatTurns } from './format-words'

/** Panel formats as their fabricator runs them, for reading. */
export function FormatTable({ formats }: { formats: readonly PanelFormat[] }) {
  const { unit: chosen } = useLengthUnit()
  const unit = getShownUnit('mm', chosen)
  const digits = (valueMm: number) => digitsOfEnteredLength(valueMm, 'mm', unit)
  const heads = {
    size: withUnitInHead('Width × height', unit),
    margins: withUnitInHead('Margins: left, right, top, bottom', unit),
    spacing: withUnitInHead('Spacing', unit),
  }
  return (
    <TableFrame label="Panel formats">
      <table className="ledger unit-heads" data-stack="">
        <thead>
          <tr>
            <th scope="col">Format</th>
            <th scope="col" className="num">
              {heads.size}
            </th>
            <th scope="col" className="num">
              {heads.margins}
            </th>
            <th scope="col" className="num">
              {heads.spacing}
            </th>
            <th scope="col">Rotations of the part</th>
            <th scope="col">Foil direction</th>
          </tr>
        </thead>
        <tbody>
          {formats.map((format) => (
            <tr key={format.id}>
              <th scope="row">
                {format.name}
                {format.note !== '' && <p className="small muted font-normal">{format.note}</p>}
              </th>
              <td className="num" data-label={heads.size}>
                {digits(format.widthMm)} × {digits(format.heightMm)}
              </td>
              <td className="num" data-label={heads.margins}>
                {[format.marginLeftMm, format.marginRightMm, format.marginTopMm, format.marginBottomMm]
                  .map(digits)
                  .join(', ')}
              </td>
              <td className="num" data-label={heads.spacing}>
                {digits(format.spacingMm)}
              </td>
              <td data-label="Rotations of the part">{formatTurns(format.allowedRotationsDeg)}</td>
              <td data-label="Foil direction">
                {format.foilRollingDirection === null ? 'not stated' : FOIL_WORDS[format.foilRollingDirection]}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  )
}
