import 'server-only'
import { listProfiles } from '@/lib/engine/catalogue'
import type { PreviewCatalogueInput } from '@/lib/inputs'
import { compareTemplates, makeCatalogueFile, readCatalogueFile } from '@/lib/review'
import { type Actor, mayInProject, requireInWorkspace, requireProject } from '../records/authorization'
import { loadLatestTemplate, readProfileIds } from '../records/template-record'
import { outcomeOf, refuseInvalid } from '../store/errors'
import type { ActResult, CatalogueImportView, FileDownload, ProjectProfilesView } from '../views'
import { read } from './read'

/** The profiles that a project follows; for those who may choose, those that there are besides. */
export function getProjectProfiles(actor: Actor, projectId: string): Promise<ProjectProfilesView> {
  return read(actor, async ({ tx, rights }) => {
    const { id, name } = await requireProject(tx, rights, projectId)
    const { profilesJson, profilesVersion } = await tx.project.findUniqueOrThrow({ where: { id } })
    const { content } = await loadLatestTemplate(tx)
    const profiles = listProfiles(content)
    const mayChoose = mayInProject(rights, 'project:edit', id)
    return {
      projectId: id,
      projectName: name,
      version: profilesVersion,
      followed: readProfileIds(profilesJson).map((profileId) => {
        const profile = profiles.find((candidate) => candidate.id === profileId)
        return { id: profileId, name: profile?.name ?? profileId, purpose: profile?.purpose ?? '' }
      }),
      choices: mayChoose ? profiles : [],
      mayChoose,
    }
  })
}

/** The workspace's catalogue as a file that another workspace can import. */
export function getCatalogueFile(actor: Actor): Promise<FileDownload> {
  return read(actor, async ({ tx, rights }) => {
    requireInWorkspace(rights, 'catalogue:edit')
    const { version, content } = await loadLatestTemplate(tx)
    return {
      fileName: `catalogue-version-${version}.json`,
      mediaType: 'application/json',
      bytes: new TextEncoder().encode(makeCatalogueFile(content)),
    }
  })
}

/** What a file would make of the workspace's catalogue. Writes nothing; taking it over is `importCatalogue`. */
export function previewCatalogue(actor: Actor, input: PreviewCatalogueInput): Promise<ActResult<CatalogueImportView>> {
  return outcomeOf(() =>
    read(actor, async ({ tx, rights }) => {
      requireInWorkspace(rights, 'catalogue:edit')
      const reading = readCatalogueFile(input.text)
      if (!reading.ok) refuseInvalid(reading.issues, 'The file cannot be imported.')
      const { version, content } = await loadLatestTemplate(tx)
      const { ownItems, itemChanges, limits, profiles = [] } = reading.content
      return {
        version,
        changes: compareTemplates(content, reading.content).map(({ sentence }) => sentence),
        counts: {
          ownItems: ownItems.length,
          itemChanges: itemChanges.length,
          limits: limits.length,
          profiles: profiles.length,
        },
      }
    }),
  )
}
