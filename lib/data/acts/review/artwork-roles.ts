import 'server-only'
import type { SayArtworkRoleInput } from '@/lib/inputs'
import { changeContent } from '../../consequences/changed-content'
import { write } from '../../consequences/write'
import { type Actor, requireRevision } from '../../records/authorization'
import { loadRevision } from '../../records/loaded-revision'
import { refuseField } from '../../store/errors'
import type { ActResult } from '../../views'

/** Says what a file of the artwork is for, or takes that back. It counts for these bytes, and the files are read again with it. */
export function setArtworkRole(actor: Actor, input: SayArtworkRoleInput): Promise<ActResult<null>> {
  return write(actor, 'say-artwork-role', input, async (context) => {
    const { tx, rights, at, record } = context
    const { revision } = await requireRevision(tx, rights, input.revisionId, 'revision:edit')
    const loaded = await loadRevision(tx, revision.id)
    const { fileName, sha256, role, side, layerNumber } = input
    const file = loaded.artwork.facts?.files.find((each) => each.name === fileName && each.sha256 === sha256)
    if (file === undefined) refuseField('fileName', 'unknown-file', 'is not one of the artwork files that were read')
    if (file.kind !== 'gerber' && file.kind !== 'drill') {
      refuseField('role', 'no-layer', 'applies to layers and drill files only')
    }
    if (layerNumber !== null && role !== 'copper') {
      refuseField('layerNumber', 'no-copper', 'is the place of a conductor layer; leave it empty for other files')
    }
    const said = role === null ? `role of ${fileName}: as the files say` : `role of ${fileName}: ${role}`
    await changeContent(context, loaded, { part: 'artwork', summary: [said] }, async () => {
      const before = loaded.record.artworkRoles.filter((each) => each.fileName === fileName)
      for (const { id } of before) await tx.artworkRole.update({ where: { id }, data: { withdrawnAt: at } })
      if (role !== null) {
        await tx.artworkRole.create({
          data: {
            revisionId: revision.id,
            fileName,
            sha256,
            role,
            side,
            layerNumber,
            setById: rights.userId,
            setAt: at,
          },
        })
      }
      await record({
        action: 'artwork-role-said',
        subject: { kind: 'revision', id: revision.id },
        projectId: revision.projectId,
        revisionId: revision.id,
        details: { fileName, role: role ?? '' },
      })
    })
    return null
  })
}
