import isSame from 'fast-deep-equal'
import { applyPatch, createPatch, type Operation, Pointer } from 'rfc6902'
import { z } from 'zod'
import { type Design, readStoredJson } from '@/lib/engine'
import { describePlace } from './design-place'
import { formatFieldValue } from './trade-words'

/** One operation of a JSON Patch. Source: RFC 6902, JavaScript Object Notation (JSON) Patch (2013) */
export type PatchOperation = Operation

const atPath = { path: z.string() }
const patchSchema = z.array(
  z.discriminatedUnion('op', [
    z.looseObject({ op: z.enum(['add', 'replace', 'test']), ...atPath, value: z.json() }),
    z.looseObject({ op: z.literal('remove'), ...atPath }),
    z.looseObject({ op: z.enum(['move', 'copy']), ...atPath, from: z.string() }),
  ]),
)

/** @throws StoredDocumentError for what is damaged */
export function readStoredPatch(json: string): readonly PatchOperation[] {
  return readStoredJson('a proposal', patchSchema, json)
}

/** Why one operation of a patch does not apply. */
export interface PatchProblem {
  /** Place of the operation in the patch, from 1; tests count. */
  readonly operation: number
  /** JSON Pointer (RFC 6901, 2013) of what it is about. */
  readonly path: string
  readonly code: 'other-value' | 'other-part' | 'absent'
  /** In the trade's words: what the patch was made on, and what is there now. */
  readonly sentence: string
}

export type PatchedDesign =
  | { readonly ok: true; readonly document: unknown }
  | { readonly ok: false; readonly problems: readonly PatchProblem[] }

/** Keys that say which part an entry of a list is, in the order in which they are looked for. */
const IDENTITY_KEYS = ['id', 'layerId', 'bendId'] as const

/**
 * The patch from one design to another, guarded: before each operation stand tests of what it was made on, so that on a
 * design that has moved on it applies where nothing that it touches is other, and nowhere else. A place in a list is
 * guarded by the identity of the entry that is there: an index alone would reach into whatever has moved up.
 *
 * @returns operations in order; none for equal designs. Neither design is changed, and the patch shares nothing with them.
 */
export function makeDesignPatch(before: Design, after: Design): PatchOperation[] {
  const working = copy(before) as object
  const patch: PatchOperation[] = []
  const tested = new Set<string>()
  for (const found of createPatch(before, after, diffEntries)) {
    const operation = withPlainIndex(working, copy(found))
    for (const test of listGuards(working, operation)) {
      const key = JSON.stringify(test)
      if (!tested.has(key)) patch.push(test)
      tested.add(key)
    }
    patch.push(operation)
    applyPatch(working, [copy(operation)])
    // Whatever was tested may have moved or become another value.
    tested.clear()
  }
  return patch
}

/**
 * Operations between two lists whose entries say which part they are: entries belong together by that, wherever they
 * stand. The library pairs entries by likeness instead, which takes the square of their number and may turn one bend
 * into the next.
 *
 * @returns undefined for anything else, which leaves it to the library
 */
function diffEntries(before: unknown, after: unknown, at: Pointer): PatchOperation[] | undefined {
  if (!Array.isArray(before) || !Array.isArray(after)) return undefined
  if (before.some(isPartOfOneThing) || after.some(isPartOfOneThing)) {
    return isSame(before, after) ? [] : [{ op: 'replace', path: at.toString(), value: after }]
  }
  const old = indexByIdentity(before)
  const wanted = indexByIdentity(after)
  if (old === null || wanted === null) return undefined
  const list = at.toString()
  const operations: PatchOperation[] = []
  const order = [...old.keys()]
  for (let index = order.length - 1; index >= 0; index -= 1) {
    if (wanted.has(order[index] ?? '')) continue
    operations.push({ op: 'remove', path: `${list}/${index}` })
    order.splice(index, 1)
  }
  ;[...wanted].forEach(([identity, entry], index) => {
    if (order[index] === identity) return
    const from = order.indexOf(identity, index)
    if (from === -1) operations.push({ op: 'add', path: `${list}/${index}`, value: entry })
    else {
      operations.push({ op: 'move', from: `${list}/${from}`, path: `${list}/${index}` })
      order.splice(from, 1)
    }
    order.splice(index, 0, identity)
  })
  ;[...wanted].forEach(([identity, entry], index) => {
    const previous = old.get(identity)
    if (previous === undefined || isSame(previous, entry)) return
    for (const inner of createPatch(previous, entry, diffEntries)) {
      operations.push({ ...inner, path: `${list}/${index}${inner.path}`, ...prefixFrom(inner, `${list}/${index}`) })
    }
  })
  return operations
}

