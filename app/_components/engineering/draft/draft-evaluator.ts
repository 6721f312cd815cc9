import type { Design } from '@/lib/engine'
import type { EvaluationAnswer, EvaluationBasis, EvaluationOrder } from './evaluation-order'

interface Asked {
  readonly draft: Design
  readonly basis: EvaluationBasis
  readonly onAnswer: (answer: EvaluationAnswer) => void
}

export interface DraftEvaluator {
  /** Takes the place of a draft that was asked for before and has no answer yet: the newest alone is wanted. */
  readonly ask: (asked: Asked) => void
  readonly end: () => void
}

/** Evaluates drafts on a thread of its own; the page does it itself where it can have none, or where the thread fails. */
export function startEvaluator(): DraftEvaluator {
  return typeof Worker === 'undefined' ? startOnPage() : startOnThread()
}

function startOnThread(): DraftEvaluator {
  const worker = new Worker(new URL('./evaluation-worker.ts', import.meta.url), { type: 'module' })
  const send = (order: EvaluationOrder) => worker.postMessage(order)
  let sentBasis: EvaluationBasis | null = null
  let running: Asked | null = null
  let waiting: Asked | null = null
  let instead: DraftEvaluator | null = null
  const sendNext = () => {
    if (running !== null || waiting === null) return
    running = waiting
    waiting = null
    if (running.basis !== sentBasis) {
      sentBasis = running.basis
      send({ kind: 'basis', basis: sentBasis })
    }
    send({ kind: 'draft', draft: running.draft })
  }
  worker.onmessage = ({ data }: MessageEvent<EvaluationAnswer>) => {
    const answered = running
    running = null
    if (waiting === null) answered?.onAnswer(data)
    sendNext()
  }
  worker.onerror = (event) => {
    event.preventDefault()
    worker.terminate()
    instead ??= startOnPage()
    const left = waiting ?? running
    running = null
    waiting = null
    if (left !== null) instead.ask(left)
  }
  return {
    ask: (asked) => {
      if (instead !== null) return instead.ask(asked)
      waiting = asked
      sendNext()
    },
    end: () => {
      running = null
      waiting = null
      instead?.end()
      worker.terminate()
    },
  }
}

/** At most once per frame, after the code was fetched. */
function startOnPage(): DraftEvaluator {
  let frame = 0
  let newest: Asked | null = null
  return {
    ask: (asked) => {
      newest = asked
      window.cancelAnimationFrame(frame)
      frame = window.requestAnimationFrame(async () => {
        const { evaluateLive } = await import('./evaluate-live')
        // While it was loaded somebody may have typed on, or left.
        if (newest === asked) asked.onAnswer(evaluateLive(asked.draft, asked.basis))
      })
    },
    end: () => {
      newest = null
      window.cancelAnimationFrame(frame)
    },
  }
}
