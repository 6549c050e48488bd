// @ts-check
/** `npm start`: from a bare checkout to a running shop. Whatever is done already is not done again. */
import { checkout } from './checkout.js'
import { tellNodeVersion } from './node-version.js'

// The rest may use what an old Node can't even load, so it is loaded after the look at the version.
if (tellNodeVersion(checkout)) {
  const { runShop } = await import('./shop.js')
  await runShop(process.argv.slice(2))
}
