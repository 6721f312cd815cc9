import type { FileRoomView } from '@/lib/data'

/** How much of what may be kept is taken: the person sees it before a file is refused. */
export function FileRoom({ room }: { room: FileRoomView }) {
  return (
    <p className="small muted">
      Files kept:{' '}
      {room.shares
        .map(({ of, usedBytes, mostBytes }) => `${of} ${formatMib(usedBytes)} of ${formatMib(mostBytes)}`)
        .join(', ')}
      . One file may have up to {formatMib(room.mostBytesPerFile)}. Files taken off count on, since their bytes are
      kept.
    </p>
  )
}

const MIB = 1024 * 1024

function formatMib(bytes: number): string {
  const mib = bytes / MIB
  return `${Number.isInteger(mib) || mib >= 100 ? Math.round(mib) : mib.toFixed(1)} MiB`
}
