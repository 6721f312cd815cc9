/** Keeps the last few answers of a costly question: most edits of a design, and the remedies tried on it, leave its fold as it is. */
export function rememberAnswers<Q, A>(mostKept: number, compute: (question: Q) => A): (question: Q) => A {
  const known = new Map<string, A>()
  return (question) => {
    const key = JSON.stringify(question)
    const found = known.get(key)
    if (found !== undefined) return found
    const answer = compute(question)
    const [oldest] = known.keys()
    if (known.size >= mostKept && oldest !== undefined) known.delete(oldest)
    known.set(key, answer)
    return answer
  }
}
