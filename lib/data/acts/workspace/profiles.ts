import 'server-only'
import type { AddProfileInput, ChangeProfileInput, RemoveProfileInput } from '@/lib/inputs'
import { write } from '../../consequences/write'
import type { Actor } from '../../records/authorization'
import { readProfileIds } from '../../records/template-record'
import { NotFoundError, refuseClash } from '../../store/errors'
import type { ActResult } from '../../views'
import { type ChangedTemplate, makeOwnId, requireCatalogueSeen, storeTemplate } from './templates'

/** Adds a profile of the workspace's own: a copy of a delivered one, or a new one. No project follows it yet. */
export function addProfile(
  actor: Actor,
  input: AddProfileInput,
): Promise<ActResult<ChangedTemplate & { profileId: string }>> {
  return write(actor, 'add-profile', input, async (context) => {
    const { content, version } = await requireCatalogueSeen(context, input.seenVersion)
    const profile = { ...input.profile, id: makeOwnId(input.profile.name, 'profile', version) }
    const after = { ...content, profiles: [...(content.profiles ?? []), profile] }
    return { ...(await storeTemplate(context, after, input.reason)), profileId: profile.id }
  })
}

/** Reviews that are under way keep the version that they go by, until they are brought up to the new one. */
export function changeProfile(actor: Actor, input: ChangeProfileInput): Promise<ActResult<ChangedTemplate>> {
  return write(actor, 'change-profile', input, async (context) => {
    const { content } = await requireCatalogueSeen(context, input.seenVersion)
    const { profiles = [] } = content
    if (!profiles.some(({ id }) => id === input.profile.id)) throw new NotFoundError('profile')
    const changed = profiles.map((profile) => (profile.id === input.profile.id ? input.profile : profile))
    return storeTemplate(context, { ...content, profiles: changed }, input.reason)
  })
}

/** A profile that a project follows stays: without it, what it asks for would be asked no longer and nobody would be told. */
export function removeProfile(actor: Actor, input: RemoveProfileInput): Promise<ActResult<ChangedTemplate>> {
  return write(actor, 'remove-profile', input, async (context) => {
    const { content } = await requireCatalogueSeen(context, input.seenVersion)
    const { profiles: kept = [], ...others } = content
    if (!kept.some(({ id }) => id === input.profileId)) throw new NotFoundError('profile')
    const followed = await listFollowedIds(context.tx)
    if (followed.has(input.profileId)) {
      refuseClash(
        `Projects follow this profile: ${(followed.get(input.profileId) ?? []).join(', ')}. Choose others there first.`,
      )
    }
    const profiles = kept.filter(({ id }) => id !== input.profileId)
    return storeTemplate(context, profiles.length === 0 ? others : { ...others, profiles }, input.reason)
  })
}

/** Every profile that a project follows, with the names of those projects. */
export async function listFollowedIds(
  tx: Parameters<Parameters<typeof write>[3]>[0]['tx'],
): Promise<ReadonlyMap<string, readonly string[]>> {
  const projects = await tx.project.findMany({
    where: { profilesJson: { not: '[]' } },
    select: { name: true, profilesJson: true },
    orderBy: { nameKey: 'asc' },
  })
  const followed = new Map<string, string[]>()
  for (const { name, profilesJson } of projects) {
    for (const id of readProfileIds(profilesJson)) followed.set(id, [...(followed.get(id) ?? []), name])
  }
  return followed
}
