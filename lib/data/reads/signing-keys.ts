import 'server-only'
import { now } from '@/lib/config'
import { type KeyRegister, makeKeyRegister } from '@/lib/package'
import type { Actor } from '../records/authorization'
import { loadWorkspace } from '../records/settings-record'
import { loadKeys, loadSigningKeys } from '../records/signing-keys'
import { readTimeStampCertificates } from '../records/time-stamps'
import type { FileDownload } from '../views'
import { read } from './read'

/** The signed register of the installation's keys. Public halves alone: everybody who has an account may hand it on. */
export function getKeyRegister(actor: Actor): Promise<KeyRegister> {
  return read(actor, async ({ tx }) => {
    const { name: workspace } = await loadWorkspace(tx)
    const { signingKeyPem } = await loadSigningKeys(tx)
    return makeKeyRegister({ workspace, issuedAt: now().toISOString(), keys: await loadKeys(tx) }, signingKeyPem)
  })
}

/** What packages are judged by here: the keys of the installation, and the authorities that it trusts for time stamps. */
export async function getPackageTrust(
  actor: Actor,
): Promise<{ readonly register: KeyRegister; readonly timeStampCaPem: string | undefined }> {
  return {
    register: await getKeyRegister(actor),
    timeStampCaPem: (await readTimeStampCertificates()) ?? undefined,
  }
}

export async function getKeyRegisterFile(actor: Actor): Promise<FileDownload> {
  const register = await getKeyRegister(actor)
  return {
    fileName: `keys-${register.issuedAt.slice(0, 10)}.json`,
    mediaType: 'application/json',
    bytes: new TextEncoder().encode(`${JSON.stringify(register, null, 2)}\n`),
  }
}
