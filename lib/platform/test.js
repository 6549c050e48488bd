// @ts-check
/** `npm test [-- kind [words]]`: sets up like `npm start`, but on a database server of its own that is thrown away. */
import { checkout } from './checkout.js'
import { tellNodeVersion } from './node-version.js'

// The rest may use what an old Node can't even load, so it is loaded after the look at the version.
if (tellNodeVersion(checkout)) {
  const { runTests } = await import('./test-run.js')
  await runTests(process.argv.slice(2))
} else {
  console.log('\n0 passed, 1 failed')
}
