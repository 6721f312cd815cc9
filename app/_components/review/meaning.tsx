import { ACT_MEANINGS, type MeantAct } from '@/lib/review'

/** What the act means, in the words that its record will carry: read before the person confirms it. */
export function Meaning({ of }: { of: MeantAct }) {
  return (
    <p className="said">
      <span className="label">What it means</span> {ACT_MEANINGS[of]}
    </p>
  )
}
