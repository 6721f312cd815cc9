import 'server-only'
import { z } from 'zod'
import { DEFAULT_REVIEW_SETTINGS, type ReviewSettings } from '@/lib/review'
import type { TransactionClient } from '../store/client'

export const WORKSPACE_ID = 'workspace'

export interface WorkspaceSettings extends ReviewSettings {
  /** What a project's sign-off policy begins with: how many different people must sign. */
  readonly requiredSignatures: number
  /** The same: capacities in which somebody must sign. */
  readonly signingCapacities: readonly { readonly name: string }[]
  /** How long an invitation can be used. */
  readonly invitationDays: number
}

export const DEFAULT_SETTINGS: WorkspaceSettings = {
  ...DEFAULT_REVIEW_SETTINGS,
  requiredSignatures: 1,
  signingCapacities: [],
  invitationDays: 14,
}

const storedSettingsSchema = z.object({
  requiredSignatures: z.number().default(DEFAULT_SETTINGS.requiredSignatures),
  signingCapacities: z.array(z.object({ name: z.string() })).default([...DEFAULT_SETTINGS.signingCapacities]),
  artworkRequired: z.boolean().default(DEFAULT_SETTINGS.artworkRequired),
  invitationDays: z.number().default(DEFAULT_SETTINGS.invitationDays),
})

export interface WorkspaceRecord {
  readonly name: string
  readonly version: number
  readonly settings: WorkspaceSettings
}

/** The workspace with its settings; a setting that an older version did not know takes its default. */
export async function loadWorkspace(tx: TransactionClient): Promise<WorkspaceRecord> {
  const row = await tx.workspace.findUnique({ where: { id: WORKSPACE_ID } })
  if (row === null) return { name: '', version: 0, settings: DEFAULT_SETTINGS }
  return { name: row.name, version: row.version, settings: storedSettingsSchema.parse(JSON.parse(row.settingsJson)) }
}
