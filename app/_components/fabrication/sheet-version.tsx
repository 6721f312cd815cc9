import { Timestamp } from '@/app/_components/ui/timestamp'
import type { FabricationSheetVersionView } from '@/lib/data'

/** Which version of a sheet is shown, of which day, and who saved it. */
export function SheetVersion({ sheet }: { sheet: FabricationSheetVersionView }) {
  return (
    <p className="small muted">
      Version {sheet.version}, issued on {sheet.issuedOn}; saved by {sheet.setBy.name}, <Timestamp at={sheet.setAt} />.
      {sheet.note !== '' && ` ${sheet.note}`}
    </p>
  )
}
