import { describe, expect, it } from 'vitest'
import { readSources } from './source-imports'
import { findClassNames, findDeclaredClasses, findUntokened, readStyles } from './style-rules'

describe('styles', () => {
  const styles = readStyles('app')

  it('take space, type and colour from the tokens alone', () => {
    expect(styles.length).toBeGreaterThan(5)
    const others = styles.filter(({ file }) => !file.endsWith('tokens.css'))
    expect(others.flatMap(findUntokened)).toEqual([])
  })

  it('declare each class that a component names', () => {
    const declared = new Set(styles.flatMap(({ text }) => findDeclaredClasses(text)))
    const used = readSources('app').flatMap(({ file, code }) => findClassNames(code).map((name) => ({ file, name })))
    expect(used.length).toBeGreaterThan(300)
    expect(used.filter(({ name }) => !declared.has(name))).toEqual([])
  })

  it('are refused where they name a size or a colour of their own', () => {
    const refused = [
      'padding: 3px 0;',
      'margin-top: 0.7rem;',
      'gap: 0.3em 1rem;',
      'inset-inline-start: 0.5rem;',
      'font-size: 13px;',
      'font-size: small;',
      'font: 12px/1.2 Arial;',
      'font-family: Georgia, serif;',
      'color: #333;',
      'background: rgb(0 0 0 / 20%);',
      'border: 1px solid red;',
      'box-shadow: 0 1px 2px black;',
    ]
    for (const line of refused) {
      expect(findUntokened({ file: 'x.css', text: `.x { ${line} }` }), line).toHaveLength(1)
    }
    const allowed = [
      'padding: var(--space-2) 0;',
      'margin: 0 auto;',
      'margin-inline: calc(-1 * var(--space-3));',
      'font: inherit;',
      'font-size: var(--type-small);',
      'border: 1px solid var(--rule);',
      'background: color-mix(in srgb, var(--focus) 12%, var(--paper));',
      'color: inherit;',
    ]
    for (const line of allowed) expect(findUntokened({ file: 'x.css', text: `.x { ${line} }` }), line).toEqual([])
  })
})

describe('tables', () => {
  it('are set by one component', () => {
    const raw = readSources('app').filter(
      ({ file, code }) => /<(table|thead)\b/.test(code) && !file.endsWith('/ui/data-table.tsx'),
    )
    expect(raw.map(({ file }) => file)).toEqual([])
  })

  it('have cells of their own in the grid of a sheet alone', () => {
    const raw = readSources('app')
      .filter(({ code }) => /<(td|tr)\b/.test(code))
      .map(({ file }) => file)
    expect(raw.toSorted()).toEqual([
      'app/_components/fabrication/grid/grid-row-view.tsx',
      'app/_components/ui/data-table.tsx',
    ])
  })
})
