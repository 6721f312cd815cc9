import 'server-only'
import type { ProjectInput } from '@/lib/inputs'
import { write } from '../../consequences/write'
import { type Actor, requireInWorkspace } from '../../records/authorization'
import { foldName } from '../../records/names'
import { refuseField } from '../../store/errors'
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
