import { isFolder, type SourceFile } from './source-imports'

/** Folders of lib that run anywhere: no system, no clock, no chance, no framework. */
export const PURE_FOLDERS = [
  'addresses',
  'engine',
  'drawing-files',
  'geometry',
  'plan',
  'fold',
  'artwork-picture',
  'artwork',
  'fabrication',
  'layer-sheet',
  'spreadsheet',
  'drawing',
  'review',
  'mail',
  'inputs',
] as const

/** Folders whose files must not reach a browser. */
export const SERVER_FOLDERS = ['config', 'data', 'server', 'solids'] as const

/**
 * Which folders of lib each folder may import from. Arrows point one way, so that each can be read, tested and changed
 * with nothing above it in mind.
 */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  addresses: [],
  geometry: [],
  'drawing-files': [],
  plan: ['drawing-files', 'geometry'],
  fold: ['geometry', 'plan'],
  'artwork-picture': [],
  artwork: ['artwork-picture'],
  config: [],
  spreadsheet: [],
  engine: ['artwork', 'fold', 'geometry', 'plan'],
  fabrication: ['engine', 'geometry', 'plan'],
  'layer-sheet': ['engine', 'fabrication'],
  drawing: ['drawing-files', 'engine', 'fabrication', 'geometry', 'plan'],
  review: ['addresses', 'engine', 'fabrication', 'geometry'],
  mail: ['review'],
  inputs: ['artwork', 'engine', 'fabrication', 'review', 'mail'],
  solids: ['drawing', 'engine'],
  package: ['review', 'drawing', 'engine', 'fabrication', 'spreadsheet', 'artwork', 'artwork-picture'],
  jobs: ['artwork', 'artwork-picture', 'package', 'engine', 'fabrication'],
  data: [
    'addresses',
    'artwork',
    'artwork-picture',
    'config',
    'review',
    'mail',
    'jobs',
    'package',
    'solids',
    'drawing',
    'engine',
    'fabrication',
    'spreadsheet',
    'inputs',
  ],
  server: ['addresses', 'config', 'data', 'review', 'engine', 'inputs'],
  cli: [
    'artwork',
    'config',
    'data',
    'review',
    'package',
    'engine',
    'fabrication',
    'drawing',
    'spreadsheet',
    'geometry',
    'inputs',
    'mail',
    'server',
  ],
}

/** Packages that need neither system nor framework. */
// The plots are drawn into a document that the caller passes in.
const PURE_PACKAGES = [
  /^zod$/,
  /^clipper2-ts$/,
  /^earcut$/,
  /^@observablehq\/plot$/,
  /^@noble\/hashes(\/|$)/,
  /^canonicalize$/,
  /^fast-deep-equal$/,
  /^fflate$/,
  /^rfc6902$/,
  /^papaparse$/,
  /^robust-predicates$/,
  /^saxen$/,
  /^write-excel-file\/universal$/,
]

const IMPURE_CODE: readonly (readonly [RegExp, string])[] = [
  [/\bDate\.now\b/, 'reads the clock (Date.now)'],
  [/\bnew Date\(\s*\)/, 'reads the clock (new Date without a time)'],
  [/\bperformance\.now\b/, 'reads the clock (performance.now)'],
  [/\bMath\.random\b/, 'draws a random number without a seed (Math.random)'],
  [/\bcrypto\.(randomUUID|getRandomValues)\b/, 'draws a random number without a seed (crypto)'],
  [/\bprocess\.\w/, 'touches the process'],
  [/\bfetch\(/, 'uses the network'],
]

const folderOf = (target: string): string | undefined => /^lib\/([^/]+)/.exec(target)?.[1]

/** Sentences about the imports of a file of lib that go the wrong way; empty when all is well. */
export function checkLibImports({ file, imports }: SourceFile): string[] {
  const own = folderOf(file) ?? ''
  const allowed = MAY_IMPORT[own]
  if (allowed === undefined) return [`${file}: lib/${own} is not in the import table; add it with what it may import`]
  return imports.flatMap(({ specifier, target }) => {
    if (target === null) {
      return isPrismaPackage(specifier) && own !== 'data'
        ? [`${file} imports ${specifier}: only lib/data sees Prisma`]
        : []
    }
    const folder = folderOf(target)
    if (folder === undefined) return [`${file} imports ${specifier}: lib imports nothing outside lib`]
    if (folder === own) return []
    if (!allowed.includes(folder)) return [`${file} imports ${specifier}: lib/${own} may not import lib/${folder}`]
    return isFolder(target) ? [] : [`${file} imports ${specifier}: import the folder's index, not its insides`]
  })
}

/** Sentences about what keeps a file of a pure folder from running anywhere. */
export function checkPurity({ file, code, imports }: SourceFile): string[] {
  const foreign = imports
    .filter(({ target, specifier }) => target === null && !PURE_PACKAGES.some((name) => name.test(specifier)))
    .map(({ specifier }) => `${file} imports ${specifier}, which does not run everywhere`)
  const impure = IMPURE_CODE.filter(([pattern]) => pattern.test(code)).map(([, reason]) => `${file} ${reason}`)
  return [...foreign, ...impure]
}

/** Sentences about a file of app: what it imports from lib, and what a client component must leave to the server. */
export function checkAppImports({ file, code, imports }: SourceFile): string[] {
  const isClient = /^\s*['"]use client['"]/.test(code)
  return imports.flatMap(({ specifier, target, isTypeOnly }) => {
    if (target === null)
      return isPrismaPackage(specifier) ? [`${file} imports ${specifier}: only lib/data sees Prisma`] : []
    if (/^(test|scripts|seed)\//.test(target))
      return [`${file} imports ${specifier}: the application needs no tests, scripts or seed`]
    const folder = folderOf(target)
    if (folder === undefined) return []
    if (folder === 'cli') return [`${file} imports ${specifier}: commands are for the command line`]
    const isPure = (PURE_FOLDERS as readonly string[]).includes(folder)
    if (isClient && !isPure && !isTypeOnly)
      return [`${file} imports ${specifier}: a client component may import pure folders only`]
    return isFolder(target) ? [] : [`${file} imports ${specifier}: import the folder's index, not its insides`]
  })
}

/** Sentences about a file of a server folder that a bundler would let into the browser. */
export function checkServerOnly({ file, code, imports }: SourceFile): string[] {
  const holdsCode = /^export (?!type\b|interface\b|declare\b)/m.test(code)
  const isMarked = imports.some(({ specifier }) => specifier === 'server-only')
  return holdsCode && !isMarked ? [`${file} must begin with import 'server-only'`] : []
}

function isPrismaPackage(specifier: string): boolean {
  return specifier.startsWith('@prisma/') || specifier === 'better-sqlite3' || specifier === 'pg'
}
