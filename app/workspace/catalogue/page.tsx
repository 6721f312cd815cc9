import type { Metadata } from 'next'
import { listItemTexts } from '@/app/_components/review/catalogue-texts'
import { countOf } from '@/app/_components/review/words'
import { paths } from '@/app/_components/shell/paths'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { LinkButton } from '@/app/_components/ui/button'
import { PageHead, Section } from '@/app/_components/ui/section'
import { TableFrame } from '@/app/_components/ui/table-frame'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { getTemplate, type TemplateView } from '@/lib/data'
import { DeliveredItems } from './_components/delivered-items'
import { OwnItems } from './_components/own-items'

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
            one, with its effect. The workspace’s limits are part of the catalogue and are set on the workspace page.
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
      <Section title="Own items">
        <OwnItems key={version} items={content.ownItems} version={version} mayEdit={mayEdit} />
      </Section>
      <Section title="Delivered items">
        <DeliveredItems
          key={version}
          items={Object.values(listItemTexts())}
          changes={content.itemChanges}
          version={version}
          mayEdit={mayEdit}
        />
      </Section>
      <Section title="Versions">
        <Versions versions={versions} />
      </Section>
    </>
  )
}

function Versions({ versions }: Pick<TemplateView, 'versions'>) {
  if (versions.length === 0) return <p className="muted">The catalogue is as delivered.</p>
  return (
    <TableFrame label="Versions of the catalogue">
      <table className="ledger" data-stack>
        <thead>
          <tr>
            <th scope="col" className="num">
              Version
            </th>
            <th scope="col">What changed</th>
            <th scope="col">By</th>
            <th scope="col" className="num">
              Reviews in progress
            </th>
          </tr>
        </thead>
        <tbody>
          {versions.map((entry) => (
            <tr key={entry.version}>
              <th scope="row" className="num">
                {entry.version}
              </th>
              <td>
                {entry.summary}
                {entry.reason !== '' && <span className="block small muted">{entry.reason}</span>}
              </td>
              <td className="small">
                {entry.changedBy.name}, <Timestamp at={entry.changedAt} dateOnly />
              </td>
              <td className="num" data-label="reviews under way">
                {countOf(entry.openReviewCount, 'review')}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  )
}
