import type { Metadata } from 'next'
import { FabricationSheetEditor } from '@/app/_components/fabrication/grid/sheet-editor'
import { SheetPageHead } from '@/app/_components/fabrication/sheet-page-head'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { paths } from '@/lib/addresses'
import { now } from '@/lib/config'
import { getSheet } from '@/lib/data'

export const metadata: Metadata = { title: 'Capability matrix' }

export default async function CompanyMatrixPage({ params }: { params: Promise<{ companyId: string }> }) {
  const { companyId } = await params
  const address = paths.companyMatrix(companyId)
  const actor = await requireActor(address)
  const sheet = await readOrNotFound(() => getSheet(actor, companyId, 'matrix'))
  const { mayEdit, current } = sheet
  const version = current?.version ?? 0
  return (
    <>
      <SheetPageHead
        address={address}
        kind="matrix"
        sheet={sheet}
        title="Capability matrix"
        toEditors="What you build every day, and what you can build at a stretch. Reviews shared with you compare each value of the design with it; no other fabricator sees it."
        toReaders="What this fabricator builds every day, and at a stretch."
      />
      {!mayEdit && current === null ? (
        <p className="empty">This fabricator has stated no capability matrix yet.</p>
      ) : (
        <FabricationSheetEditor
          key={version}
          label="Capability matrix"
          companyId={companyId}
          sheet={{ kind: 'matrix', content: current?.content ?? { rows: [] } }}
          seenVersion={version}
          mayEdit={mayEdit}
          today={now().toISOString().slice(0, 10)}
        />
      )}
    </>
  )
}
