import type { FileRoomView } from '@/lib/data'
import { asFileSize } from '@/lib/engine/units'

/** How much of what may be kept is taken: the person sees it before a file is refused. */
export function FileRoom({ room }: { room: FileRoomView }) {
  return (
    <p className="small muted">
      Files kept:{' '}
      {room.shares
        .map(({ of, usedBytes, mostBytes }) => `${of} ${asFileSize(usedBytes)} of ${asFileSize(mostBytes)}`)
        .join(', ')}
      . One file may have up to {asFileSize(room.mostBytesPerFile)}. Removed files still count, since their bytes are
      kept.
    </p>
  )
}
