import type { Metadata } from 'next'
import Link from 'next/link'
import { listItemQuestions } from '@/app/_components/review/catalogue-texts'
import { ProfileContents } from '@/app/_components/review/profile-contents'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { getProjectProfiles } from '@/lib/data'
import { ChooseProfilesForm } from './_components/choose-profiles-form'

interface ProfilesPageProps {
  params: Promise<{ projectId: string }>
}

export const metadata: Metadata = { title: 'Profiles of the project' }

/** The profiles that a project follows, and the choice of them. */
export default async function ProjectProfilesPage({ params }: ProfilesPageProps) {
  const { projectId } = await params
  const actor = await requireActor(paths.projectProfiles(projectId))
  const { projectName, version, followed, choices, mayChoose } = await readOrNotFound(() =>
    getProjectProfiles(actor, projectId),
  )
  const questions = listItemQuestions()
  return (
    <>
      <PageHead
        title="Profiles"
        over={<Link href={paths.project(projectId)}>{projectName}</Link>}
        under={
          <p>
            A profile lays items, severities, limits and required fields over the catalogue for one kind of part. Where
            several apply, the strictest holds. New revisions follow the choice; a review in progress keeps its own
            until it is updated.
          </p>
        }
      />
      <PageSection title="Followed">
        {followed.length === 0 ? (
          <p className="muted">This project follows no profile: the workspace’s catalogue holds as it is.</p>
        ) : (
          <ul className="plain-list">
            {followed.map(({ id, name, purpose }) => (
              <li key={id}>
                {name} <span className="muted">{purpose}</span>
              </li>
            ))}
          </ul>
        )}
      </PageSection>
      {mayChoose && (
        <PageSection title="Choice">
          <ChooseProfilesForm
            key={version}
            projectId={projectId}
            version={version}
            followedIds={followed.map(({ id }) => id)}
            choices={choices.map(({ id, name, purpose }) => ({ id, name, purpose }))}
          />
        </PageSection>
      )}
      {choices.length > 0 && (
        <PageSection title="What each asks for">
          {choices.map((profile) => (
            <details key={profile.id}>
              <summary>{profile.name}</summary>
              <ProfileContents profile={profile} questions={questions} />
            </details>
          ))}
        </PageSection>
      )}
    </>
  )
}
