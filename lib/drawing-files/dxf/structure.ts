import type { Issues } from '../drawing'
import { decodeName, type Group } from './groups'

/** One entity: its groups without those that only mark it (handles, owners, subclass marks). */
export interface Entity {
  readonly type: string
  readonly groups: readonly Group[]
  readonly line: number
}

export interface Block {
  readonly base: readonly [number, number]
  readonly entities: readonly Entity[]
}

/** A file as it is built up: nothing is drawn yet. */
export interface DxfStructure {
  readonly header: ReadonlyMap<string, string>
  readonly hiddenLayers: ReadonlySet<string>
  readonly blocks: ReadonlyMap<string, Block>
  readonly entities: readonly Entity[]
}

export function readStructure(groups: readonly Group[], issues: Issues): DxfStructure {
  const header = new Map<string, string>()
  const hiddenLayers = new Set<string>()
  const blocks = new Map<string, Block>()
  const entities: Entity[] = []
  for (const { name, from, to, line } of listSections(groups, issues)) {
    const inside = groups.slice(from, to)
    if (name === 'HEADER') readHeader(inside, header)
    else if (name === 'TABLES') readLayers(inside, hiddenLayers)
    else if (name === 'BLOCKS') readBlocks(listEntities(inside), blocks, issues)
    else if (name === 'ENTITIES') for (const entity of listEntities(inside)) entities.push(entity)
    else if (name === '') issues.add(line, 'a section has no name: passed over')
  }
  return { header, hiddenLayers, blocks, entities }
}

interface Section {
  readonly name: string
  readonly from: number
  readonly to: number
  readonly line: number
}

function listSections(groups: readonly Group[], issues: Issues): Section[] {
  const sections: Section[] = []
  let open: { name: string; from: number; line: number } | null = null
  const close = (to: number) => {
    if (open !== null) sections.push({ ...open, to })
    open = null
  }
  groups.forEach(({ code, value, line }, at) => {
    if (code !== 0) return
    if (value === 'SECTION') {
      if (open !== null) issues.add(line, `section ${open.name} has no end`)
      close(at)
      const next = groups[at + 1]
      const isNamed = next?.code === 2
      open = { name: isNamed ? next.value.trim() : '', from: at + (isNamed ? 2 : 1), line }
    } else if (value === 'ENDSEC' || value === 'EOF') {
      close(at)
    }
  })
  close(groups.length)
  return sections
}

function readHeader(groups: readonly Group[], header: Map<string, string>): void {
  groups.forEach(({ code, value }, at) => {
    const next = groups[at + 1]
    if (code === 9 && next !== undefined) header.set(value.trim(), next.value.trim())
  })
}

function listEntities(groups: readonly Group[]): Entity[] {
  const entities: Entity[] = []
  let open: { type: string; groups: Group[]; line: number } | null = null
  for (const group of groups) {
    if (group.code === 0) {
      open = { type: group.value.toUpperCase(), groups: [], line: group.line }
      entities.push(open)
    } else if (open !== null) {
      open.groups.push(group)
    }
  }
  return entities
}

/** A layer is off where its colour (62) is negative, frozen by bit 1 of its flags (70). */
function readLayers(groups: readonly Group[], hidden: Set<string>): void {
  for (const { type, groups: own } of listEntities(groups)) {
    if (type !== 'LAYER') continue
    const name = own.find(({ code }) => code === 2)?.value
    const colour = Number(own.find(({ code }) => code === 62)?.value ?? 7)
    const flags = Number(own.find(({ code }) => code === 70)?.value ?? 0)
    if (name !== undefined && (colour < 0 || (flags & 1) === 1)) hidden.add(decodeName(name))
  }
}

function readBlocks(list: readonly Entity[], blocks: Map<string, Block>, issues: Issues): void {
  let open: { name: string; base: [number, number]; entities: Entity[]; line: number } | null = null
  const close = () => {
    if (open !== null) blocks.set(open.name.toUpperCase(), { base: open.base, entities: open.entities })
    open = null
  }
  for (const entity of list) {
    if (entity.type === 'BLOCK') {
      close()
      const name = entity.groups.find(({ code }) => code === 2)?.value
      if (name === undefined) {
        issues.add(entity.line, 'a block has no name: passed over')
        continue
      }
      const coordinate = (wanted: number) => {
        const value = Number(entity.groups.find(({ code }) => code === wanted)?.value ?? 0)
        return Number.isFinite(value) ? value : 0
      }
      open = { name: decodeName(name), base: [coordinate(10), coordinate(20)], entities: [], line: entity.line }
    } else if (entity.type === 'ENDBLK') {
      close()
    } else {
      open?.entities.push(entity)
    }
  }
  close()
}
