import { NoSuchPage } from './ui/no-such-page'

export default function NotFound() {
  return (
    <main className="page">
      <NoSuchPage />
    </main>
  )
}
