import { readFileSync } from 'node:fs'
import path from 'node:path'
import { type Design, evaluate, parseDesign } from '@/lib/engine'

/** A design of the demo scenario, read as a file is. */
export function readDemoDesign(name: 'skua-rev-a' | 'skua-rev-b' | 'pipit-rev-a'): Design {
  const text = readFileSync(path.resolve('seed/designs', `${name}.json`), 'utf8')
  const parsed = parseDesign(JSON.parse(text))
  if (!parsed.ok) throw new Error(`${name}: ${parsed.issues[0]?.message}`)
  return parsed.value
}

export function measureDemo(name: Parameters<typeof readDemoDesign>[0]) {
  const design = readDemoDesign(name)
  return { design, evaluation: evaluate(design) }
}
