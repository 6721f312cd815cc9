import 'server-only'
import { type Actor, requireInWorkspace } from '../records/authorization'
import { loadWorkspace } from '../records/settings-record'
import type { SettingsView } from '../views'
import { read } from './read'

/** For an admin. */
export function getSettingsView(actor: Actor): Promise<SettingsView> {
  return read(actor, async ({ tx, rights }) => {
    requireInWorkspace(rights, 'workspace:view')
    const { name, version, settings } = await loadWorkspace(tx)
    return { version, workspaceName: name, ...settings }
  })
}
