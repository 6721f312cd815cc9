'use client'

import { PeopleTable } from '@/app/_components/people/people-table'
import { ROLE_WORDS } from '@/app/_components/review/words'
import type { ProjectMemberView } from '@/lib/data'
import { OWN_ROLES } from '@/lib/review'
import { removeMember, setMembershipRole } from '../../actions'

interface ProjectPeopleProps {
  readonly projectId: string
  readonly people: readonly ProjectMemberView[]
  readonly mayManage: boolean
  readonly ownUserId: string
}

const ROLES = OWN_ROLES.map((value) => ({ value, label: ROLE_WORDS[value] }))

export function ProjectPeople({ projectId, people, mayManage, ownUserId }: ProjectPeopleProps) {
  return (
    <PeopleTable
      label="People"
      people={people}
      scope={{ projectId }}
      ownUserId={ownUserId}
      mayManage={mayManage}
      roleWords={ROLE_WORDS}
      roles={ROLES}
      mayChangeRole={({ role, user }) => role !== 'fabricator' && user.id !== ownUserId}
      setRole={setMembershipRole}
      remove={removeMember}
      removal={{
        from: 'project',
        text: 'They will no longer see it. What they wrote and signed stays under their name.',
      }}
      more={{ company: { head: 'Company' } }}
      listMore={({ company }) => ({ company: company.name })}
    />
  )
}
