import type { BendResult } from './bend'

const AND = new Intl.ListFormat('en-GB', { type: 'conjunction' })

/**
 * What the figures, curves and swings of a bend count beside one radius from flat, for the sentence under a picture; null where there is
 * nothing else.
 */
export function describeCounted({ states, leafPull }: Pick<BendResult, 'states' | 'leafPull'>): string | null {
  if (states === null) return null
  const counted = [
    ...(states.fromRadiusMm === null ? [] : ['the flatter end of the motion']),
    ...(states.foldedToRadiusMm === null ? [] : ['the fold before']),
    ...(states.pullN > 0 ? ['the pull'] : []),
    ...(states.twistDeg > 0 ? ['the twist'] : []),
    ...(leafPull === null ? [] : ['the pull of leaves that are too short']),
  ]
  return counted.length === 0 ? null : `Worked out as the verdict is, with ${AND.format(counted)}`
}
