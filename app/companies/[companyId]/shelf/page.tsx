import type { Metadata } from 'next'
import { FabricationSheetEditor } from '@/app/_components/fabrication/grid/sheet-editor'
import { SheetPageHead } from '@/app/_components/fabrication/sheet-page-head'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { paths } from '@/lib/addresses'
import { now } from '@/lib/config'
import { getSheet } from '@/lib/data'

export const metadata: Metadata = { title: 'Shelf' }

export default async function CompanyShelfPage({ params }: { params: Promise<{ companyId: string }> }) {
  const { companyId } = await params
  const address = paths.companyShelf(companyId)
  const actor = await requireActor(address)
  const sheet = await readOrNotFound(() => getSheet(actor, companyId, 'shelf'))
  const { mayEdit, current } = sheet
  const version = current?.version ?? 0
  return (
    <>
      <SheetPageHead
        address={address}
        kind="shelf"
        sheet={sheet}
        title="Shelf"
        toEditors="The materials that you stock, and lead times of the others. Reviews shared with you look up their materials here; no other fabricator sees it."
        toReaders="The materials that this fabricator stocks, and lead times of the others."
      />
      {!mayEdit && current === null ? (
        <p className="empty">This fabricator has stated nothing about its shelf yet.</p>
      ) : (
        <FabricationSheetEditor
          key={version}
          label="Shelf"
          companyId={companyId}
          sheet={{ kind: 'shelf', content: current?.content ?? { buildTimeDays: null, rows: [] } }}
          seenVersion={version}
          mayEdit={mayEdit}
          today={now().toISOString().slice(0, 10)}
        />
      )}
    </>
  )
}
