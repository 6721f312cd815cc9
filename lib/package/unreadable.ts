/** Why an archive is not read: in words, with the file that it is about. */
export class Unreadable extends Error {
  constructor(
    readonly code: string,
    readonly file: string | null,
    message: string,
  ) {
    super(message)
  }
}

/** Programs would unpack different files from it: none of them is the one that was checked. */
export function refuseAmbiguous(file: string | null, why: string): never {
  const what = file === null ? 'the archive' : file
  throw new Unreadable('ambiguous', file, `${what} is unpacked differently by different programs: ${why}`)
}
