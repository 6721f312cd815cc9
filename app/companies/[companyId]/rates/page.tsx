import type { Metadata } from 'next'
import { RatesSheet } from '@/app/_components/fabrication/rates-sheet'
import { SheetPageHead } from '@/app/_components/fabrication/sheet-page-head'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { paths } from '@/lib/addresses'
import { now } from '@/lib/config'
import { getSheet } from '@/lib/data'

export const metadata: Metadata = { title: 'Process rates' }

export default async function CompanyRatesPage({ params }: { params: Promise<{ companyId: string }> }) {
  const { companyId } = await params
  const address = paths.companyRates(companyId)
  const actor = await requireActor(address)
  const sheet = await readOrNotFound(() => getSheet(actor, companyId, 'process-rates'))
  const { mayEdit, current } = sheet
  return (
    <>
      <SheetPageHead
        address={address}
        kind="process-rates"
        sheet={sheet}
        title="Process rates"
        toEditors="Replace any line with your own rate; the others stay illustrative and are labelled so wherever they are used. The teams that you share them with see the rates; no other fabricator does."
        toReaders="Rates of this fabricator, and illustrative ones where it states none. They compare constructions and are not prices."
      />
      <RatesSheet
        key={current?.version ?? 0}
        companyId={companyId}
        seenVersion={current?.version ?? 0}
        content={current?.content ?? null}
        mayEdit={mayEdit}
        today={now().toISOString().slice(0, 10)}
      />
    </>
  )
}
