import type { Metadata } from 'next'
import Link from 'next/link'
import { listItemTexts, listTextsOf } from '@/app/_components/review/catalogue-texts'
import { requireActor } from '@/app/_components/shell/require-actor'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { getCatalogueInForce } from '@/lib/data'
import {
  CATALOGUE,
  type CatalogueTemplate,
  DELIVERED_TEMPLATE,
  getLimitDefinition,
  type LimitKey,
  makeCatalogue,
  SEVERITIES,
  type SwitchedOffItem,
  USUAL_ITEMS,
} from '@/lib/engine/catalogue'
import { countOf } from '@/lib/engine/units'
import { type CatalogueEntry, CatalogueList } from './_components/catalogue-list'

export const metadata: Metadata = { title: 'Catalogue' }

interface CataloguePageProps {
  readonly searchParams: Promise<{ readonly edition?: string | string[] }>
}

/** The catalogue that a new review would go by: for the team the workspace's own edition, where it has one. */
export default async function CataloguePage({ searchParams }: CataloguePageProps) {
  const actor = await requireActor(paths.catalogue())
  const [{ version, content }, { edition }] = [await getCatalogueInForce(actor), await searchParams]
  const isDelivered = version === 0 || edition === 'delivered'
  const template = isDelivered ? DELIVERED_TEMPLATE : content
  const { items, switchedOff } = makeCatalogue(template)
  const changed = new Map(template.itemChanges.map((change) => [change.itemId, change.reason]))
  const own = new Set(template.ownItems.map(({ id }) => id))
  const texts: ReturnType<typeof listTextsOf> = { ...listItemTexts(), ...listTextsOf(template) }
  const waiting = CATALOGUE.filter(({ onlyWithProfile }) => onlyWithProfile === true)
  const entries = [...items, ...waiting].flatMap((item): CatalogueEntry[] => {
    const text = texts[item.id]
    if (text === undefined) return []
    const note = own.has(item.id) ? 'An item of this workspace.' : changed.get(item.id)
    const ofProfiles = item.onlyWithProfile === true ? 'Asked only where a profile of the project switches it on.' : ''
    return [
      {
        ...text,
        limits: item.limits.map((key) => describeLimit(key, template)),
        workspaceNote: [
          note === undefined || own.has(item.id) ? (note ?? '') : `Changed by the workspace: ${note}`,
          ofProfiles,
        ]
          .filter((said) => said !== '')
          .join(' '),
      },
    ]
  })
  return (
    <>
      <PageHead
        title="Catalogue of review items"
        over={version === 0 ? undefined : isDelivered ? 'As delivered' : `The workspace’s version ${version}`}
        under={
          <>
            <p>
              {items.length} items{waiting.length > 0 && `, and ${waiting.length} that profiles switch on`}, with the
              source of every limit. Workspace and fabricators may set limits of their own; a review then says whose it
              used.
            </p>
            {version > 0 && (
              <p>
                {isDelivered ? (
                  <>
                    This is the catalogue as delivered. New reviews use{' '}
                    <Link href={paths.catalogue()}>the workspace’s version {version}</Link>.
                  </>
                ) : (
                  <>
                    New reviews use this version; a review in progress keeps its own until it is updated.{' '}
                    <Link href={paths.workspaceCatalogue()}>Changes made by the workspace</Link>,{' '}
                    <Link href={paths.catalogue('delivered')}>the {USUAL_ITEMS.length} items as delivered</Link>.
                  </>
                )}
              </p>
            )}
          </>
        }
      />
      <CatalogueList entries={entries} severities={SEVERITIES} />
      {switchedOff.length > 0 && <SwitchedOff items={switchedOff} />}
    </>
  )
}

/** The workspace's limit where the edition has one, which then says so. */
function describeLimit(key: LimitKey, { limits }: CatalogueTemplate): CatalogueEntry['limits'][number] {
  const { label, unit, sense, value, note } = getLimitDefinition(key)
  const own = limits.find((limit) => limit.key === key)
  if (own === undefined) return { key, label, unit, sense, value, note }
  return {
    key,
    label,
    unit,
    sense,
    value: own.value,
    note: `set by the workspace${own.note === '' ? '' : `: ${own.note}`}`,
  }
}

function SwitchedOff({ items }: { items: readonly SwitchedOffItem[] }) {
  return (
    <PageSection title={`Switched off by the workspace: ${countOf(items.length, 'item')}`}>
      <ul className="changes">
        {items.map(({ itemId, question, reason }) => (
          <li key={itemId}>
            {question} <span className="muted">{reason}</span>
          </li>
        ))}
      </ul>
    </PageSection>
  )
}
