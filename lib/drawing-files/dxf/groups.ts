import type { Issues } from '../drawing'

/** A pair of lines: the code that says what the value is, and the value as written. */
export interface Group {
  readonly code: number
  readonly value: string
  /** Of the code, from 1. */
  readonly line: number
}

export const MAX_DXF_BYTES = 16 * 1024 * 1024
const MAX_GROUPS = 2_000_000
/** Lines out of step after which the rest is given up: it is no longer clear what is a code. */
const MAX_STRAY_LINES = 100

/** The pairs of a file, from its first section on. A string says why the file is none. */
export function readGroups(bytes: Uint8Array, issues: Issues): Group[] | string {
  if (bytes.length === 0) return 'the file is empty'
  if (bytes.length > MAX_DXF_BYTES) {
    return `the file has ${bytes.length} bytes; at most ${MAX_DXF_BYTES} are read`
  }
  const head = String.fromCharCode(...bytes.subarray(0, 32))
  if (/Binary DXF/.test(head)) return 'the file is a binary DXF: save it as text (ASCII) DXF'
  if (head.startsWith('AC10')) return 'the file is a DWG, not a DXF: save it as DXF'
  if (bytes.subarray(0, 4096).includes(0))
    return 'the file is not text: a DXF has a code and a value on alternate lines'
  const lines = decode(bytes).split(/\r\n|\n|\r/)
  const start = findStart(lines)
  if (start === null) return 'no line "SECTION" after a code 0: this is not a DXF file'
  if (start > 0)
    issues.add(1, `${start} ${start === 1 ? 'line stands' : 'lines stand'} before the first section: passed over`)
  return pairUp(lines, start, issues)
}

/** UTF-8 where it is that (from 2007 on files are), else the code page of Western Europe, which also holds plain ASCII. */
function decode(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}

function findStart(lines: readonly string[]): number | null {
  for (let at = 0; at + 1 < lines.length; at += 1) {
    if (lines[at]?.trim() === '0' && lines[at + 1]?.trim() === 'SECTION') return commentsBefore(lines, at)
  }
  return null
}

/** Comments (999) may stand before; they belong to the file. */
function commentsBefore(lines: readonly string[], at: number): number {
  let start = at
  while (start >= 2 && lines[start - 2]?.trim() === '999') start -= 2
  return start
}

const CODE = /^\s*-?\d{1,4}\s*$/

function pairUp(lines: readonly string[], start: number, issues: Issues): Group[] {
  const groups: Group[] = []
  let stray = 0
  let at = start
  while (at < lines.length) {
    const text = lines[at] ?? ''
    if (!CODE.test(text)) {
      // An empty last line is none.
      if (text.trim() === '' && at >= lines.length - 2) break
      stray += 1
      issues.add(at + 1, `"${shorten(text)}" stands where a group code should: passed over`)
      if (stray >= MAX_STRAY_LINES) {
        issues.add(at + 1, 'codes and values are out of step: the rest of the file is left out')
        break
      }
      at += 1
      continue
    }
    const value = lines[at + 1]
    if (value === undefined) {
      issues.add(at + 1, 'the file ends after a group code')
      break
    }
    const code = Number(text)
    if (code !== 999) groups.push({ code, value: code === 0 ? value.trim() : value, line: at + 1 })
    if (code === 0 && value.trim() === 'EOF') return groups
    if (groups.length >= MAX_GROUPS) {
      issues.add(at + 1, `more than ${MAX_GROUPS} groups: the rest of the file is left out`)
      return groups
    }
    at += 2
  }
  issues.add(null, 'the file has no end mark (EOF): it may be cut short')
  return groups
}

export const shorten = (text: string): string => {
  const plain = text.trim().replace(/\p{Cc}/gu, '?')
  return plain.length > 40 ? `${plain.slice(0, 40)}…` : plain
}

/** Names may write a character by its number: \U+00E4. */
export const decodeName = (text: string): string =>
  text.trim().replace(/\\U\+([0-9A-Fa-f]{4})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
