import type { Content } from 'pdfmake/interfaces'

/** A word as long as this makes a table's column wider than the page allows. */
const LONGEST_WORD = 24
const PIECE = 12
/** Zero width space: nothing to see, and a line may break there. */
const BREAK_POINT = '\u200b'

const LONG_WORD = new RegExp(`\\S{${LONGEST_WORD},}`, 'gu')

function breakText(text: string): string {
  return text.replaceAll(LONG_WORD, (word) => {
    const characters = [...word]
    let broken = ''
    for (let at = 0; at < characters.length; at += PIECE) {
      broken += (at === 0 ? '' : BREAK_POINT) + characters.slice(at, at + PIECE).join('')
    }
    return broken
  })
}

/** The same content with points at which long words may break. Pictures and set-in-type hashes stay as they are. */
export function breakLongWords(content: Content[]): Content[] {
  return content.map((part) => visit(part) as Content)
}

function visit(part: unknown): unknown {
  if (typeof part === 'string') return breakText(part)
  if (Array.isArray(part)) return part.map(visit)
  if (typeof part !== 'object' || part === null) return part
  const node = part as Record<string, unknown>
  if ('svg' in node || 'wordBreak' in node) return part
  const copy: Record<string, unknown> = { ...node }
  for (const key of ['text', 'stack', 'columns', 'ul'] as const) {
    if (key in node) copy[key] = visit(node[key])
  }
  if (typeof node.table === 'object' && node.table !== null) {
    const table = node.table as { body?: unknown }
    copy.table = { ...table, body: visit(table.body) }
  }
  return copy
}
