import 'server-only'

/** Where a request comes from, as far as the server itself can tell: never what the request says of itself. */
export interface Visit {
  /** Hash of the network address that the request came from. */
  readonly sourceKey: string
  /** Whether it was made on this machine, to this machine, with nothing in between that forwards. */
  readonly isThisMachine: boolean
  /** Browser and system as they call themselves, such as `Firefox on Linux`. */
  readonly device: string
  /** The browser's own mark and whose it is, where people have signed in on it before; signed, so it can be believed. */
  readonly known: KnownDevice | null
}

export interface KnownDevice {
  readonly deviceId: string
  readonly userIds: readonly string[]
}

/** Programs of this installation: the demo scenario, commands, and whatever runs beside the server. */
export const OWN_VISIT: Visit = { sourceKey: 'this-program', isThisMachine: true, device: 'a command', known: null }

export function isKnownDevice(visit: Visit, userId: string): boolean {
  return visit.known?.userIds.includes(userId) ?? false
}
