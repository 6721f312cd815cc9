export default function Loading() {
  return (
    <p className="muted" role="status">
      Loading…
    </p>
  )
}
