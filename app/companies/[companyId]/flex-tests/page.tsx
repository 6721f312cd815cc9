import type { Metadata } from 'next'
import { CompanyLinks } from '@/app/_components/fabrication/company-links'
import { FabricationSheetEditor } from '@/app/_components/fabrication/grid/sheet-editor'
import { SheetVersion } from '@/app/_components/fabrication/sheet-version'
import { VersionList } from '@/app/_components/fabrication/version-list'
import { FlexTestSets } from '@/app/_components/flex-tests/flex-test-sets'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { now } from '@/lib/config'
import { getCompany, getSheet, listSheetVersions } from '@/lib/data'

export const metadata: Metadata = { title: 'Flex tests' }

export default async function CompanyFlexTestsPage({ params }: { params: Promise<{ companyId: string }> }) {
  const { companyId } = await params
  const actor = await requireActor(paths.companyFlexTests(companyId))
  const { company, mayEdit, current } = await readOrNotFound(() => getSheet(actor, companyId, 'flex-tests'))
  const { may } = await readOrNotFound(() => getCompany(actor, companyId))
  const versions = await listSheetVersions(actor, companyId, 'flex-tests')
  const version = current?.version ?? 0
  const rows = current?.content.rows ?? []
  return (
    <>
      <PageHead
        title="Flex tests"
        over={company.name}
        under={
          mayEdit
            ? 'Lives of specimens that you tested. Reviews that are shown your matrix use their slope and ductility where foil, motion, radius and cycles match; no other fabricator sees them.'
            : 'Lives of specimens that this fabricator tested. Results use their slope and ductility where foil, motion, radius and cycles match.'
        }
      />
      <CompanyLinks companyId={companyId} may={may} />
      {current !== null && <SheetVersion sheet={current} />}
      <VersionList versions={versions} />
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
