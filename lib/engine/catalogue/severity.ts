export type Severity = 'blocking' | 'major' | 'minor' | 'advice'

/** What each severity means; defined here once, shown wherever a severity stands. */
export const SEVERITIES: Record<Severity, string> = {
  blocking:
    'The part would not do its job or could not be built. Releasing against it takes an approved waiver and a very good reason.',
  major: 'Likely to cost yield, life or a rebuild. Change it, or record why this part can bear it.',
  minor: 'Costs little here, but adds up or makes the build harder than it need be.',
  advice: 'Good habit. Nothing breaks without it on most parts.',
}
