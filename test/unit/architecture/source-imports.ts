import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import path from 'node:path'
import { rootFolder } from '../../../scripts/steps/places.mjs'

export interface SourceFile {
  /** Relative to the project, with forward slashes: `lib/engine/bending/strain.ts`. */
  readonly file: string
  /** The text without comments. */
  readonly code: string
  readonly imports: readonly SourceImport[]
}

export interface SourceImport {
  /** As written: `@/lib/engine`, `./strain`, `zod`. */
  readonly specifier: string
  /** Relative to the project for our own files, without an ending; null for packages. */
  readonly target: string | null
  /** Whether nothing is left of it once types are removed. */
  readonly isTypeOnly: boolean
}

/** The TypeScript files under a folder of the project, but for generated ones; none where it does not exist. */
export function readSources(folder: string): SourceFile[] {
  const absolute = path.join(rootFolder, folder)
  if (!existsSync(absolute)) return []
  return readdirSync(absolute, { recursive: true, encoding: 'utf8' })
    .map((name) => `${folder}/${name.split(path.sep).join('/')}`)
    .filter((file) => /\.tsx?$/.test(file) && !file.includes('/generated/'))
    .sort()
    .map((file) => parseSource(file, readFileSync(path.join(rootFolder, file), 'utf8')))
}

export function parseSource(file: string, text: string): SourceFile {
  const code = withoutComments(text)
  return { file, code, imports: findImports(file, code) }
}

function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|[\s;{}(,])\/\/.*$/gm, '$1')
}

const STATEMENT = /^[ \t]*(?:import|export)\s+(type\s+)?([^'";]*?)\s*from\s*['"]([^'"]+)['"]/gm
const BARE = /^[ \t]*import\s*['"]([^'"]+)['"]/gm
const DYNAMIC = /\bimport\(\s*['"]([^'"]+)['"]\s*\)/g

function findImports(file: string, code: string): SourceImport[] {
  const found: SourceImport[] = []
  const add = (specifier: string, isTypeOnly: boolean) =>
    found.push({ specifier, target: findTarget(file, specifier), isTypeOnly })
  for (const [, type, names = '', specifier = ''] of code.matchAll(STATEMENT)) {
    add(specifier, type !== undefined || areAllTypes(names))
  }
  for (const [, specifier = ''] of code.matchAll(BARE)) add(specifier, false)
  for (const [, specifier = ''] of code.matchAll(DYNAMIC)) add(specifier, false)
  return found
}

/** `{ type A, type B }` */
function areAllTypes(names: string): boolean {
  const inBraces = /^\{([\s\S]*)\}$/.exec(names.trim())?.[1]
  if (inBraces === undefined) return false
  const each = inBraces
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '')
  return each.length > 0 && each.every((name) => name.startsWith('type '))
}

function findTarget(file: string, specifier: string): string | null {
  if (specifier.startsWith('@/')) return specifier.slice(2)
  if (specifier.startsWith('.')) return path.posix.join(path.posix.dirname(file), specifier)
  return null
}

/** Whether a target is a folder, which stands for its index, and not a file inside one. */
export function isFolder(target: string): boolean {
  const absolute = path.join(rootFolder, target)
  return existsSync(absolute) && statSync(absolute).isDirectory()
}
