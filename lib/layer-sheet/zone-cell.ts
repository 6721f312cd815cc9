import { ZONE_FIELDS } from '@/lib/engine'
import { type Read, readChoice, readMark, readShare, writeShare } from './cells'
import type { InZone } from './rows'

const PLATED_NAMES = ZONE_FIELDS.presence.entry.platedCopper.choices
const PLATING = 'plating '

/**
 * What a layer's cell says of a zone: empty is not there, `x` is there, and a conductor may have its own share of copper (`40 %`) and
 * say which of it is plated (`x; plating pads only`).
 */
export function readZoneCell(cell: string, isConductor: boolean): Read<InZone> {
  const { text } = readMark(cell)
  if (text === '' || /^(no|n|0|false)$/i.test(text)) return { ok: true, value: null }
  const [first = '', ...more] = text.split(';').map((part) => part.trim())
  const isThere = /^(x|yes|y|true|✓|✔)$/i.test(first) || (first === '1' && !isConductor)
  if (!isConductor) {
    return isThere && more.length === 0
      ? { ok: true, value: { coverageFraction: null, platedCopper: null } }
      : { ok: false, reason: `"${text}" is neither x nor empty; only copper has a share in a zone` }
  }
  const share: Read<number | null> = isThere ? { ok: true, value: null } : readShare(first)
  if (!share.ok) {
    return first === '1'
      ? { ok: false, reason: '"1" may be a mark or a share: write x, or a share such as 40 %' }
      : { ok: false, reason: `${share.reason}, nor x` }
  }
  const [plating, ...rest] = more
  if (rest.length > 0 || (plating !== undefined && !plating.toLowerCase().startsWith(PLATING)))
    return { ok: false, reason: `"${text}": after the share only the plating follows, such as "plating pads only"` }
  if (plating === undefined) return { ok: true, value: { coverageFraction: share.value, platedCopper: null } }
  const plated = readChoice(plating.slice(PLATING.length).trim(), PLATED_NAMES)
  return plated.ok ? { ok: true, value: { coverageFraction: share.value, platedCopper: plated.value } } : plated
}

export function writeZoneCell(inZone: InZone): string {
  if (inZone === null) return ''
  const share = inZone.coverageFraction === null ? 'x' : writeShare(inZone.coverageFraction)
  return inZone.platedCopper === null ? share : `${share}; ${PLATING}${PLATED_NAMES[inZone.platedCopper]}`
}
