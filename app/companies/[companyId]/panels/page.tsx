import type { Metadata } from 'next'
import { FormatTable } from '@/app/_components/fabrication/format-table'
import { FormatsForm } from '@/app/_components/fabrication/formats-form'
import { SheetPageHead } from '@/app/_components/fabrication/sheet-page-head'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { paths } from '@/lib/addresses'
import { now } from '@/lib/config'
import { getSheet } from '@/lib/data'

export const metadata: Metadata = { title: 'Panel formats' }

export default async function CompanyPanelsPage({ params }: { params: Promise<{ companyId: string }> }) {
  const { companyId } = await params
  const address = paths.companyPanels(companyId)
  const actor = await requireActor(address)
  const sheet = await readOrNotFound(() => getSheet(actor, companyId, 'panel-formats'))
  const { mayEdit, current } = sheet
  return (
    <>
      <SheetPageHead
        address={address}
        kind="panel-formats"
        sheet={sheet}
        title="Panel formats"
        toEditors="The panels that you run. Parts in reviews shared with you are placed on them; no other fabricator sees them."
        toReaders="The panels that this fabricator runs."
      />
      {mayEdit ? (
        <FormatsForm
          key={current?.version ?? 0}
          companyId={companyId}
          seenVersion={current?.version ?? 0}
          content={current?.content ?? { formats: [] }}
          today={now().toISOString().slice(0, 10)}
        />
      ) : current === null || current.content.formats.length === 0 ? (
        <p className="empty">This fabricator has stated no panel format yet.</p>
      ) : (
        <FormatTable formats={current.content.formats} />
      )}
    </>
  )
}
