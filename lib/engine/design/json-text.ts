import type { Issue } from '../results'

/** What a reader of files refuses before it looks at the content. */
const refuse = (code: string, message: string, path: Issue['path'] = []): Issue => ({ code, path, message })

/**
 * Decodes a file's bytes as UTF-8, with or without a byte order mark.
 *
 * @returns the text, or an issue that names the first byte that is not UTF-8
 */
export function decodeUtf8(bytes: Uint8Array): string | Issue {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return refuse('not-utf-8', `the file is not UTF-8: byte ${findBadByte(bytes) + 1} begins no character`)
  }
}

/** Index of the first byte that begins no character: what stands before it is UTF-8. */
function findBadByte(bytes: Uint8Array): number {
  let good = 0
  let bad = bytes.length
  while (good + 1 < bad) {
    const middle = (good + bad) >>> 1
    try {
      // In the middle of a character is no fault yet: only what follows can show one.
      new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(0, middle), { stream: true })
      good = middle
    } catch {
      bad = middle
    }
  }
  // What breaks may be the second to fourth byte of a character that began well.
  let start = bad - 1
  while (start > 0 && !isUtf8(bytes.subarray(0, start))) start -= 1
  return start
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes)
    return true
  } catch {
    return false
  }
}

/**
 * Keys that an object of a JSON text holds twice: `JSON.parse` keeps the last of them and says nothing.
 *
 * @param text  valid JSON
 * @returns an issue for each, with the path of the object's member
 */
export function findDuplicateKeys(text: string): Issue[] {
  const issues: Issue[] = []
  /** One level for each open object or list: the keys seen, or the index reached. */
  const levels: ({ keys: Set<string>; key: string } | { index: number })[] = []
  const pathHere = () => levels.map((level) => ('keys' in level ? level.key : level.index))
  let isKeyNext = false
  for (let at = 0; at < text.length; at += 1) {
    const level = levels.at(-1)
    switch (text[at]) {
      case '{':
        levels.push({ keys: new Set(), key: '' })
        isKeyNext = true
        break
      case '[':
        levels.push({ index: 0 })
        isKeyNext = false
        break
      case '}':
      case ']':
        levels.pop()
        isKeyNext = false
        break
      case ',':
        if (level !== undefined && 'index' in level) level.index += 1
        else isKeyNext = true
        break
      case '"': {
        const end = findEndOfString(text, at)
        if (isKeyNext && level !== undefined && 'keys' in level) {
          level.key = String(JSON.parse(text.slice(at, end + 1)))
          if (level.keys.has(level.key)) {
            issues.push(refuse('duplicate-key', 'is given twice: one of the two would be lost', pathHere()))
          }
          level.keys.add(level.key)
          isKeyNext = false
        }
        at = end
        break
      }
    }
  }
  return issues
}

function findEndOfString(text: string, start: number): number {
  for (let at = start + 1; at < text.length; at += 1) {
    if (text[at] === '\\') at += 1
    else if (text[at] === '"') return at
  }
  return text.length
}

/** Below this no dimension, share or constant means anything; sums and quotients of such numbers overflow. */
const LEAST_MAGNITUDE = 1e-12

/** Coordinates may lie anywhere, and what a sine leaves of 0 is 0 for them. */
const COORDINATES = 'verticesMm'

/** Numbers so small that they can only be slips: `1e-300` passes "greater than 0" and breaks what divides by it. */
export function findTinyNumbers(value: unknown, path: Issue['path'] = []): Issue[] {
  if (typeof value === 'number') {
    return value !== 0 && Math.abs(value) < LEAST_MAGNITUDE
      ? [
          refuse(
            'too-small',
            `${value} is too small to mean anything; the least that is read is ${LEAST_MAGNITUDE}`,
            path,
          ),
        ]
      : []
  }
  if (Array.isArray(value)) return value.flatMap((entry, index) => findTinyNumbers(entry, [...path, index]))
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) =>
    key === COORDINATES ? [] : findTinyNumbers(inner, [...path, key]),
  )
}
