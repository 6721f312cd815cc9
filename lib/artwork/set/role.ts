/** What a file of a set may be for. */
export const LAYER_ROLES = [
  'copper',
  'solder mask',
  'coverlay',
  'stiffener',
  'adhesive',
  'paste',
  'legend',
  'profile',
  'holes',
  'pads alone',
  'drill drawing',
  'drawing',
  'mechanical',
] as const
export type LayerRole = (typeof LAYER_ROLES)[number]

export interface RoleGuess {
  /** Null where nothing says: somebody has to. */
  readonly role: LayerRole | null
  readonly side: 'top' | 'bottom' | 'inner' | null
  /** Of copper, 1 at the top. */
  readonly layerNumber: number | null
  /** Of holes: which copper layers they join. */
  readonly span: readonly [from: number, to: number] | null
  readonly from: 'attribute' | 'job file' | 'extension list' | 'name' | 'person' | null
  readonly reason: string
}

type Found = Pick<RoleGuess, 'role' | 'side' | 'layerNumber' | 'span'>
const NOTHING: Found = { role: null, side: null, layerNumber: null, span: null }

/** Values of .FileFunction (Gerber Layer Format Specification, "file attributes"; from memory). Null where the value says no more than that it is another file. */
export function roleOfFileFunction(value: string): Found | null {
  const [first = '', second = '', third = ''] = value.split(',').map((part) => part.trim())
  const side = sideOf(second)
  switch (first.toLowerCase()) {
    case 'copper':
      return {
        ...NOTHING,
        role: 'copper',
        layerNumber: Number(/^L(\d+)$/i.exec(second)?.[1] ?? 0) || null,
        side: sideOf(third),
      }
    case 'soldermask':
      return { ...NOTHING, role: 'solder mask', side }
    case 'paste':
    case 'solderpaste':
      return { ...NOTHING, role: 'paste', side }
    case 'legend':
      return { ...NOTHING, role: 'legend', side }
    case 'profile':
      return { ...NOTHING, role: 'profile' }
    case 'pads':
      return { ...NOTHING, role: 'pads alone', side }
    case 'glue':
      return { ...NOTHING, role: 'adhesive', side }
    case 'plated':
    case 'nonplated':
    case 'mixedplating': {
      const [from, to] = [Number(second), Number(third)]
      return { ...NOTHING, role: 'holes', span: from > 0 && to > 0 ? [from, to] : null }
    }
    case 'drillmap':
      return { ...NOTHING, role: 'drill drawing' }
    case 'assemblydrawing':
    case 'arraydrawing':
    case 'fabricationdrawing':
    case 'otherdrawing':
    case 'drawing':
      return { ...NOTHING, role: 'drawing' }
    default:
      return null
  }
}

function sideOf(word: string): RoleGuess['side'] {
  const known: Readonly<Record<string, RoleGuess['side']>> = {
    top: 'top',
    bot: 'bottom',
    bottom: 'bottom',
    inr: 'inner',
  }
  return known[word.toLowerCase()] ?? null
}

/** Words that names and descriptions use; the first that fits decides, so that "coverlay" comes before "top". */
const WORDS: readonly (readonly [RegExp, LayerRole])[] = [
  [/drill[ _-]?(drawing|guide|map)/, 'drill drawing'],
  [/pad[ _-]?master/, 'pads alone'],
  [/cover[ _-]?(lay|film|layer)/, 'coverlay'],
  [/stiff/, 'stiffener'],
  [/adhesive|glue/, 'adhesive'],
  [/solder[ _-]?mask|mask|top solder|bottom solder/, 'solder mask'],
  [/paste|stencil/, 'paste'],
  [/silk|legend|overlay/, 'legend'],
  [/profile|outline|edge[ _-]?cuts|keep[ _-]?out|contour/, 'profile'],
  [/mechanical/, 'mechanical'],
  [/assembly|fab(rication)?[ _-]?(notes|drawing)|drawing/, 'drawing'],
  [/copper|signal|plane|[_-]cu(\b|_)|\btop layer|\bbottom layer|(^|[_-])in\d+/, 'copper'],
]

export function roleOfWords(text: string): Found | null {
  const words = text.toLowerCase()
  const found = WORDS.find(([pattern]) => pattern.test(words))
  if (found === undefined) return null
  const [, role] = found
  const side = /(^|[^a-z])(top|f|front)([^a-z]|$)/.test(words)
    ? 'top'
    : /(^|[^a-z])(bottom|bot|b|back)([^a-z]|$)/.test(words)
      ? 'bottom'
      : role === 'copper' && /signal|inner|(^|[_-])in\d/.test(words)
        ? 'inner'
        : null
  return { ...NOTHING, role, side }
}

/** Extensions that many programs share (common practice, no published source). */
export function roleOfExtension(name: string): Found | null {
  const extension = name.split('.').slice(1).join('.').toLowerCase()
  const last = extension.split('.').at(-1) ?? ''
  const letter = /^g([tb])([lspo])$/.exec(last)
  const side = letter?.[1] === 't' ? 'top' : 'bottom'
  if (letter !== null) {
    const roles: Readonly<Record<string, LayerRole>> = { l: 'copper', s: 'solder mask', p: 'paste', o: 'legend' }
    return { ...NOTHING, role: roles[letter[2] ?? ''] ?? null, side }
  }
  const inner = /^g(?:p)?(\d{1,2})l?$/.exec(last)
  if (inner !== null) {
    // `.G2L` counts all copper layers. `.G1` counts the inner ones and `.GP1` the planes among them: where they lie is not said.
    const number = last.endsWith('l') ? Number(inner[1]) : null
    return { ...NOTHING, role: 'copper', side: 'inner', layerNumber: number }
  }
  if (/^gp[tb]$/.test(last)) return { ...NOTHING, role: 'pads alone', side: last === 'gpt' ? 'top' : 'bottom' }
  if (/^gc[tb]\d*$/.test(last)) return { ...NOTHING, role: 'coverlay', side: last.startsWith('gct') ? 'top' : 'bottom' }
  if (/^g[dg]\d+$/.test(last)) return { ...NOTHING, role: 'drill drawing' }
  if (last === 'gko') return { ...NOTHING, role: 'profile' }
  return /^gm\d*$/.test(last) ? { ...NOTHING, role: 'mechanical' } : null
}
