import type { Design, RemedyOptions } from '@/lib/engine'
import { assessBend, type BendAssessment } from '@/lib/engine/remedies/assess'
import { RANKED_FAMILIES } from '@/lib/engine/remedies/families'
import { makeSubject, makeTrial, type Trial } from '@/lib/engine/remedies/trial'

/** Every set of changes of up to so many, in the order of the families, without any bound or order of promise. */
export function listAllSets(design: Design, bendId: string, options: RemedyOptions, most: number): Trial[] {
  const basis = assessBend(design, bendId, {})
  if (basis === null) throw new Error('no bend')
  const found: Trial[] = []
  const walk = (assessment: BendAssessment, changes: Trial['changes'], rank: number): void => {
    if (changes.length === most) return
    const subject = makeSubject(assessment, options)
    if (subject === null) return
    for (const { family, rank: nextRank, propose } of RANKED_FAMILIES) {
      if (nextRank < rank || options.leftOutFamilies?.includes(family)) continue
      for (const next of propose(subject)) {
        const last = changes.at(-1)
        if (nextRank === rank && last !== undefined && next.id <= last.id) continue
        if (changes.some(({ touches }) => touches.some((key) => next.touches.includes(key)))) continue
        const made = makeTrial(basis, assessment, [...changes, next], options)
        if (made === null) continue
        found.push(made.trial)
        walk(made.assessment, made.trial.changes, nextRank)
      }
    }
  }
  walk(basis, [], 0)
  return found
}

export const meets = ({ after, forbiddenBy, worsens, countBreaks }: Trial) =>
  after.verdict === 'meets' && forbiddenBy.length === 0 && worsens.length === 0 && countBreaks() === 0
