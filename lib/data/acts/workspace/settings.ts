import 'server-only'
import type { SettingsInput } from '@/lib/inputs'
import { write } from '../../consequences/write'
import { type Actor, requireInWorkspace } from '../../records/authorization'
import { loadWorkspace, WORKSPACE_ID, type WorkspaceSettings } from '../../records/settings-record'
import { refuseStale } from '../../store/errors'
import type { ActResult } from '../../views'

export function changeSettings(actor: Actor, input: SettingsInput): Promise<ActResult<{ version: number }>> {
  return write(actor, 'change-settings', input, async ({ tx, rights, record }) => {
    requireInWorkspace(rights, 'settings:edit')
    const before = await loadWorkspace(tx)
    if (before.version !== input.seenVersion) refuseStale(input.seenVersion, before.version, [], 'the settings')
    const settings: WorkspaceSettings = {
      requiredSignatures: input.requiredSignatures,
      signingCapacities: input.signingCapacities,
      artworkRequired: input.artworkRequired,
      invitationDays: input.invitationDays,
    }
    const version = before.version + 1
    await tx.workspace.update({
      where: { id: WORKSPACE_ID },
      data: { name: input.workspaceName, settingsJson: JSON.stringify(settings), version },
    })
    await record({
      action: 'settings-changed',
      subject: { kind: 'workspace', id: WORKSPACE_ID },
      details: {
        before: toDetails(before.name, before.settings),
        after: toDetails(input.workspaceName, settings),
      },
    })
    return { version }
  })
}

function toDetails(name: string, { signingCapacities, ...settings }: WorkspaceSettings) {
  return { name, ...settings, signingCapacities: signingCapacities.map((capacity) => ({ ...capacity })) }
}
