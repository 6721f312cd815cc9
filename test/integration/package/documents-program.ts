import { makeDocumentsApart } from '@/lib/package/documents'
import { sha256Hex } from '@/lib/review'
import { makeContent } from './content-factory'

// Has documents made in a thread: of the test's content, and of one whose date the layout cannot read. Prints both.
const content = { ...makeContent(), artwork: [] }
const [made, refused] = await Promise.allSettled([
  makeDocumentsApart({ kind: 'package', content }),
  makeDocumentsApart({ kind: 'package', content: { ...content, release: { at: 'no date', byName: 'Ines Calder' } } }),
])
const again = await makeDocumentsApart({ kind: 'package', content })
process.stdout.write(
  JSON.stringify({
    made:
      made.status === 'fulfilled' ? made.value.map(({ path, bytes }) => [path, sha256Hex(bytes)]) : String(made.reason),
    again: again.map(({ path, bytes }) => [path, sha256Hex(bytes)]),
    isRangeError: refused.status === 'rejected' && refused.reason instanceof RangeError,
    refused: refused.status === 'rejected' ? String(refused.reason) : 'was made',
  }),
)
