import 'server-only'
import { readStoredDesign } from '@/lib/engine'
import type { Material } from '@/lib/engine/design'
import {
  type Actor,
  mayInWorkspace,
  mayOnRevision,
  readStage,
  requireInWorkspace,
  requireProject,
} from '../records/authorization'
import { getMaterial, type LibraryRecord, listOffered } from '../records/library-record'
import type { TransactionClient } from '../store/client'
import type { KeptConstructionView, LibraryView, PersonView, RevisionStartsView } from '../views'
import { read } from './read'

/** Everything that the workspace keeps and offers: for its teams and admins. */
export function getLibrary(actor: Actor): Promise<LibraryView> {
  return read(actor, async ({ tx, rights }) => {
    requireInWorkspace(rights, 'library:view')
    const materials = await listOffered(tx, 'material')
    const constructions = await listOffered(tx, 'construction')
    const people = await findPeople(tx, [...materials, ...constructions])
    return {
      materials: materials.map((entry) => ({ ...toEntryView(entry, people), material: getMaterial(entry) })),
      constructions: constructions.map((entry) => toConstructionView(entry, people)),
      mayEdit: mayInWorkspace(rights, 'library:edit'),
    }
  })
}

/** Materials of the workspace's own, as pickers offer them; none for people who are on no team. */
export function listOwnMaterials(actor: Actor): Promise<readonly Material[]> {
  return read(actor, async ({ tx, rights }) =>
    mayInWorkspace(rights, 'library:view') ? (await listOffered(tx, 'material')).map(getMaterial) : [],
  )
}

/** Each is read for the name of its design: so many of the newest. Our choice. */
const MAX_ELSEWHERE = 100

/** What a new revision of the project may begin with. */
export function getRevisionStarts(actor: Actor, projectId: string): Promise<RevisionStartsView> {
  return read(actor, async ({ tx, rights }) => {
    const project = await requireProject(tx, rights, projectId, 'revision:create')
    const constructions = mayInWorkspace(rights, 'library:view') ? await listOffered(tx, 'construction') : []
    const people = await findPeople(tx, constructions)
    const rows = await tx.revision.findMany({
      where: { projectId: { not: project.id }, project: { memberships: { some: { userId: rights.userId } } } },
      select: {
        id: true,
        label: true,
        stage: true,
        projectId: true,
        designJson: true,
        project: { select: { name: true } },
      },
      orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
      // One more tells that there are more.
      take: MAX_ELSEWHERE + 1,
    })
    const elsewhere = rows.slice(0, MAX_ELSEWHERE).filter((row) =>
      mayOnRevision(rights, 'revision:copy-elsewhere', {
        kind: 'revision',
        projectId: row.projectId,
        stage: readStage(row.stage),
        // Neither plays a part in who may copy.
        sharedWithCompanyIds: [],
        hasLiveSignature: false,
      }),
    )
    return {
      constructions: constructions.map((entry) => toConstructionView(entry, people)),
      elsewhere: elsewhere.map((row) => ({
        revisionId: row.id,
        label: row.label,
        designName: readStoredDesign(row.designJson).name,
        projectId: row.projectId,
        projectName: row.project.name,
      })),
      isElsewhereCut: rows.length > MAX_ELSEWHERE,
    }
  })
}

async function findPeople(
  tx: TransactionClient,
  entries: readonly LibraryRecord[],
): Promise<ReadonlyMap<string, PersonView>> {
  const ids = [...new Set(entries.map(({ changedById }) => changedById))]
  const users = ids.length === 0 ? [] : await tx.user.findMany({ where: { id: { in: ids } } })
  return new Map(users.map(({ id, name }) => [id, { id, name }]))
}

function toEntryView(
  { entryId, version, content, reason, changedById, changedAt }: LibraryRecord,
  people: ReadonlyMap<string, PersonView>,
) {
  return {
    entryId,
    version,
    name: content.name,
    reason,
    changedBy: people.get(changedById) ?? { id: changedById, name: 'somebody' },
    changedAt: changedAt.toISOString(),
  }
}

function toConstructionView(entry: LibraryRecord, people: ReadonlyMap<string, PersonView>): KeptConstructionView {
  const { purpose, design } = entry.content
  const { layers, zones } = design.construction
  return {
    ...toEntryView(entry, people),
    purpose,
    conductorLayerCount: layers.filter(({ kind }) => kind === 'conductor').length,
    layerCount: layers.length,
    zoneCount: zones.length,
    bendCount: design.bends.length,
  }
}
