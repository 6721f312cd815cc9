import type { Metadata } from 'next'
import Link from 'next/link'
import { OpenedSheet } from '@/app/_components/fabrication/opened-sheet'
import { RestoreVersion } from '@/app/_components/fabrication/restore-version'
import { SheetVersion } from '@/app/_components/fabrication/sheet-version'
import { VersionChanges } from '@/app/_components/fabrication/version-changes'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { now } from '@/lib/config'
import { getSheetVersion } from '@/lib/data'
import { SHEET_NAMES } from '@/lib/fabrication'

interface VersionPageProps {
  readonly params: Promise<{ companyId: string; kind: string; version: string }>
  readonly searchParams: Promise<{ against?: string | string[] }>
}

export const metadata: Metadata = { title: 'Version of a sheet' }

/** A version of a fabricator's sheet as it was saved: what it holds, how it differs from another one, and how it comes back. */
export default async function SheetVersionPage({ params, searchParams }: VersionPageProps) {
  const [{ companyId, kind, version }, { against }] = await Promise.all([params, searchParams])
  const actor = await requireActor(`/companies/${companyId}/versions/${kind}/${version}`)
  const asked = { kind, version, against: typeof against === 'string' ? against : null }
  const view = await readOrNotFound(() => getSheetVersion(actor, companyId, asked))
  const { company, sheet, newestVersion } = view
  const own = view.version.version
  const name = SHEET_NAMES[sheet.kind]
  const isRestorable = view.mayRestore && own < newestVersion
  return (
    <>
      <PageHead
        title={`Version ${own} of the ${name}`}
        over={<Link href={paths.companySheet(company.id, sheet.kind)}>{company.name}</Link>}
        under={
          own === newestVersion
            ? 'This is the version in force.'
            : `Version ${newestVersion} is in force. Reviews rest on that one.`
        }
      />
      <SheetVersion sheet={view.version} />
      <VersionChanges view={view} />
      {isRestorable && (
        <PageSection title="Restore">
          <RestoreVersion
            companyId={company.id}
            kind={sheet.kind}
            version={own}
            newestVersion={newestVersion}
            today={now().toISOString().slice(0, 10)}
          />
        </PageSection>
      )}
      <PageSection title="What it holds">
        {sheet.kind === 'shelf' && (
          <p className="small">
            Build time:{' '}
            {sheet.content.buildTimeDays === null
              ? 'not stated'
              : `${sheet.content.buildTimeDays} days from the last material`}
            .
          </p>
        )}
        <OpenedSheet key={own} label={`Version ${own} of the ${name}`} sheet={sheet} />
      </PageSection>
    </>
  )
}
