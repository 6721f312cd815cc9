import type { SourceFile } from './source-imports'

/** What a visitor may do without being signed in, by the data function that does it. */
const VISITOR_ACTS: readonly string[] = ['data.askForReset', 'data.setPasswordByLink', 'data.confirmAddress']
/** What makes an account, which the visitor is then signed in to. */
const JOINING_ACTS = ['data.createFirstAdmin', 'data.acceptInvitation']

/** What a page may ask before anybody is known. */
const VISITOR_READS = [
  'isWorkspaceEmpty',
  'previewInvitation',
  'previewReset',
  'previewAddressChange',
  'arePasskeysPossible',
]

/** What tells a page who is asking: `loadRevision` returns the actor beside the revision. */
const ACTOR_SOURCES = /\b(getActor|requireActor|loadRevision)\(/

/** Values that are no functions, errors that a page turns into its not-found page, and whether a word of an address is a known one. */
const PLAIN_VALUES = /^(MAX_[A-Z_]+|[A-Z]\w*Error)$/

/** The session library's own handler: it is what finds out who somebody is. */
const SESSION_ROUTE = 'app/api/auth/[...nextauth]/route.ts'

/** Exports of a file that are there at run time, as written. */
function findExports(code: string): string[] {
  return [...code.matchAll(/^[ \t]*export\s+(?!type\b|interface\b)([^\n]*)/gm)].map((match) => match[1] ?? '')
}

/** Sentences about server actions that do not go through `action` or `visitorAction` of lib/server. */
export function checkServerActions({ file, code }: SourceFile): string[] {
  if (!/^\s*['"]use server['"]/.test(code)) return [`${file} has a server action inside a component`]
  return findExports(code).flatMap((written) => {
    const visitor = /^const \w+ = visitorAction\(\s*\w+,\s*([\w.]+)\)/.exec(written)
    if (visitor !== null && VISITOR_ACTS.includes(visitor[1] ?? '')) return []
    const joining = /^const \w+ = joiningAction\(\s*\w+,\s*'[\w-]+',\s*([\w.]+)\)/.exec(written)
    if (joining !== null && JOINING_ACTS.includes(joining[1] ?? '')) return []
    return /^const \w+ = action(Of)?\(/.test(written) ? [] : [`${file} exports "${written}" past the wrapper`]
  })
}

/** Sentences about route handlers that do not go through `route`, `uploadRoute` or `visitorRoute` of lib/server. */
export function checkRouteHandler({ file, code, imports }: SourceFile): string[] {
  if (file === SESSION_ROUTE) return []
  const readsData = imports.some(({ target, isTypeOnly }) => target === 'lib/data' && !isTypeOnly)
  return findExports(code).flatMap((written) => {
    if (/^const [A-Z]+ = visitorRoute\(/.test(written)) {
      return readsData ? [`${file} reads data for a visitor`] : []
    }
    const isSetting = /^const (dynamic|revalidate|runtime|maxDuration) = /.test(written)
    return isSetting || /^const [A-Z]+ = (route|uploadRoute)\(/.test(written)
      ? []
      : [`${file} exports "${written}" past the wrapper`]
  })
}

/** Sentences about files that call a function of lib/data without passing the actor first. */
export function checkDataReads({ file, code }: SourceFile): string[] {
  if (/\/(actions|route)\.tsx?$/.test(file)) return []
  return findDataValues(code).flatMap((name) => {
    if (VISITOR_READS.includes(name) || PLAIN_VALUES.test(name)) return []
    if (!ACTOR_SOURCES.test(code)) return [`${file} reads ${name} and knows no actor`]
    const calls = [...code.matchAll(new RegExp(`\\b${name}\\(\\s*([\\w.]*)`, 'g'))]
    const hasActor = calls.length > 0 && calls.every((call) => /(^|\.)actor$/.test(call[1] ?? ''))
    return hasActor ? [] : [`${file} calls ${name} without the actor`]
  })
}

function findDataValues(code: string): string[] {
  return [...code.matchAll(/^[ \t]*import\s+(?!type\b)\{([^}]*)\}\s*from\s*['"]@\/lib\/data['"]/gm)].flatMap((match) =>
    (match[1] ?? '')
      .split(',')
      .map((name) => name.trim())
      .filter((name) => name !== '' && !name.startsWith('type ')),
  )
}
