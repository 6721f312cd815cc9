import 'server-only'
import { listProfiles } from '@/lib/engine/catalogue'
import type { ChooseProfilesInput } from '@/lib/inputs'
import { write } from '../../consequences/write'
import { type Actor, requireProject } from '../../records/authorization'
import { loadLatestTemplate, readProfileIds, writeProfileIds } from '../../records/template-record'
import { refuseField, refuseStale } from '../../store/errors'
import type { ActResult } from '../../views'

/**
 * Chooses the profiles that a project follows. New revisions begin with them; those under way are offered them, with the effect, and their results show
 * as made with others until then.
 */
export function chooseProfiles(actor: Actor, input: ChooseProfilesInput): Promise<ActResult<{ version: number }>> {
  return write(actor, 'choose-profiles', input, async ({ tx, rights, record }) => {
    const { id } = await requireProject(tx, rights, input.projectId, 'project:edit')
    const project = await tx.project.findUniqueOrThrow({ where: { id } })
    if (project.profilesVersion !== input.seenVersion) {
      refuseStale(input.seenVersion, project.profilesVersion, [], "the project's choice of profiles")
    }
    const known = new Map(listProfiles((await loadLatestTemplate(tx)).content).map((profile) => [profile.id, profile]))
    const unknown = input.profileIds.find((profileId) => !known.has(profileId))
    if (unknown !== undefined) refuseField('profileIds', 'unknown', `there is no profile "${unknown}"`)
    const profilesJson = writeProfileIds(input.profileIds)
    if (profilesJson === project.profilesJson) return { version: project.profilesVersion }
    const version = project.profilesVersion + 1
    await tx.project.update({ where: { id }, data: { profilesJson, profilesVersion: version } })
    const name = (ids: readonly string[]) => ids.map((profileId) => known.get(profileId)?.name ?? profileId).join(', ')
    await record({
      action: 'profiles-chosen',
      subject: { kind: 'project', id },
      projectId: id,
      details: {
        profiles: name(readProfileIds(profilesJson)),
        before: name(readProfileIds(project.profilesJson)),
        reason: input.reason,
      },
    })
    return { version }
  })
}
