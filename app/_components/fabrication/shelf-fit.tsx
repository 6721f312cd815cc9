import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { type MarkedVerdict, VerdictMark } from '@/app/_components/ui/verdict-mark'
import type { FabricatorFitView, FitMaterialView } from '@/lib/data'
import { countOf } from '@/lib/engine/units'

type Shelf = NonNullable<FabricatorFitView['shelf']>

const COLUMNS = {
  material: { head: 'Material as bought', isRowHead: true },
  state: { head: 'State' },
  leadTime: { head: 'Lead time', isNumeric: true },
  order: { head: 'Order' },
  onShelf: { head: 'On the shelf instead' },
} satisfies Columns

/** The construction's materials as they are bought, against one fabricator's shelf. */
export function ShelfFit({ name, shelf }: { name: string; shelf: Shelf }) {
  return (
    <DataTable label={`Materials and the shelf of ${name}`} columns={COLUMNS}>
      {shelf.materials.map((material) => (
        <DataRow
          key={material.layerId}
          columns={COLUMNS}
          cells={{
            material: (
              <>
                {material.name}
                {material.form !== '' && <span className="muted small"> {material.form}</span>}
              </>
            ),
            state: <StateMark material={material} />,
            leadTime: material.leadTimeDays === null ? '' : `${material.leadTimeDays} days`,
            order: <OrderWords material={material} />,
            onShelf: <Substitutes material={material} />,
          }}
        />
      ))}
    </DataTable>
  )
}

function StateMark({ material: { state, order, reason } }: { material: FitMaterialView }) {
  if (state === 'on-shelf') return <VerdictMark verdict="meets" word="On the shelf" />
  if (state === 'unknown') {
    return (
      <>
        <VerdictMark verdict="not-computed" word="Unknown" />
        {reason !== null && <p className="small muted">{reason}</p>}
      </>
    )
  }
  const [mark, word]: readonly [MarkedVerdict, string] =
    order?.kind === 'too-late'
      ? ['fails', 'Too late']
      : order?.kind === 'order-now'
        ? ['thin-margin', 'Order now']
        : order?.kind === 'in-time'
          ? ['meets', 'To order']
          : ['not-computed', 'To order']
  return <VerdictMark verdict={mark} word={word} />
}

function OrderWords({ material: { order, minimumOrderM2 } }: { material: FitMaterialView }) {
  if (order === null) return null
  const least = minimumOrderM2 === null ? '' : ` At least ${minimumOrderM2} m².`
  if (order.kind === 'no-date')
    return (
      <>
        No date: {order.reason}.{least}
      </>
    )
  const { kind, latestOrderDate, slackDays } = order
  const when =
    kind === 'too-late'
      ? `${countOf(-slackDays, 'day')} too late`
      : slackDays === 0
        ? 'today is the last day'
        : `${countOf(slackDays, 'day')} left`
  return (
    <>
      <span className="nowrap">by {latestOrderDate}</span>: {when}.{least}
    </>
  )
}

function Substitutes({ material: { state, substitutes, leftOut } }: { material: FitMaterialView }) {
  if (state === 'on-shelf') return null
  return (
    <>
      {substitutes.length === 0 && <span className="muted">no substitute without a worse result</span>}
      {substitutes.length > 0 && (
        <ul>
          {substitutes.map(({ name, moves }) => (
            <li key={name}>
              {name}
              <span className="small muted">: {moves.length === 0 ? 'no figure moves' : moves.join('; ')}</span>
            </li>
          ))}
        </ul>
      )}
      {leftOut.length > 0 && (
        <details>
          <summary className="small">Tried and left out: {leftOut.length}</summary>
          <ul className="small">
            {leftOut.map(({ name, because }) => (
              <li key={name}>
                {name}: {because}
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  )
}
