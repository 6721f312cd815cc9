import { readFileSync, statSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { formatIssuePath } from '@/lib/engine'
import { MAX_PACKAGE_BYTES, verifyPackage } from '@/lib/package'

const USAGE = `Checks a release package without server or database.

  npm run package:verify -- package.zip [--key verifying-key.pem]

--key compares the signature with a key that you have by another way. Without it the key inside the package is used:
compare its fingerprint with the one that the sender states.

Exit status: 0 the package is intact, 1 it is not, 2 it could not be checked.`

/** Ends with a message of one line; the file could not be checked at all. */
function stop(message: string): never {
  console.error(message)
  process.exit(2)
}

function readInput(file: string, limitBytes: number): Uint8Array {
  try {
    const { size } = statSync(file)
    if (size > limitBytes) stop(`${file}: has ${size} bytes; at most ${limitBytes} are read`)
    return readFileSync(file)
  } catch (error) {
    return stop(`${file}: cannot be read (${error instanceof Error ? error.message : String(error)})`)
  }
}

function readArguments() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: { key: { type: 'string' }, help: { type: 'boolean', short: 'h' } },
    })
  } catch (error) {
    return stop(`${error instanceof Error ? error.message : String(error)}\n\n${USAGE}`)
  }
}

const { values, positionals } = readArguments()
const [file] = positionals
if (values.help === true) {
  console.log(USAGE)
  process.exit(0)
}
if (file === undefined || positionals.length > 1) stop(USAGE)

const MAX_KEY_BYTES = 10_000
const trustedKeyPem =
  values.key === undefined ? undefined : new TextDecoder().decode(readInput(values.key, MAX_KEY_BYTES))
const result = verifyPackage(readInput(file, MAX_PACKAGE_BYTES), trustedKeyPem === undefined ? {} : { trustedKeyPem })
if (!result.ok) {
  console.error(`${file}: NOT intact`)
  for (const issue of result.issues) {
    const place = issue.path.length === 0 ? 'archive' : formatIssuePath(issue.path)
    console.error(`  ${place}: ${issue.message} [${issue.code}]`)
  }
  process.exit(1)
}
const { manifest, keyFingerprint, isKeyTrusted, trailRecordCount, signatureCount } = result.value
console.log(`${file}: intact`)
console.log(`  ${manifest.project.name}, revision ${manifest.revision.label}, of ${manifest.workspace}`)
console.log(`  released ${manifest.releasedAt} by ${manifest.releasedBy}, engine ${manifest.engineVersion ?? 'none'}`)
console.log(`  edition: ${manifest.edition.companyName ?? manifest.edition.kind}`)
console.log(
  `  ${manifest.files.length} files, ${signatureCount} standing signatures, ${trailRecordCount} trail records`,
)
console.log(
  isKeyTrusted
    ? `  signed with the trusted key ${keyFingerprint}`
    : `  signed with the key ${keyFingerprint}: compare it with the sender's, or give --key`,
)
