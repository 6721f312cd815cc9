import Link from 'next/link'
import { paths } from '@/app/_components/shell/paths'
import { TableFrame } from '@/app/_components/ui/table-frame'
import type { FabricatorFitView } from '@/lib/data'
import type { MatrixSharing } from '@/lib/review'
import { MATRIX_SHARING_WORDS } from './sharing-words'

/** How many values and materials fall where, a line for each fabricator. */
export function FitSummary({ fabricators }: { fabricators: readonly FabricatorFitView[] }) {
  return (
    <TableFrame label="Fit with each fabricator">
      <table className="ledger">
        <thead>
          <tr>
            <th scope="col">Fabricator</th>
            <th scope="col">Matrix</th>
            <th scope="col" className="num">
              Outside
            </th>
            <th scope="col" className="num">
              Stretch
            </th>
            <th scope="col" className="num">
              Not stated
            </th>
            <th scope="col" className="num">
              Comfortable
            </th>
            <th scope="col">Shelf</th>
            <th scope="col" className="num">
              To order
            </th>
            <th scope="col" className="num">
              Unknown
            </th>
            <th scope="col" className="num">
              On the shelf
            </th>
          </tr>
        </thead>
        <tbody>
          {fabricators.map(({ company, sharing, matrix, counts, shelf }) => (
            <tr key={company.id}>
              <th scope="row">{company.name}</th>
              <td className="nowrap">
                <SheetLink href={paths.companyMatrix(company.id)} sheet={matrix} sharing={sharing.matrix} />
              </td>
              <td className="num">{counts?.outside ?? '–'}</td>
              <td className="num">{counts?.stretch ?? '–'}</td>
              <td className="num">{counts?.notStated ?? '–'}</td>
              <td className="num">{counts?.comfortable ?? '–'}</td>
              <td className="nowrap">
                <SheetLink href={paths.companyShelf(company.id)} sheet={shelf} sharing={sharing.shelf} />
              </td>
              <td className="num">{shelf?.counts.toOrder ?? '–'}</td>
              <td className="num">{shelf?.counts.unknown ?? '–'}</td>
              <td className="num">{shelf?.counts.onShelf ?? '–'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
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
