import Link from 'next/link'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { paths } from '@/lib/addresses'
import type { FabricatorFitView } from '@/lib/data'
import type { MatrixSharing } from '@/lib/review'
import { MATRIX_SHARING_WORDS } from './sharing-words'

const COLUMNS = {
  fabricator: { head: 'Fabricator', isRowHead: true },
  matrix: { head: 'Matrix', className: 'nowrap' },
  outside: { head: 'Outside', isNumeric: true },
  stretch: { head: 'Stretch', isNumeric: true },
  notStated: { head: 'Not stated', isNumeric: true },
  comfortable: { head: 'Comfortable', isNumeric: true },
  shelf: { head: 'Shelf', className: 'nowrap' },
  toOrder: { head: 'To order', isNumeric: true },
  unknown: { head: 'Unknown', isNumeric: true },
  onShelf: { head: 'On the shelf', isNumeric: true },
} satisfies Columns

/** How many values and materials fall where, a line for each fabricator. */
export function FitSummary({ fabricators }: { fabricators: readonly FabricatorFitView[] }) {
  return (
    <DataTable label="Fit with each fabricator" columns={COLUMNS} isStacked={false}>
      {fabricators.map(({ company, sharing, matrix, counts, shelf }) => (
        <DataRow
          key={company.id}
          columns={COLUMNS}
          cells={{
            fabricator: company.name,
            matrix: <SheetLink href={paths.companyMatrix(company.id)} sheet={matrix} sharing={sharing.matrix} />,
            outside: counts?.outside ?? '–',
            stretch: counts?.stretch ?? '–',
            notStated: counts?.notStated ?? '–',
            comfortable: counts?.comfortable ?? '–',
            shelf: <SheetLink href={paths.companyShelf(company.id)} sheet={shelf} sharing={sharing.shelf} />,
            toOrder: shelf?.counts.toOrder ?? '–',
            unknown: shelf?.counts.unknown ?? '–',
            onShelf: shelf?.counts.onShelf ?? '–',
          }}
        />
      ))}
    </DataTable>
  )
}

interface SheetLinkProps {
  readonly href: string
  readonly sheet: { readonly version: number; readonly issuedOn: string } | null
  readonly sharing: MatrixSharing
}

function SheetLink({ href, sheet, sharing }: SheetLinkProps) {
  if (sharing === 'not-shared') return <span className="muted">{MATRIX_SHARING_WORDS[sharing]}</span>
  if (sheet === null) return <span className="muted">none stated</span>
  const words = `version ${sheet.version}, ${sheet.issuedOn}`
  if (sharing === 'shown') return <Link href={href}>{words}</Link>
  return (
    <>
      {words} <span className="muted">({MATRIX_SHARING_WORDS[sharing]})</span>
    </>
  )
}
