import { buildPackage, type SigningKeys } from '@/lib/package'
import { sha256Hex } from '@/lib/review'
import { makeContent } from './content-factory'

// Builds the package of the test's content in a process of its own, and prints the hash of its bytes.
const keys = JSON.parse(process.env.BUILD_KEYS ?? '') as SigningKeys
process.stdout.write(sha256Hex(await buildPackage(makeContent(), keys)))
