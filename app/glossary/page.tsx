import type { Metadata } from 'next'
import { requireActor } from '@/app/_components/shell/require-actor'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { PageHead } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { GLOSSARY } from '@/lib/engine/glossary'
import { citeSource } from '@/lib/engine/sources'

export const metadata: Metadata = { title: 'Glossary' }

const COLUMNS = {
  term: { head: 'Term', isRowHead: true, minWidthRem: 12 },
  meaning: { head: 'Meaning here', minWidthRem: 24 },
  forms: { head: 'Also written', minWidthRem: 10 },
  source: { head: 'See', minWidthRem: 12, className: 'small' },
} as const satisfies Columns

/** The terms that the pages explain where they use them. */
export default async function GlossaryPage() {
  await requireActor(paths.glossary())
  return (
    <>
      <PageHead
        title="Glossary"
        under={
          <p>
            {GLOSSARY.length} terms as they are used here, in our words. Where a standard is named, its definition
            governs.
          </p>
        }
      />
      <DataTable label="Terms" columns={COLUMNS}>
        {GLOSSARY.map(({ id, term, meaning, forms, sourceKey }) => (
          <DataRow
            key={id}
            id={id}
            columns={COLUMNS}
            cells={{ term, meaning, forms: forms.join(', '), source: citeSource(sourceKey) }}
          />
        ))}
      </DataTable>
    </>
  )
}
