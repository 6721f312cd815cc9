import type { GroundBand, PlanGround } from './ground'

/** What tells one plan from another, short: a change of it shows that something was measured on another plan. No protection against anybody. */
export const basisOfPlan = ({ part, zones, holes }: PlanGround): string =>
  checksum(JSON.stringify([part, zones, holes]))

export const basisOfBand = ({ fromNm, toNm, widthNm, rings }: GroundBand): string =>
  checksum(JSON.stringify([fromNm, toNm, widthNm, rings]))

/** Two runs of FNV-1a over 32 bits (Fowler, Noll, Vo 1991) from different beginnings. */
function checksum(text: string): string {
  let [one, other] = [0x811c9dc5, 0x01234567]
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at)
    one = Math.imul(one ^ code, 0x01000193)
    other = Math.imul(other ^ (code + at), 0x01000193)
  }
  return [one, other].map((part) => (part >>> 0).toString(16).padStart(8, '0')).join('')
}
