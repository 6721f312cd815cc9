import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { asComputed } from '@/lib/engine/units'
import type { NestedFormat } from '@/lib/fabrication'
import { formatTurns, METHOD_WORDS } from './format-words'

const COLUMNS = {
  panelFormat: { head: 'Panel format', isRowHead: true },
  parts: { head: 'Parts per panel', isNumeric: true },
  shareUsed: { head: 'Share used', isNumeric: true },
  rectanglesOneOrientation: { head: 'Rectangles, one orientation', isNumeric: true },
  rectanglesBothOrientations: { head: 'Rectangles, both orientations', isNumeric: true },
  how: { head: 'How', className: 'small' },
  turns: { head: 'Turns', className: 'small' },
} satisfies Columns

/** Parts per panel and use of each panel format, with what rectangles alone would come to. */
export function NestingTable({
  nested,
  pricedFormatId,
}: {
  nested: readonly NestedFormat[]
  pricedFormatId: string | null
}) {
  return (
    <DataTable label="Parts per panel" columns={COLUMNS}>
      {nested.map(({ format, nesting }) => (
        <DataRow
          key={format.id}
          columns={COLUMNS}
          cells={{
            panelFormat: (
              <>
                {format.name}
                {format.id === pricedFormatId && <p className="small muted font-normal">Lowest cost per good part.</p>}
                {nesting.notes.map((note) => (
                  <p key={note} className="small muted font-normal">
                    {note}
                  </p>
                ))}
              </>
            ),
            parts: <strong>{nesting.count}</strong>,
            shareUsed: asComputed(100 * nesting.utilisationFraction, 'sharePct'),
            rectanglesOneOrientation: nesting.gridCount,
            rectanglesBothOrientations: nesting.mixedGridCount,
            how: (
              <>
                {METHOD_WORDS[nesting.method]}
                {nesting.excessFraction > 0 &&
                  ` (outline taken up to ${asComputed(100 * nesting.excessFraction, 'excessPct')} larger)`}
              </>
            ),
            turns: formatTurns(nesting.turnsDeg),
          }}
        />
      ))}
    </DataTable>
  )
}
