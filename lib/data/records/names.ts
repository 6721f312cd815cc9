import 'server-only'

/** A name as it is compared: two that differ in case, width or spacing alone count as the same. */
export function foldName(name: string): string {
  return name.normalize('NFKC').toLowerCase().replaceAll(/\s+/g, ' ').trim()
}

/** Where the names of companies that the workspace knows are unique. */
export const WORKSPACE_SCOPE = 'workspace'
