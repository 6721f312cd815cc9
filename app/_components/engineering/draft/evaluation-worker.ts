import { evaluateLive } from './evaluate-live'
import type { EvaluationBasis, EvaluationOrder } from './evaluation-order'

/** The thread that evaluates drafts: keys are not kept waiting by the engine. */

let basis: EvaluationBasis | null = null

self.onmessage = ({ data }: MessageEvent<EvaluationOrder>) => {
  if (data.kind === 'basis') {
    basis = data.basis
    return
  }
  if (basis === null) throw new Error('a draft came before what it is evaluated by')
  self.postMessage(evaluateLive(data.draft, basis))
}
