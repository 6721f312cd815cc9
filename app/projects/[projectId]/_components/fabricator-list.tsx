import Link from 'next/link'
import { describeSharing } from '@/app/_components/fabrication/sharing-words'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { paths } from '@/lib/addresses'
import type { ProjectFabricatorView } from '@/lib/data'

const STATE_WORDS: Record<ProjectFabricatorView['state'], string> = {
  asked: 'asked, awaiting consent',
  'takes-part': 'takes part',
  declined: 'declined',
  ended: 'no longer takes part',
}

const COLUMNS = {
  company: { head: 'Company', isRowHead: true },
  state: { head: 'State' },
  sharedWithThe: { head: 'Shared with the team' },
} satisfies Columns

/** Fabricators of the project: whether each agreed to take part, and what it lets the team have. */
export function FabricatorList({ fabricators }: { fabricators: readonly ProjectFabricatorView[] }) {
  return (
    <DataTable label="Fabricators" columns={COLUMNS}>
      {fabricators.map((company) => (
        <DataRow
          key={company.id}
          columns={COLUMNS}
          cells={{
            company: (
              <>
                {company.state === 'takes-part' ? (
                  <Link href={paths.company(company.id)}>{company.name}</Link>
                ) : (
                  company.name
                )}
                {company.isOfProjectAlone && (
                  <p className="small muted font-normal">this project only, name not confirmed</p>
                )}
              </>
            ),
            state: company.isOfProjectAlone && company.state === 'asked' ? 'invited' : STATE_WORDS[company.state],
            sharedWithThe: company.state === 'takes-part' ? describeSharing(company.sharing) : 'Nothing',
          }}
        />
      ))}
    </DataTable>
  )
}
