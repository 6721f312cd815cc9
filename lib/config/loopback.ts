import 'server-only'
import { getSettings, type Settings } from './environment'
import { isLoopbackHost } from './loopback-host'

/**
 * Whether only programs on this machine can reach the server. A public address that names another host counts as
 * reachable, whatever the server listens on: something forwards to it.
 */
export function isLoopbackOnly({ host, publicUrl }: Pick<Settings, 'host' | 'publicUrl'> = getSettings()): boolean {
  return isLoopbackHost(host) && isLoopbackHost(new URL(publicUrl).hostname)
}