/** The vertices of an outline, the points of a path, the coordinates of a point: a place within them says nothing about what is there. */
function isPartOfOneThing(entry: unknown): boolean {
  return Array.isArray(entry) || typeof entry === 'number' || readKey(entry, 'viaMm') !== undefined
}

function prefixFrom(operation: PatchOperation, prefix: string): { from?: string } {
  return operation.op === 'move' || operation.op === 'copy' ? { from: `${prefix}${operation.from}` } : {}
}

/** Null where an entry does not say which part it is, or two say the same. */
function indexByIdentity(list: readonly unknown[]): Map<string, unknown> | null {
  const entries = new Map<string, unknown>()
  for (const entry of list) {
    const identity = findIdentity(entry)
    if (identity === null || entries.has(identity.value)) return null
    entries.set(identity.value, entry)
  }
  return entries
}

/** `/-` (after the last) as an index: the place is then guarded like any other. */
function withPlainIndex(document: object, operation: PatchOperation): PatchOperation {
  if (operation.op !== 'add' || !operation.path.endsWith('/-')) return operation
  const list: unknown = Pointer.fromJSON(operation.path.slice(0, -2)).get(document)
  return Array.isArray(list) ? { ...operation, path: `${operation.path.slice(0, -1)}${list.length}` } : operation
}

function listGuards(document: object, operation: PatchOperation): PatchOperation[] {
  const { tokens } = Pointer.fromJSON(operation.path)
  const guards: PatchOperation[] = []
  const guardIdentity = (list: readonly unknown[], index: number, at: readonly string[]) => {
    const identity = findIdentity(list[index])
    if (identity === null) return
    guards.push({ op: 'test', path: toPath([...at, String(index), identity.key]), value: identity.value })
  }
  let node: unknown = document
  for (let depth = 1; depth < tokens.length; depth += 1) {
    const token = tokens[depth] ?? ''
    const isLast = depth === tokens.length - 1
    if (Array.isArray(node)) {
      const index = Number(token)
      if (!isLast) guardIdentity(node, index, tokens.slice(1, depth))
      else if (operation.op === 'add' || operation.op === 'move') {
        // Both neighbours: an entry put between them belongs between them.
        if (index > 0) guardIdentity(node, index - 1, tokens.slice(1, depth))
        if (index < node.length) guardIdentity(node, index, tokens.slice(1, depth))
      }
    }
    node = readKey(node, token)
  }
  if (operation.op === 'move') {
    const from = Pointer.fromJSON(operation.from).tokens
    const list: unknown = new Pointer(from.slice(0, -1)).get(document)
    if (Array.isArray(list)) guardIdentity(list, Number(from.at(-1)), from.slice(1, -1))
  }
  if (operation.op === 'replace' || operation.op === 'remove') {
    guards.push({ op: 'test', path: operation.path, value: copy(node) })
  }
  return guards
}

/**
 * A copy of a design with a guarded patch applied: whole or not at all, as RFC 6902 section 5 asks.
 *
 * @param base  the design that the patch was made on: it gives the names of what is no longer there
 * @returns the document, whose references between parts are still to be checked; or every operation that does not apply.
 * After the first one that fails in a list, later ones in the same list are not looked at: their places rest on it.
 */
export function applyGuardedPatch(present: unknown, patch: readonly PatchOperation[], base: unknown): PatchedDesign {
  const document = copy(present) as object
  const made = copy(base) as object
  const problems: PatchProblem[] = []
  const broken = new Set<string>()
  let isSkipped = false
  patch.forEach((operation, index) => {
    const area = getArea(operation.path)
    const isNext = index === 0 || patch[index - 1]?.op !== 'test'
    if (isNext) isSkipped = broken.has(area)
    if (!isSkipped) {
      const [error] = applyPatch(document, [copy(operation)])
      if (error !== null && error !== undefined) {
        problems.push(explain(operation, index, { document, made, wanted: findWanted(patch, index) }))
        broken.add(area)
        isSkipped = true
      }
    }
    applyPatch(made, [copy(operation)])
  })
  return problems.length === 0 ? { ok: true, document } : { ok: false, problems }
}

