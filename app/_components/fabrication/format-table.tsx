'use client'

import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
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
  const columns = {
    format: { head: 'Format', isRowHead: true },
    headsSize: { head: heads.size, isNumeric: true },
    headsMargins: { head: heads.margins, isNumeric: true },
    headsSpacing: { head: heads.spacing, isNumeric: true },
    rotationsOfThe: { head: 'Rotations of the part' },
    foilDirection: { head: 'Foil direction' },
  } satisfies Columns
  return (
    <DataTable label="Panel formats" columns={columns}>
      {formats.map((format) => (
        <DataRow
          key={format.id}
          columns={columns}
          cells={{
            format: (
              <>
                {format.name}
                {format.note !== '' && <p className="small muted font-normal">{format.note}</p>}
              </>
            ),
            headsSize: (
              <>
                {digits(format.widthMm)} × {digits(format.heightMm)}
              </>
            ),
            headsMargins: [format.marginLeftMm, format.marginRightMm, format.marginTopMm, format.marginBottomMm]
              .map(digits)
              .join(', '),
            headsSpacing: digits(format.spacingMm),
            rotationsOfThe: formatTurns(format.allowedRotationsDeg),
            foilDirection:
              format.foilRollingDirection === null ? 'not stated' : FOIL_WORDS[format.foilRollingDirection],
          }}
        />
      ))}
    </DataTable>
  )
}
