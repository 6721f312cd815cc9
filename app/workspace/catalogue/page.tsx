import type { Metadata } from 'next'
import { listItemQuestions, listItemTexts } from '@/app/_components/review/catalogue-texts'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { LinkButton } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import { getTemplate, type TemplateView } from '@/lib/data'
import { DELIVERED_PROFILES } from '@/lib/engine/catalogue'
import { countOf } from '@/lib/engine/units'
import { CatalogueFile } from './_components/catalogue-file'
import { DeliveredItems } from './_components/delivered-items'
import { OwnItems } from './_components/own-items'
import { Profiles } from './_components/profiles'

export const metadata: Metadata = { title: 'Workspace catalogue' }

export default async function WorkspaceCataloguePage() {
  const actor = await requireActor(paths.workspaceCatalogue())
  const template = await readOrNotFound(() => getTemplate(actor))
  const { version, content, mayEdit, versions } = template
  return (
    <>
      <PageHead
        title="The workspace’s catalogue"
        over={version === 0 ? 'As delivered' : `Version ${version}`}
        under={
          <p>
            Each change creates a version. A review keeps the version that it started with and is offered the newest
            one, with its effect. The workspace’s limits and flex tests are part of the catalogue and have pages of
            their own.
          </p>
        }
        actions={
          <>
            <LinkButton href={paths.catalogue()} weight="quiet">
              As shown in reviews, with sources
            </LinkButton>
            <LinkButton href={paths.catalogue('delivered')} weight="quiet">
              As delivered
            </LinkButton>
          </>
        }
      />
      <PageSection title="Own items">
        <OwnItems key={version} items={content.ownItems} version={version} mayEdit={mayEdit} />
      </PageSection>
      <PageSection title="Delivered items">
        <DeliveredItems
          key={version}
          items={Object.values(listItemTexts())}
          changes={content.itemChanges}
          version={version}
          mayEdit={mayEdit}
        />
      </PageSection>
      <PageSection title="Profiles">
        <Profiles
          key={version}
          delivered={DELIVERED_PROFILES}
          own={content.profiles ?? []}
          questions={{
            ...listItemQuestions(),
            ...Object.fromEntries(content.ownItems.map(({ id, question }) => [id, question])),
          }}
          version={version}
          mayEdit={mayEdit}
        />
      </PageSection>
      {mayEdit && (
        <PageSection title="File">
          <CatalogueFile key={version} />
        </PageSection>
      )}
      <PageSection title="Versions">
        <Versions versions={versions} />
      </PageSection>
    </>
  )
}

const COLUMNS = {
  version: { head: 'Version', isNumeric: true, isRowHead: true },
  what: { head: 'What changed' },
  by: { head: 'By', className: 'small' },
  reviewsInProgress: { head: 'Reviews in progress', isNumeric: true },
} satisfies Columns

function Versions({ versions }: Pick<TemplateView, 'versions'>) {
  if (versions.length === 0) return <p className="muted">The catalogue is as delivered.</p>
  return (
    <DataTable label="Versions of the catalogue" columns={COLUMNS}>
      {versions.map((entry) => (
        <DataRow
          key={entry.version}
          columns={COLUMNS}
          cells={{
            version: entry.version,
            what: (
              <>
                {entry.summary}
                {entry.reason !== '' && <span className="block small muted">{entry.reason}</span>}
              </>
            ),
            by: (
              <>
                {entry.changedBy.name}, <Timestamp at={entry.changedAt} dateOnly />
              </>
            ),
            reviewsInProgress: countOf(entry.openReviewCount, 'review'),
          }}
        />
      ))}
    </DataTable>
  )
}
