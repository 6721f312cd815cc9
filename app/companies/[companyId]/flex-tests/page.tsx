import type { Metadata } from 'next'
import { FabricationSheetEditor } from '@/app/_components/fabrication/grid/sheet-editor'
import { SheetPageHead } from '@/app/_components/fabrication/sheet-page-head'
import { FlexTestSets } from '@/app/_components/flex-tests/flex-test-sets'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { now } from '@/lib/config'
import { getSheet } from '@/lib/data'

export const metadata: Metadata = { title: 'Flex tests' }

export default async function CompanyFlexTestsPage({ params }: { params: Promise<{ companyId: string }> }) {
  const { companyId } = await params
  const address = paths.companyFlexTests(companyId)
  const actor = await requireActor(address)
  const sheet = await readOrNotFound(() => getSheet(actor, companyId, 'flex-tests'))
  const { company, mayEdit, current } = sheet
  const version = current?.version ?? 0
  const rows = current?.content.rows ?? []
  return (
    <>
      <SheetPageHead
        address={address}
        kind="flex-tests"
        sheet={sheet}
        title="Flex tests"
        toEditors="Lives of specimens that you tested. Reviews that are shown your matrix use their slope and ductility where foil, motion, radius and cycles match; no other fabricator sees them."
        toReaders="Lives of specimens that this fabricator tested. Results use their slope and ductility where foil, motion, radius and cycles match."
      />
      <PageSection title="Sets">
        <FlexTestSets rows={rows} owner={{ kind: 'fabricator', name: company.name }} />
      </PageSection>
      {(mayEdit || current !== null) && (
        <PageSection title="Specimens">
          <FabricationSheetEditor
            key={version}
            label="Flex tests"
            companyId={companyId}
            sheet={{ kind: 'flex-tests', content: { rows } }}
            seenVersion={version}
            mayEdit={mayEdit}
            today={now().toISOString().slice(0, 10)}
          />
        </PageSection>
      )}
    </>
  )
}
