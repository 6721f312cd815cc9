/** Spaces and marks of layout that no font needs a glyph for. */
const UNDRAWN = /[\s\u200b-\u200f\u00ad]/u

type Has = (codePoint: number) => boolean

const isDrawn = (character: string, has: Has): boolean => UNDRAWN.test(character) || has(character.codePointAt(0) ?? 0)

/** Text in pieces, each of characters that the font has, or of such that it lacks. */
function splitByFont(text: string, has: Has): { readonly text: string; readonly isOwn: boolean }[] {
  const runs: { text: string; isOwn: boolean }[] = []
  for (const character of text) {
    const isOwn = isDrawn(character, has)
    const last = runs.at(-1)
    if (last !== undefined && last.isOwn === isOwn) last.text += character
    else runs.push({ text: character, isOwn })
  }
  return runs
}

const isWhole = (text: string, has: Has): boolean => [...text].every((character) => isDrawn(character, has))

/**
 * The same content of a document, with characters that its font lacks set in another: a sign that somebody typed is read
 * in the report too, and no box stands in its place.
 *
 * @param has  whether the document's font has a glyph for a code point
 */
export function makeRuns(content: unknown, has: Has, standInFont: string): unknown {
  const visit = (part: unknown): unknown => {
    if (typeof part === 'string') {
      if (isWhole(part, has)) return part
      return { text: splitByFont(part, has).map(({ text, isOwn }) => (isOwn ? text : { text, font: standInFont })) }
    }
    if (Array.isArray(part)) return part.map(visit)
    if (typeof part !== 'object' || part === null) return part
    const node = part as Record<string, unknown>
    const copy: Record<string, unknown> = { ...node }
    if (typeof node.svg === 'string') copy.svg = markSvg(node.svg, has, standInFont)
    for (const key of ['stack', 'columns', 'ul'] as const) if (key in node) copy[key] = visit(node[key])
    if (typeof node.text === 'string') {
      const text = visit(node.text)
      copy.text = typeof text === 'string' ? text : (text as { text: unknown }).text
    } else if ('text' in node) copy.text = visit(node.text)
    if (typeof node.table === 'object' && node.table !== null) {
      const table = node.table as { body?: unknown }
      copy.table = { ...table, body: visit(table.body) }
    }
    return copy
  }
  return visit(content)
}

/** Texts of a drawing, between two tags. */
function markSvg(svg: string, has: Has, standInFont: string): string {
  return svg.replace(/>([^<>]+)</g, (all, text: string) =>
    isWhole(text, has)
      ? all
      : `>${splitByFont(text, has)
          .map((run) => (run.isOwn ? run.text : `<tspan font-family="${standInFont}">${run.text}</tspan>`))
          .join('')}<`,
  )
}
