import Link from 'next/link'
import { describeSharing } from '@/app/_components/fabrication/sharing-words'
import { paths } from '@/app/_components/shell/paths'
import { TableFrame } from '@/app/_components/ui/table-frame'
import type { ProjectFabricatorView } from '@/lib/data'

const STATE_WORDS: Record<ProjectFabricatorView['state'], string> = {
  asked: 'asked, awaiting consent',
  'takes-part': 'takes part',
  declined: 'declined',
  ended: 'no longer takes part',
}

/** Fabricators of the project: whether each agreed to take part, and what it lets the team have. */
export function FabricatorList({ fabricators }: { fabricators: readonly ProjectFabricatorView[] }) {
  return (
    <TableFrame label="Fabricators">
      <table className="ledger" data-stack>
        <thead>
          <tr>
            <th scope="col">Company</th>
            <th scope="col">State</th>
            <th scope="col">Shared with the team</th>
          </tr>
        </thead>
        <tbody>
          {fabricators.map((company) => (
            <tr key={company.id}>
              <th scope="row">
                {company.state === 'takes-part' ? (
                  <Link href={paths.company(company.id)}>{company.name}</Link>
                ) : (
                  company.name
                )}
                {company.isOfProjectAlone && (
                  <p className="small muted font-normal">this project only, name not confirmed</p>
                )}
              </th>
              <td data-label="state">
                {company.isOfProjectAlone && company.state === 'asked' ? 'invited' : STATE_WORDS[company.state]}
              </td>
              <td data-label="what the team gets">
                {company.state === 'takes-part' ? describeSharing(company.sharing) : 'Nothing'}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  )
}
