import type { SourceFile } from './source-imports'

/** Documents that are stored, by type: each has a reader that checks its shape. */
const STORED_TYPES = [
  'Design',
  'Evaluation',
  'SignedContent',
  'ReviewSnapshot',
  'Manifest',
  'PatchOperation',
  'Operation',
]
const CAST = new RegExp(
  `\\bas\\s+(unknown\\s+as\\s+)?(readonly\\s+)?((Readonly|Partial|Pick|Omit)<\\s*)?(${STORED_TYPES.join('|')})\\b`,
  'g',
)

const PARSE = 'JSON.parse('

/** Sentences about files that take a stored document for what they hope it is, instead of reading it. */
export function checkStoredDocuments({ file, code }: SourceFile): string[] {
  const casts = [...code.matchAll(CAST)].map(
    ([cast]) => `${file} casts "${cast}": read it (readStoredDesign and its like)`,
  )
  return [...casts, ...findTypedParses(code).map((line) => `${file} gives JSON a type unread: ${line}`)]
}

/** Calls of JSON.parse whose value is given a type by a cast, an annotation or a pattern. A clone of a value in memory is none. */
function findTypedParses(code: string): string[] {
  const found: string[] = []
  for (let at = code.indexOf(PARSE); at !== -1; at = code.indexOf(PARSE, at + 1)) {
    if (code.startsWith('JSON.stringify(', at + PARSE.length)) continue
    const before = code.slice(0, at).split('\n').at(-1) ?? ''
    const after = code.slice(findEnd(code, at + PARSE.length))
    const isCast = /^\s*as\s+(?!unknown\b)/.test(after)
    const isAnnotated = /\b(const|let)\s+\w+\s*:(?!\s*unknown\s*=)[^=]+=\s*$/.test(before)
    const isTakenApart = /\b(const|let)\s+[{[][^=]*=\s*$/.test(before)
    // Without an annotation the value is `any`, which takes every type in silence.
    const isUntyped = /\b(const|let)\s+\w+\s*=\s*$/.test(before)
    if (isCast || isAnnotated || isTakenApart || isUntyped) found.push(code.slice(at - before.length, at + 60).trim())
  }
  return found
}

/** The place after the bracket that closes the call. */
function findEnd(code: string, start: number): number {
  let depth = 1
  for (let at = start; at < code.length; at += 1) {
    if (code[at] === '(') depth += 1
    if (code[at] === ')') depth -= 1
    if (depth === 0) return at + 1
  }
  return code.length
}
