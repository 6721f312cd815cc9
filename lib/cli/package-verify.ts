import { lstatSync, readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { parseArgs } from 'node:util'
import { formatIssuePath } from '@/lib/engine'
import {
  getKeyFingerprint,
  isRegisterTrusted,
  judgeStatus,
  type KeyRegister,
  MAX_PACKAGE_BYTES,
  MAX_PACKAGE_FILES,
  type PackageFile,
  type PackageForm,
  readKeyRegister,
  readStatusList,
  readVerifyingKey,
  toPackageFiles,
  verifyFiles,
  verifyPackage,
} from '@/lib/package'

const USAGE = `Checks a release package without server or database.

  npm run package:verify -- package.zip [--strict] [--key verifying-key.pem]
  npm run package:verify -- folder      [--key verifying-key.pem]

Both also take --status status.json: the signed status list of the sender, by which it shows whether the revision was
superseded or withdrawn since. Without one, or with one that is too old, that is unknown.

The files decide: a package that was unpacked or repacked (ZIP, TAR, TAR.GZ) is as good. --strict accepts only the original ZIP archive, byte for byte.

--key compares the signature with a key that you obtained another way. Without it the key inside the package is used:
compare its fingerprint with the one stated by the sender.

--keys keys.json names the keys of the sender with their dates (fetched from the sender at /api/keys): a package that was signed with an earlier key
is verified by it, and one whose key was compromised is refused. With --key too, the register must follow from that key.

--time-stamp-ca ca.pem holds the certificates that you trust for time stamps: without it a time stamp is read, and whose it is stays open.

Exit status: 0 the package is intact, 1 it is not, 2 it could not be checked, 3 it is intact and no longer in force
(superseded, withdrawn, expired).`

/** Ends with a message of one line; the file could not be checked at all. */
function stop(message: string): never {
  console.error(message)
  process.exit(2)
}

function readInput(file: string, limitBytes: number): Uint8Array {
  try {
    const { size } = lstatSync(file)
    if (size > limitBytes) stop(`${file}: has ${size} bytes; at most ${limitBytes} are read`)
    return readFileSync(file)
  } catch (error) {
    return stop(`${file}: cannot be read (${error instanceof Error ? error.message : String(error)})`)
  }
}

function isFolder(file: string): boolean {
  try {
    return lstatSync(file).isDirectory()
  } catch (error) {
    return stop(`${file}: cannot be read (${error instanceof Error ? error.message : String(error)})`)
  }
}

/** Every file below a folder. A link is not followed: what it leads to is no part of the package. */
function readFolder(folder: string): PackageFile[] {
  const files: PackageFile[] = []
  let left = MAX_PACKAGE_BYTES
  const enter = (inside: string) => {
    for (const entry of readdirSync(path.join(folder, inside), { withFileTypes: true })) {
      const name = inside === '' ? entry.name : `${inside}/${entry.name}`
      if (entry.isDirectory()) {
        enter(name)
        continue
      }
      if (!entry.isFile()) stop(`${path.join(folder, name)}: is a link or a device, not a file`)
      if (files.length === MAX_PACKAGE_FILES) stop(`${folder}: holds more than ${MAX_PACKAGE_FILES} files`)
      const bytes = readInput(path.join(folder, name), left)
      left -= bytes.length
      files.push({ path: name, bytes })
    }
  }
  enter('')
  return toPackageFiles(files)
}

function readArguments() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: {
        key: { type: 'string' },
        status: { type: 'string' },
        keys: { type: 'string' },
        'time-stamp-ca': { type: 'string' },
        strict: { type: 'boolean', default: false },
        help: { type: 'boolean', short: 'h' },
      },
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
const MAX_STATUS_BYTES = 10_000_000
const trustedKeyPem =
  values.key === undefined ? undefined : new TextDecoder().decode(readInput(values.key, MAX_KEY_BYTES))
const register = readRegister()
const timeStampCa = values['time-stamp-ca']
const options = {
  ...(register !== null ? { register } : trustedKeyPem === undefined ? {} : { trustedKeyPem }),
  ...(timeStampCa === undefined
    ? {}
    : { timeStampCaPem: new TextDecoder().decode(readInput(timeStampCa, MAX_STATUS_BYTES)) }),
}
const statusText =
  values.status === undefined ? null : new TextDecoder().decode(readInput(values.status, MAX_STATUS_BYTES))
const isStrict = values.strict
const isUnpacked = isFolder(file)
if (isUnpacked && isStrict) stop(`${file}: is a folder; --strict judges the archive itself`)
const result = isUnpacked
  ? verifyFiles(readFolder(file), 'unpacked', options)
  : verifyPackage(readInput(file, MAX_PACKAGE_BYTES), { ...options, isStrict })
if (!result.ok) {
  console.error(`${file}: NOT intact`)
  for (const issue of result.issues) {
    const place = issue.path.length === 0 ? 'archive' : formatIssuePath(issue.path)
    console.error(`  ${place}: ${issue.message} [${issue.code}]`)
  }
  process.exit(1)
}

const FORMS: Readonly<Record<PackageForm, string>> = {
  'as written': 'intact',
  repacked: 'contents intact, repacked',
  unpacked: 'contents intact, unpacked',
}
const found = result.value
const { form, manifest, keyFingerprint, isKeyTrusted, keyFinding, timeStamp, trailRecordCount, signatureCount } = found
console.log(`${file}: ${FORMS[form]}`)
if (form === 'repacked')
  console.log('  the archive around them was written by another program; --strict would refuse it')
console.log(`  ${manifest.project.name}, revision ${manifest.revision.label}, of ${manifest.workspace}`)
console.log(`  released ${manifest.releasedAt} by ${manifest.releasedBy}, engine ${manifest.engineVersion ?? 'none'}`)
console.log(`  edition: ${manifest.edition.companyName ?? manifest.edition.kind}`)
console.log(`  ${manifest.files.length} files, ${signatureCount} valid signatures, ${trailRecordCount} trail records`)
console.log(
  isKeyTrusted
    ? `  signed with the trusted key ${keyFingerprint}`
    : `  signed with the key ${keyFingerprint}: compare it with the sender’s, or use --key`,
)
if (keyFinding !== null) {
  console.log(`  by the key register: ${keyFinding.sentence}`)
  if (trustedKeyPem === undefined) {
    console.log(
      `  key in use: ${register?.keys.at(-1)?.fingerprint}: compare it with the one that the sender publishes`,
    )
  }
}

console.log(
  timeStamp === null
    ? '  no trusted time stamp'
    : `  time stamp ${timeStamp.at} by ${timeStamp.authority}${timeStamp.isTrusted ? '' : ': its certificate was not compared with one that you trust'}`,
)

/** The sender's keys; a key that is trusted must lead to them. */
function readRegister(): KeyRegister | null {
  if (values.keys === undefined) return null
  const read = readKeyRegister(new TextDecoder().decode(readInput(values.keys, MAX_STATUS_BYTES)))
  if (!read.ok) return stop(`${values.keys}: ${read.issues[0]?.message ?? 'cannot be used'}`)
  if (trustedKeyPem === undefined) return read.value
  const trusted = readVerifyingKey(trustedKeyPem)
  if (trusted === null) return stop(`${values.key}: is not an Ed25519 public key in PEM form`)
  if (isRegisterTrusted(read.value, getKeyFingerprint(trusted))) return read.value
  return stop(
    `${values.keys}: does not follow from the trusted key ${getKeyFingerprint(trusted)}: ask the sender which key is in use`,
  )
}

/** A list is judged by the key in use where a register names it, by the trusted key where there is one, else by the key that signed the package. */
function readList() {
  if (statusText === null) return null
  const list = readStatusList(statusText, register?.keys.at(-1)?.verifyingKeyPem ?? trustedKeyPem ?? found.keyPem)
  if (!list.ok) stop(`${values.status}: ${list.issues[0]?.message ?? 'cannot be used'}`)
  return list.value
}

const status = judgeStatus(manifest.revision.id, readList(), new Date(), manifest.releasedAt)
console.log(`  ${status.sentence}`)
process.exit(status.word === 'in force' || status.word === 'unknown' ? 0 : 3)
