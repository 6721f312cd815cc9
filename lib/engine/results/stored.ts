import type { Evaluation } from './evaluation'

/**
 * Results of an earlier engine in today's shape. Their numbers and verdicts stay as recorded; what that engine did not report is null or
 * empty. Every field that results gain is filled in here.
 */
export function liftEvaluation(recorded: Evaluation): Evaluation {
  return recorded
}

/** Reads results that this program stored, whichever engine made them. */
export function readStoredEvaluation(json: string): Evaluation {
  return liftEvaluation(JSON.parse(json) as Evaluation)
}
