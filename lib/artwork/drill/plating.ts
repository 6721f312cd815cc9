import type { Plating } from './drill-reading'

/** What a file says of plating: its attribute, a comment, or its name; the nearest to the tool decides. */
export function platingOfAttribute(values: string): Plating | null {
  const first = values.split(',')[0]?.trim().toLowerCase() ?? ''
  if (first === 'plated') return 'plated'
  return first === 'nonplated' ? 'not plated' : null
}

/** `;TYPE=PLATED` before the tools it is about (common practice). */
export function platingOfComment(comment: string): Plating | null {
  const found = /^;?\s*TYPE\s*=\s*(NON_?PLATED|PLATED)\s*$/i.exec(comment)
  if (found === null) return null
  return (found[1] ?? '').toUpperCase() === 'PLATED' ? 'plated' : 'not plated'
}

/** Words in names of files, as several programs write them (common practice). */
export function platingOfName(name: string): Plating | null {
  const words = name.toLowerCase()
  if (/npth|non[-_ ]?plated|unplated|not[-_ ]?plated/.test(words)) return 'not plated'
  return /(^|[^a-z])pth([^a-z]|$)|plated/.test(words) ? 'plated' : null
}
