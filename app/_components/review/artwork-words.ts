import type { ArtworkFileFacts } from '@/lib/artwork'

/** `copper, top, layer 1`. */
export function describeRole({ kind, role }: Pick<ArtworkFileFacts, 'kind' | 'role'>): string {
  if (role.role === null) return NAMES_OF_KINDS[kind] ?? 'not known'
  return [
    role.role,
    ...(role.side === null ? [] : [role.side]),
    ...(role.layerNumber === null ? [] : [`layer ${role.layerNumber}`]),
    ...(role.span === null ? [] : [`layers ${role.span[0]} to ${role.span[1]}`]),
  ].join(', ')
}

/** Files that are no layer. */
const NAMES_OF_KINDS: Readonly<Partial<Record<ArtworkFileFacts['kind'], string>>> = {
  job: 'job file',
  netlist: 'netlist',
  ipc2581: 'IPC-2581 data',
  other: 'not read',
}
