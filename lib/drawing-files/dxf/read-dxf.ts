import { type FileIssue, Issues } from '../drawing'
import { readGroups } from './groups'
import { type DxfStructure, readStructure } from './structure'
import { readUnit, type StatedUnit } from './units'

/** A DXF file that was read, before it is known in which unit it is drawn. */
export interface DxfFile {
  readonly structure: DxfStructure
  readonly stated: StatedUnit
  readonly issues: readonly FileIssue[]
}

export type ReadDxf = { readonly ok: true; readonly file: DxfFile } | { readonly ok: false; readonly reason: string }

/**
 * Reads a text DXF of any version. A file that is none is refused with the reason; what is wrong within one is told with its line, and the rest
 * loads. Nothing in a file throws, and what it can make of time and memory is bounded.
 */
export function readDxf(bytes: Uint8Array): ReadDxf {
  const issues = new Issues()
  const groups = readGroups(bytes, issues)
  if (typeof groups === 'string') return { ok: false, reason: groups }
  const structure = readStructure(groups, issues)
  if (structure.entities.length === 0) {
    return { ok: false, reason: 'the file draws nothing: it has no section ENTITIES, or an empty one' }
  }
  return { ok: true, file: { structure, stated: readUnit(structure.header), issues: issues.all() } }
}
