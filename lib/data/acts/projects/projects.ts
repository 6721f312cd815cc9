import 'server-only'
import type { ArchiveProjectInput, ChangeProjectInput, ProjectInput } from '@/lib/inputs'
import { OPEN_STAGES } from '@/lib/review'
import { write } from '../../consequences/write'
import { type Actor, requireInWorkspace, requireProject } from '../../records/authorization'
import { foldName } from '../../records/names'
import { refuseClash, refuseField } from '../../store/errors'
import type { ActResult } from '../../views'

/** Anyone who creates a project is its first lead, for the company they work for. */
export function createProject(actor: Actor, input: ProjectInput): Promise<ActResult<{ projectId: string }>> {
  return write(actor, 'create-project', input, async ({ tx, rights, at, record }) => {
    requireInWorkspace(rights, 'project:create')
    const nameKey = foldName(input.name)
    if ((await tx.project.findUnique({ where: { nameKey }, select: { id: true } })) !== null) {
      refuseField('name', 'taken', `"${input.name}" is the name of another project`)
    }
    const company = await tx.company.findFirst({
      where: { kind: 'team' },
      orderBy: { createdAt: 'asc' },
    })
    if (company === null) throw new Error('the workspace has no team company')
    const project = await tx.project.create({
      data: { name: input.name, nameKey, description: input.description, createdById: rights.userId, createdAt: at },
    })
    await tx.membership.create({
      data: {
        userId: rights.userId,
        projectId: project.id,
        companyId: company.id,
        role: 'lead',
        createdAt: at,
      },
    })
    await record({
      action: 'project-created',
      subject: { kind: 'project', id: project.id },
      projectId: project.id,
      details: { name: project.name },
    })
    return { projectId: project.id }
  })
}

/**
 * Gives a project another name or description. The name stays while a revision awaits signature, because a signature names the project, and once
 * one is released: drawings and packages carry it, and a drawing made later of the same revision must not say another.
 */
export function changeProject(actor: Actor, input: ChangeProjectInput): Promise<ActResult<{ projectId: string }>> {
  return write(actor, 'change-project', input, async ({ tx, rights, record }) => {
    const { id } = await requireProject(tx, rights, input.projectId, 'project:edit')
    const before = await tx.project.findUniqueOrThrow({ where: { id } })
    if (before.name !== input.seenName) {
      refuseClash(`Somebody renamed the project to "${before.name}" since you opened it. Nothing was saved.`)
    }
    if (before.name === input.name && before.description === input.description) return { projectId: id }
    const nameKey = foldName(input.name)
    if (before.name !== input.name) {
      const other = await tx.project.findUnique({ where: { nameKey }, select: { id: true } })
      if (other !== null && other.id !== id) {
        refuseField('name', 'taken', `"${input.name}" is the name of another project`)
      }
      const release = await tx.release.findFirst({
        where: { revision: { projectId: id } },
        select: { revision: { select: { label: true } } },
      })
      if (release !== null) {
        const { label } = release.revision
        refuseClash(`Revision ${label} was released under this name: its drawing and package carry it. The name stays.`)
      }
      const signing = await tx.revision.findFirst({
        where: { projectId: id, stage: 'awaiting-signature' },
        select: { label: true },
      })
      if (signing !== null) {
        refuseClash(`Revision ${signing.label} awaits signature under this name. Rename the project before or after.`)
      }
    }
    await tx.project.update({ where: { id }, data: { name: input.name, nameKey, description: input.description } })
    await record({
      action: 'project-changed',
      subject: { kind: 'project', id },
      projectId: id,
      details: {
        name: input.name,
        before: before.name,
        description: input.description,
        descriptionBefore: before.description,
        reason: input.reason,
      },
    })
    return { projectId: id }
  })
}

/**
 * Sets a project aside in lists, or brings it back. Only with nothing open in it: what is released or withdrawn can be read and fetched as before, and
 * a new revision needs the project back.
 */
export function archiveProject(actor: Actor, input: ArchiveProjectInput): Promise<ActResult<{ projectId: string }>> {
  return write(actor, 'archive-project', input, async ({ tx, rights, at, record }) => {
    const { id } = await requireProject(tx, rights, input.projectId, 'project:edit')
    const { archivedAt } = await tx.project.findUniqueOrThrow({ where: { id }, select: { archivedAt: true } })
    if ((archivedAt !== null) === input.isArchived) return { projectId: id }
    if (input.isArchived) {
      const open = await tx.revision.findMany({
        where: { projectId: id, stage: { in: [...OPEN_STAGES] } },
        select: { label: true },
        orderBy: { labelKey: 'asc' },
      })
      if (open.length > 0) {
        const labels = open.map(({ label }) => label).join(', ')
        refuseClash(`Open: ${labels}. Release or withdraw every revision before the project is archived.`)
      }
    }
    await tx.project.update({
      where: { id },
      data: input.isArchived
        ? { archivedAt: at, archivedById: rights.userId }
        : { archivedAt: null, archivedById: null },
    })
    await record({
      action: input.isArchived ? 'project-archived' : 'project-brought-back',
      subject: { kind: 'project', id },
      projectId: id,
      details: { reason: input.reason },
    })
    return { projectId: id }
  })
}
