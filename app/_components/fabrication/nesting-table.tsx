import { TableFrame } from '@/app/_components/ui/table-frame'
import { asComputed } from '@/lib/engine/units'
import type { NestedFormat } from '@/lib/fabrication'
import { formatTurns, METHOD_WORDS } from './format-words'

/** Parts per panel and use of each panel format, with what rectangles alone would come to. */
export function NestingTable({
  nested,
  pricedFormatId,
}: {
  nested: readonly NestedFormat[]
  pricedFormatId: string | null
}) {
  return (
    <TableFrame label="Parts per panel">
      <table className="ledger unit-heads" data-stack="">
        <thead>
          <tr>
            <th scope="col">Panel format</th>
            <th scope="col" className="num">
              Parts per panel
            </th>
            <th scope="col" className="num">
              Share used
            </th>
            <th scope="col" className="num">
              Rectangles, one orientation
            </th>
            <th scope="col" className="num">
              Rectangles, both orientations
            </th>
            <th scope="col">How</th>
            <th scope="col">Turns</th>
          </tr>
        </thead>
        <tbody>
          {nested.map(({ format, nesting }) => (
            <tr key={format.id}>
              <th scope="row">
                {format.name}
                {format.id === pricedFormatId && <p className="small muted font-normal">Lowest cost per good part.</p>}
                {nesting.notes.map((note) => (
                  <p key={note} className="small muted font-normal">
                    {note}
                  </p>
                ))}
              </th>
              <td className="num" data-label="Parts per panel">
                <strong>{nesting.count}</strong>
              </td>
              <td className="num" data-label="Share used">
                {asComputed(100 * nesting.utilisationFraction, 'sharePct')}
              </td>
              <td className="num" data-label="Rectangles, one orientation">
                {nesting.gridCount}
              </td>
              <td className="num" data-label="Rectangles, both orientations">
                {nesting.mixedGridCount}
              </td>
              <td data-label="How" className="small">
                {METHOD_WORDS[nesting.method]}
                {nesting.excessFraction > 0 &&
                  ` (outline taken up to ${asComputed(100 * nesting.excessFraction, 'excessPct')} larger)`}
              </td>
              <td data-label="Turns" className="small">
                {formatTurns(nesting.turnsDeg)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  )
}