/** The list or part of the design within which places rest on each other. */
function getArea(path: string): string {
  const [root = '', part = '', list = ''] = path.split('/')
  return part === 'construction' || part === 'features' || part === 'plan'
    ? `${root}/${part}/${list}`
    : `${root}/${part}`
}

/** The operation that a test guards. */
function findWanted(patch: readonly PatchOperation[], index: number): PatchOperation | null {
  return patch.slice(index).find(({ op }) => op !== 'test') ?? null
}

interface Failure {
  readonly document: object
  /** The design that the patch was made on, with the operations before this one applied. */
  readonly made: object
  readonly wanted: PatchOperation | null
}

function explain(operation: PatchOperation, index: number, { document, made, wanted }: Failure): PatchProblem {
  const number = index + 1
  const { path } = operation
  const tokens = Pointer.fromJSON(path).tokens.slice(1)
  const present: unknown = Pointer.fromJSON(path).get(document)
  if (operation.op === 'test' && isIdentity(made, tokens)) {
    const name = describePlace(made, tokens.slice(0, -1)).subject
    const there = present === undefined ? null : describePlace(document, tokens.slice(0, -1)).subject
    const sentence =
      there === null
        ? `${name} is no longer in the design at the place where the proposal has it`
        : `where the proposal has ${name}, the design now has ${there}`
    return { operation: number, path, code: 'other-part', sentence }
  }
  const { label, field } = describePlace(made, tokens)
  if (operation.op !== 'test' || present === undefined) {
    return { operation: number, path, code: 'absent', sentence: `${label} is no longer in the design` }
  }
  const now = formatFieldValue(present, field)
  const then = formatFieldValue(operation.value, field)
  const isThere = wanted?.op === 'replace' && wanted.path === path && isSame(wanted.value, present)
  const sentence = isThere
    ? `${label} is already ${now}, as proposed`
    : now === then
      ? `${label} is no longer what the proposal was made on`
      : `${label}: the proposal was made on ${then}, the design now has ${now}`
  return { operation: number, path, code: 'other-value', sentence }
}

/** Paths of a patch's changes in words, each once: `L2 foil`, `bend Hinge inside radius`. */
export function describeOperations(patch: readonly PatchOperation[], base: Design): string[] {
  const document = copy(base) as object
  return patch.map((operation) => {
    const tokens = Pointer.fromJSON(operation.path).tokens.slice(1)
    const { label } = describePlace(operation.op === 'add' ? withAdded(document, operation) : document, tokens)
    applyPatch(document, [copy(operation)])
    return operation.op === 'test' ? `test ${label}` : `${operation.op} ${label}`
  })
}

function withAdded(document: object, operation: PatchOperation): object {
  const after = copy(document) as object
  applyPatch(after, [copy(operation)])
  return after
}

/** Does the place say which part an entry of a list is, rather than what it is like? */
function isIdentity(document: object, tokens: readonly string[]): boolean {
  const holder: unknown = new Pointer(['', ...tokens.slice(0, -1)]).get(document)
  return /^\d+$/.test(tokens.at(-2) ?? '') && findIdentity(holder)?.key === tokens.at(-1)
}

function findIdentity(entry: unknown): { readonly key: string; readonly value: string } | null {
  for (const key of IDENTITY_KEYS) {
    const value = readKey(entry, key)
    if (typeof value === 'string') return { key, value }
  }
  return null
}

function readKey(node: unknown, key: string): unknown {
  return typeof node === 'object' && node !== null ? (node as Readonly<Record<string, unknown>>)[key] : undefined
}

function toPath(tokens: readonly string[]): string {
  return new Pointer(['', ...tokens]).toString()
}

/** JSON values only: the document, patches and their parts. */
function copy<T>(value: T): T {
  return JSON.parse(JSON.stringify(value)) as T
}
