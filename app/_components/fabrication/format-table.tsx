import { TableFrame } from '@/app/_components/ui/table-frame'
import type { PanelFormat } from '@/lib/fabrication'
import { FOIL_WORDS, formatTurns } from './format-words'

/** Panel formats as their fabricator runs them, for reading. */
export function FormatTable({ formats }: { formats: readonly PanelFormat[] }) {
  return (
    <TableFrame label="Panel formats">
      <table className="ledger unit-heads" data-stack="">
        <thead>
          <tr>
            <th scope="col">Format</th>
            <th scope="col" className="num">
              Width × height, mm
            </th>
            <th scope="col" className="num">
              Margins: left, right, top, bottom, mm
            </th>
            <th scope="col" className="num">
              Spacing, mm
            </th>
            <th scope="col">Turns of the part</th>
            <th scope="col">Foil rolled</th>
          </tr>
        </thead>
        <tbody>
          {formats.map((format) => (
            <tr key={format.id}>
              <th scope="row">
                {format.name}
                {format.note !== '' && <p className="small muted font-normal">{format.note}</p>}
              </th>
              <td className="num" data-label="Width × height, mm">
                {format.widthMm} × {format.heightMm}
              </td>
              <td className="num" data-label="Margins, mm">
                {[format.marginLeftMm, format.marginRightMm, format.marginTopMm, format.marginBottomMm].join(', ')}
              </td>
              <td className="num" data-label="Spacing, mm">
                {format.spacingMm}
              </td>
              <td data-label="Turns of the part">{formatTurns(format.allowedRotationsDeg)}</td>
              <td data-label="Foil rolled">
                {format.foilRollingDirection === null ? 'not stated' : FOIL_WORDS[format.foilRollingDirection]}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  )
}
