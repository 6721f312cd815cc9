import 'server-only'
import { createHash, timingSafeEqual } from 'node:crypto'
import { dropSetupCode, getSettings, now, readSetupCode } from '@/lib/config'
import type { FirstAdminInput } from '@/lib/inputs'
import { appendToTrail } from '../../consequences/trail'
import { inWriteTransaction } from '../../consequences/write'
import { foldName } from '../../records/names'
import { requireGoodPassword } from '../../records/password-rules'
import { hashPassword } from '../../records/passwords'
import { DEFAULT_SETTINGS, WORKSPACE_ID } from '../../records/settings-record'
import type { Visit } from '../../records/visit'
import { db } from '../../store/client'
import { outcomeOf, refuseClash, refuseField } from '../../store/errors'
import type { ActResult } from '../../views'
import { requireAttempt } from './password-confirmation'

export async function isWorkspaceEmpty(): Promise<boolean> {
  return (await db().user.findFirst({ select: { id: true } })) === null
}

const TAKEN = 'The workspace already has its first account. Sign in instead.'

/**
 * First visit to an empty installation: workspace, first admin, their team and their first project, of which they are
 * the lead. Refused once anybody exists, and without the code that the server printed on its console: otherwise the first
 * stranger to find the address would own it.
 */
export function createFirstAdmin(
  input: FirstAdminInput,
  visit: Visit,
): Promise<ActResult<{ userId: string; projectId: string }>> {
  return outcomeOf(async () => {
    if (!(await isWorkspaceEmpty())) refuseClash(TAKEN)
    await requireSetupCode(input.setupCode, visit)
    requireGoodPassword('password', input.password, input)
    const passwordHash = await hashPassword(input.password, { sourceKey: visit.sourceKey })
    const made = await inWriteTransaction(async (tx) => {
      if ((await tx.user.findFirst({ select: { id: true } })) !== null) refuseClash(TAKEN)
      const at = now()
      await tx.workspace.create({
        data: {
          id: WORKSPACE_ID,
          name: input.workspaceName,
          settingsJson: JSON.stringify(DEFAULT_SETTINGS),
          createdAt: at,
        },
      })
      const user = await tx.user.create({
        data: { email: input.email, name: input.name, passwordHash, isAdmin: true, createdAt: at },
      })
      const company = await tx.company.create({
        data: { kind: 'team', name: input.companyName, nameKey: foldName(input.companyName), createdAt: at },
      })
      const project = await tx.project.create({
        data: {
          name: input.projectName,
          nameKey: foldName(input.projectName),
          description: '',
          createdById: user.id,
          createdAt: at,
        },
      })
      await tx.membership.create({
        data: { userId: user.id, projectId: project.id, companyId: company.id, role: 'lead', createdAt: at },
      })
      const actor = { userId: user.id, name: user.name }
      await appendToTrail(tx, at, actor, {
        action: 'workspace-created',
        subject: { kind: 'workspace', id: WORKSPACE_ID },
        details: { name: input.workspaceName },
      })
      await appendToTrail(tx, at, actor, {
        action: 'project-created',
        subject: { kind: 'project', id: project.id },
        projectId: project.id,
        details: { name: project.name },
      })
      return { userId: user.id, projectId: project.id }
    })
    dropSetupCode(getSettings().dataFolder)
    return made
  })
}

/** Counted by source, so that a stranger's guesses do not keep out the person who reads the console. */
async function requireSetupCode(typed: string, visit: Visit): Promise<void> {
  await requireAttempt({ subject: 'set-up', visit, apart: `set-up ${visit.sourceKey}` }, null)
  const code = readSetupCode(getSettings().dataFolder)
  if (code === null || !isSameCode(typed, code)) {
    refuseField('setupCode', 'wrong', 'is not the code that the server printed when it started')
  }
}

function isSameCode(typed: string, code: string): boolean {
  const digest = (text: string) =>
    createHash('sha256')
      .update(text.toUpperCase().replaceAll(/[^A-Z0-9]/g, ''))
      .digest()
  return timingSafeEqual(digest(typed), digest(code))
}
