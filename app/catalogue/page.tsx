import type { Metadata } from 'next'
import { listItemTexts } from '@/app/_components/review/catalogue-texts'
import { paths } from '@/app/_components/shell/paths'
import { requireActor } from '@/app/_components/shell/require-actor'
import { PageHead } from '@/app/_components/ui/section'
import { CATALOGUE, getLimitDefinition, SEVERITIES } from '@/lib/engine/catalogue'
import { CatalogueList } from './_components/catalogue-list'

export const metadata: Metadata = { title: 'Catalogue' }

export default async function CataloguePage() {
  await requireActor(paths.catalogue())
  const texts = listItemTexts()
  return (
    <>
      <PageHead
        title="Catalogue of review items"
        under={
          <p>
            {CATALOGUE.length} items, with the source of every limit. Workspace and fabricators may set limits of their
            own; a review then says whose it used.
          </p>
        }
      />
      <CatalogueList
        entries={CATALOGUE.flatMap((item) => {
          const text = texts[item.id]
          if (text === undefined) return []
          return [
            {
              ...text,
              limits: item.limits.map((key) => {
                const { label, unit, sense, value, note } = getLimitDefinition(key)
                return { key, label, unit, sense, value, note }
              }),
            },
          ]
        })}
        severities={SEVERITIES}
      />
    </>
  )
}
